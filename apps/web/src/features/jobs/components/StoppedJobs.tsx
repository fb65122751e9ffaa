import type { JobRow } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { stoppedJobs, timeSince } from '../model/progress.ts';
import { JobLine } from './JobLine.tsx';

/** Before all else of a home: jobs whose crew stands and waits for an answer, with everything that was found. Nothing where none does. */
export function StoppedJobs({ jobs, now }: { readonly jobs: readonly JobRow[]; readonly now: number }) {
  const { t, say } = useText();
  const stopped = stoppedJobs(jobs);
  if (stopped.length === 0) return null;
  return (
    <div className="stopped-jobs">
      <Heading level={3} aside={t('jobs.count', { n: stopped.length })}>{t('jobs.stopped')}</Heading>
      <ul>
        {stopped.map(({ job, holds, since }) => {
          const { unit, n } = timeSince(since, now);
          return (
            <JobLine key={job.id} job={job} figure={t('jobs.stoppedFor', { time: t(`ui.${unit}`, { n }) })}
              says={<span className="stopped-holds">{holds.map((hold) => <span key={hold.id}><FindingMark severity="stop" wordUnseen /> {say(hold.code, hold.params, { timeZone: job.timeZone })}</span>)}</span>} />
          );
        })}
      </ul>
    </div>
  );
}
