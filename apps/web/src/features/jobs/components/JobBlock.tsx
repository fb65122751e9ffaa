import type { Job } from '@yardfall/contracts';
import type { ReactNode } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { LocateDates } from './LocateDates.tsx';
import './JobBlock.css';

/** The title block of a job: ruled cells, each with a small caption. */
export function JobBlock({ job }: { readonly job: Job }) {
  const { t, say } = useText();
  const people = job.assignments.map((a) => t('jobs.block.person', { name: a.name, role: t(`identity.role.${a.role}`) }));
  return (
    <dl className="job-block">
      <Cell caption={t('jobs.block.number')}><span className="figure">{job.number}</span></Cell>
      <Cell caption={t('jobs.block.customer')}>{job.customerName}</Cell>
      <Cell caption={t('jobs.block.site')} wide>{job.address}</Cell>
      <Cell caption={t('jobs.block.stage')}>{t(`jobs.stage.${job.stage}`)}</Cell>
      <Cell caption={t('jobs.block.people')}>{people.length > 0 ? people.join(', ') : t('jobs.block.nobody')}</Cell>
      {job.locate ? <Cell caption={t('jobs.block.locate')} wide><LocateDates job={job} /></Cell> : null}
      <Cell caption={t('jobs.block.held')} wide>
        {job.holds.length === 0 ? t('jobs.block.notHeld') : <ul>{job.holds.map((hold) => <li key={hold.id}>{say(hold.code, hold.params, { timeZone: job.timeZone })}</li>)}</ul>}
      </Cell>
    </dl>
  );
}

function Cell({ caption, wide = false, children }: { readonly caption: string; readonly wide?: boolean; readonly children: ReactNode }) {
  return (
    <div className={wide ? 'job-cell job-cell-wide' : 'job-cell'}>
      <dt>{caption}</dt>
      <dd>{children}</dd>
    </div>
  );
}
