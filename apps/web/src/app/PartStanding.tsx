import type { Job } from '@yardfall/contracts';
import { LocateDates } from '../features/jobs/index.ts';
import { useText } from '../lib/reader.tsx';
import { wallClockIn } from '../lib/zoneTime.ts';
import type { JobHeading } from './jobSections.tsx';

/** What a part of the record waits for is what its hold says. */
const holdsOf: Partial<Record<JobHeading, Job['holds'][number]['waitsFor']>> = { permits: 'permit', locates: 'marks', proof: 'proof', offer: 'customer' };

/** How a closed part stands, in a line, from what the page knows without asking. */
export function PartStanding({ id, job }: { readonly id: JobHeading; readonly job: Job }) {
  const { t, say, q } = useText();
  const hold = job.holds.find(({ waitsFor }) => waitsFor === holdsOf[id]);
  if (hold) return say(hold.code, hold.params, { timeZone: job.timeZone });
  const handedOver = job.history.findLast(({ stage }) => stage === 'handedOver');
  const dayOf = (at: string) => q('date', wallClockIn(job.timeZone, new Date(at)).slice(0, 10));
  switch (id) {
    case 'site':
      return job.address;
    case 'locates':
      return job.locate ? <LocateDates job={job} /> : t('jobs.standing.noTicket');
    case 'permits':
      return t('jobs.standing.noPermitMissing');
    case 'design':
      return job.releasedAt === null ? null : t('jobs.standing.released', { day: dayOf(job.releasedAt) });
    case 'proof':
    case 'work':
      return t('jobs.standing.stage', { stage: `jobs.stage.${job.stage}` });
    case 'handover':
      return handedOver ? t('jobs.standing.handedOver', { day: dayOf(handedOver.at) }) : t('jobs.standing.notHandedOver');
    default:
      return null;
  }
}
