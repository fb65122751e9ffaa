import type { JobRow } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { crewDay } from '../../../lib/crewDay.ts';
import { useText } from '../../../lib/reader.tsx';
import { Arrive } from './Arrive.tsx';
import { JobLine } from './JobLine.tsx';
import { LocateDates } from './LocateDates.tsx';
import { SmallSection } from './SmallSection.tsx';
import './OnThisJob.css';

interface OnThisJobProps {
  readonly jobs: readonly JobRow[];
  readonly memberId: string;
  /** The next thing to do on a job, as one large control. */
  readonly next?: (job: JobRow) => ReactNode;
}

/** The crew's home: one job with the next thing as one large control; the others one tap away. */
export function OnThisJob({ jobs, memberId, next }: OnThisJobProps) {
  const { t, say } = useText();
  const [first, ...others] = crewDay(jobs, memberId);
  return (
    <section className="stack" aria-labelledby="on-this-job">
      <Heading id="on-this-job">{t('jobs.onThisJob')}</Heading>
      {first === undefined ? <Empty what={t('jobs.onThisJob.empty')} why={t('jobs.onThisJob.why')} /> : (
        <div className="this-job">
          <SmallSection stage={first.stage} held={first.holds.length > 0} system={first.system} />
          <p className="this-job-name">{first.title}</p>
          <p>{first.address}</p>
          {first.locate ? <p><LocateDates job={first} /></p> : null}
          <Arrive jobId={first.id} />
          {first.holds.map((hold) => <Notice key={hold.id} severity="stop"><p>{say(hold.code, hold.params, { timeZone: first.timeZone })}</p></Notice>)}
          {next?.(first)}
          <Link className={next ? 'button button-crew' : 'button button-main button-crew'} to="/jobs/$jobId" params={{ jobId: first.id }} hash={first.stage === 'proving' ? 'proof' : 'work'}>
            {t(first.stage === 'proving' ? 'jobs.crew.prove' : 'jobs.crew.work')}
          </Link>
        </div>
      )}
      {others.length > 0 ? (
        <div>
          <Heading level={3}>{t('jobs.crew.others')}</Heading>
          <ul>{others.map((job) => <JobLine key={job.id} job={job} says={t(`jobs.next.${job.stage}`)} />)}</ul>
        </div>
      ) : null}
    </section>
  );
}
