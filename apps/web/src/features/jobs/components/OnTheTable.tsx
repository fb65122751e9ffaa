import type { JobRow, JobStage } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { daysSince, stoppedJobs } from '../model/progress.ts';
import { JobLine } from './JobLine.tsx';
import { StoppedJobs } from './StoppedJobs.tsx';

interface Group {
  readonly key: 'field' | 'walk' | 'draft' | 'out';
  readonly stages: readonly JobStage[];
  /** Only jobs that wait for us. */
  readonly ours?: true;
}

const groups: readonly Group[] = [
  { key: 'field', stages: ['released', 'installing', 'proving'], ours: true },
  { key: 'walk', stages: ['intake', 'visit'] },
  { key: 'draft', stages: ['design', 'pricing'] },
  { key: 'out', stages: ['offered', 'accepted'] },
];

/** The estimator's home: work that is stopped, sites to walk, designs in draft, offers out. */
export function OnTheTable({ jobs, now }: { readonly jobs: readonly JobRow[]; readonly now: number }) {
  const { t, say } = useText();
  const stopped = new Set(stoppedJobs(jobs).map(({ job }) => job.id));
  const filled = groups
    .map(({ key, stages, ours }) => ({ key, jobs: jobs.filter((job) => !stopped.has(job.id)).filter((job) => stages.includes(job.stage) && (!ours || job.holds.some((hold) => hold.waitsFor === 'us'))) }))
    .filter((group) => group.jobs.length > 0);
  return (
    <section className="stack" aria-labelledby="on-the-table">
      <Heading id="on-the-table">{t('jobs.onTheTable')}</Heading>
      <StoppedJobs jobs={jobs} now={now} />
      {filled.length === 0 && stopped.size === 0 ? (
        <Empty what={t('jobs.onTheTable.empty')} why={t('jobs.onTheTable.why')} step={<Link className="button button-main" to="/jobs/new">{t('ui.newJob')}</Link>} />
      ) : null}
      {filled.map((group) => (
        <div key={group.key}>
          <Heading level={3} aside={t('jobs.count', { n: group.jobs.length })}>{t(`jobs.table.${group.key}`)}</Heading>
          <ul>
            {group.jobs.map((job) => (
              <JobLine key={job.id} job={job} figure={t('jobs.untouchedFor', { days: t('ui.days', { n: daysSince(job.updatedAt, now) }) })}
                says={job.holds[0] ? say(job.holds[0].code, job.holds[0].params, { timeZone: job.timeZone }) : t(`jobs.next.${job.stage}`)} />
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
