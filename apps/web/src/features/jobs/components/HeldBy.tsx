import { waitsFor, type JobRow } from '@yardfall/contracts';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { heldBy, stoppedJobs } from '../model/progress.ts';
import { JobLine } from './JobLine.tsx';
import { StoppedJobs } from './StoppedJobs.tsx';

/** The owner's home: what is stopped, then every other open job under what it waits for, the longest wait first. */
export function HeldBy({ jobs, now }: { readonly jobs: readonly JobRow[]; readonly now: number }) {
  const { t, say } = useText();
  const groups = heldBy(jobs, now);
  return (
    <section className="stack" aria-labelledby="held-by">
      <Heading id="held-by">{t('jobs.heldBy')}</Heading>
      <StoppedJobs jobs={jobs} now={now} />
      {groups.size === 0 && stoppedJobs(jobs).length === 0 ? <Empty what={t('jobs.heldBy.empty')} why={t('jobs.heldBy.why')} /> : null}
      {waitsFor.filter((key) => groups.has(key)).map((key) => (
        <div key={key}>
          <Heading level={3} aside={t('jobs.count', { n: groups.get(key)?.length ?? 0 })}>{t(`jobs.waitsFor.${key}`)}</Heading>
          <ul>
            {groups.get(key)?.map(({ job, hold, days }) => (
              <JobLine key={job.id} job={job} figure={t('jobs.waitingFor', { days: t('ui.days', { n: days }) })} says={hold ? say(hold.code, hold.params, { timeZone: job.timeZone }) : t(`jobs.next.${job.stage}`)} />
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
