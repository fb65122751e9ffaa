import type { JobRow, JobStage, SystemPart } from '@yardfall/contracts';

/** Parts of the small section, in the order that water passes them and a job reaches them. */
export const sectionParts = ['sill', 'roof', 'drain', 'pipe', 'basin', 'line', 'swale', 'outlet'] as const;
export type SectionPart = (typeof sectionParts)[number];

const reached: Readonly<Record<JobStage, number>> = {
  intake: 0, visit: 0, design: 1, pricing: 2, offered: 2, accepted: 3, released: 4, installing: 4, proving: 5, handedOver: 6, referred: 1, declined: 0,
};

/** Steps from the call to the handover. */
const steps = 6;

export type PartStanding = 'done' | 'next' | 'notYet';

/** The parts that the sketch of a job has: without a pump there is no pit and no pump line, and before a design only the house is known. */
export function sketched(system: readonly SystemPart[] | null): readonly SectionPart[] {
  if (system === null) return ['sill'];
  const has = (part: SystemPart): boolean => system.includes(part);
  const there: Readonly<Record<SectionPart, boolean>> = {
    sill: true, roof: has('roof') && !has('drain'), drain: has('drain'), pipe: has('pipe') && (has('drain') || has('roof')), basin: has('pump'), line: has('pump'), swale: has('swale'), outlet: true,
  };
  return sectionParts.filter((part) => there[part]);
}

/** How far a job is, told by its section: done parts solid, the next one bold, the rest thin. */
export function standing(stage: JobStage, parts: readonly SectionPart[]): ReadonlyMap<SectionPart, PartStanding> {
  const count = Math.floor((reached[stage] / steps) * parts.length);
  return new Map(parts.map((part, index) => [part, index < count ? 'done' : index === count ? 'next' : 'notYet']));
}

export function isOpen(stage: JobStage): boolean {
  return stage !== 'handedOver' && stage !== 'declined';
}

export function daysSince(instant: string, now: number): number {
  return Math.max(0, Math.floor((now - new Date(instant).getTime()) / 86_400_000));
}

type Hold = JobRow['holds'][number];

export interface StoppedJob {
  readonly job: JobRow;
  /** Everything that the crew found and nobody has answered, the oldest first; then what else holds the job. */
  readonly holds: readonly Hold[];
  readonly since: string;
}

const byTime = (a: Hold, b: Hold) => a.since.localeCompare(b.since);
const isFound = ({ code }: Hold) => code === 'found.hold.open';

/** Jobs whose work the crew has stopped, the longest first: somebody stands there and waits. */
export function stoppedJobs(jobs: readonly JobRow[]): readonly StoppedJob[] {
  return jobs.flatMap((job): StoppedJob[] => {
    const found = job.holds.filter(isFound).toSorted(byTime);
    const [oldest] = found;
    return oldest === undefined ? [] : [{ job, holds: [...found, ...job.holds.filter((hold) => !isFound(hold)).toSorted(byTime)], since: oldest.since }];
  }).toSorted((a, b) => a.since.localeCompare(b.since));
}

/** Minutes for the first two hours, then hours for two days, then days. */
export function timeSince(instant: string, now: number): { readonly unit: 'minutes' | 'hours' | 'days'; readonly n: number } {
  const minutes = Math.max(0, Math.floor((now - Date.parse(instant)) / 60_000));
  if (minutes < 120) return { unit: 'minutes', n: minutes };
  return minutes < 2880 ? { unit: 'hours', n: Math.floor(minutes / 60) } : { unit: 'days', n: Math.floor(minutes / 1440) };
}

export interface HeldJob {
  readonly job: JobRow;
  readonly hold: Hold | null;
  readonly days: number;
}

/** Every open job whose work is not stopped once, under what it has waited for longest; longest first. A job that nothing holds waits for us. */
export function heldBy(jobs: readonly JobRow[], now: number): Map<Hold['waitsFor'], HeldJob[]> {
  const groups = new Map<Hold['waitsFor'], HeldJob[]>();
  const held = jobs.filter((job) => isOpen(job.stage) && !job.holds.some(isFound)).map((job): HeldJob => {
    const [hold = null] = job.holds.toSorted(byTime);
    return { job, hold, days: daysSince(hold?.since ?? job.updatedAt, now) };
  });
  for (const one of held.sort((a, b) => b.days - a.days)) {
    const key = one.hold?.waitsFor ?? 'us';
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return groups;
}
