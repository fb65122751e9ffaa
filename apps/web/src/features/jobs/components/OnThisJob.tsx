import type { JobRow } from '@yardfall/contracts';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { crewDay } from '../../../lib/crewDay.ts';
import { useText } from '../../../lib/reader.tsx';
import { JobLine } from './JobLine.tsx';
import { ThisJob, type JobSlots } from './ThisJob.tsx';
import './OnThisJob.css';

interface OnThisJobProps extends JobSlots {
  readonly jobs: readonly JobRow[];
  readonly memberId: string;
}

/** The crew's home: one job with the next thing as one large control; the others one tap away. */
export function OnThisJob({ jobs, memberId, ...slots }: OnThisJobProps) {
  const { t } = useText();
  const [first, ...others] = crewDay(jobs, memberId);
  return (
    <section className="stack" aria-labelledby="on-this-job">
      <Heading id="on-this-job">{t('jobs.onThisJob')}</Heading>
      {first === undefined ? <Empty what={t('jobs.onThisJob.empty')} why={t('jobs.onThisJob.why')} /> : <ThisJob job={first} {...slots} />}
      {others.length > 0 ? (
        <div>
          <Heading level={3}>{t('jobs.crew.others')}</Heading>
          <ul className="other-jobs">{others.map((job) => <JobLine key={job.id} job={job} says={t(`jobs.next.${job.stage}`)} />)}</ul>
        </div>
      ) : null}
    </section>
  );
}
