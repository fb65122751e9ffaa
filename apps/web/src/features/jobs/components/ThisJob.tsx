import type { JobRow } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { Arrive, AtTheHouse } from './Arrive.tsx';
import { LocateDates } from './LocateDates.tsx';
import { SmallSection } from './SmallSection.tsx';

export interface JobSlots {
  /** What is built, next and held, drawn; null where there is nothing to draw yet. */
  readonly section?: (job: JobRow) => ReactNode;
  /** The next thing to do on a job, as one large control. */
  readonly next?: (job: JobRow) => ReactNode;
  /** To stop the work. */
  readonly stops?: (job: JobRow) => ReactNode;
  readonly clock?: (job: JobRow) => ReactNode;
}

const crewOf = ({ assignments }: JobRow): readonly string[] => assignments.filter(({ role }) => role === 'crew').map(({ name }) => name);

/** The job of the day: what stands above the next step never grows once it is there, so that no thumb misses it. */
export function ThisJob({ job, section, next, stops, clock }: JobSlots & { readonly job: JobRow }) {
  const { t, say } = useText();
  return (
    <div className="this-job">
      {section?.(job) ?? <SmallSection stage={job.stage} held={job.holds.length > 0} system={job.system} />}
      <p className="this-job-name">{job.title}</p>
      <p>{job.address}</p>
      <AtTheHouse jobId={job.id} name={job.customerName} />
      {job.holds.filter(({ code }) => code !== 'found.hold.open').map((hold) => <Notice key={hold.id} severity="stop"><p>{say(hold.code, hold.params, { timeZone: job.timeZone })}</p></Notice>)}
      {next?.(job)}
      {stops?.(job)}
      <p>{t('jobs.crew.people', { names: crewOf(job).join(', ') })}</p>
      {job.locate ? <p><LocateDates job={job} /></p> : null}
      <Arrive jobId={job.id} />
      {clock?.(job)}
      <Link className={next ? 'button button-crew' : 'button button-main button-crew'} to="/jobs/$jobId" params={{ jobId: job.id }} hash={job.stage === 'proving' ? 'proof' : 'work'}>
        {t(job.stage === 'proving' ? 'jobs.crew.prove' : 'jobs.crew.work')}
      </Link>
    </div>
  );
}
