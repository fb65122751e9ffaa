import type { JobStage } from '@yardfall/contracts';
import type { NewHold } from './holds.ts';

/** The way of a job; a stage is only ever left for a later one. `referred` and `declined` end it before anything is dug. */
export const way: readonly JobStage[] = ['intake', 'visit', 'design', 'pricing', 'offered', 'accepted', 'released', 'installing', 'proving', 'handedOver'];
export const ended: readonly JobStage[] = ['handedOver', 'referred', 'declined'];

export function isLater(from: JobStage, to: JobStage): boolean {
  return way.includes(from) && way.indexOf(to) > way.indexOf(from);
}

/** By hand: to the visit, back to or on to the design, or out of our hands, as long as nothing is released to dig. */
export function mayMoveByHand(from: JobStage, to: JobStage): boolean {
  const before = way.indexOf(from) >= 0 && way.indexOf(from) < way.indexOf('accepted');
  if (to === 'referred' || to === 'declined') return before || from === 'accepted';
  if (to === 'visit') return from === 'intake' || from === 'referred' || from === 'declined';
  return to === 'design' && (before || from === 'referred') && from !== 'design';
}

const holds: Partial<Record<JobStage, NewHold>> = {
  visit: { waitsFor: 'us', code: 'jobs.hold.survey' },
  design: { waitsFor: 'us', code: 'jobs.hold.design' },
  pricing: { waitsFor: 'us', code: 'jobs.hold.price' },
  referred: { waitsFor: 'us', code: 'jobs.hold.referred' },
  released: { waitsFor: 'marks', code: 'jobs.hold.locate' },
};

/** What the next stage waits for; the features replace it by what they know better. */
export function holdOf(stage: JobStage): NewHold | null {
  return holds[stage] ?? null;
}

export const stageHoldCodes = [
  'jobs.hold.visit', 'jobs.hold.visitSoon', 'jobs.hold.leakTest', 'jobs.hold.survey', 'jobs.hold.design', 'jobs.hold.price', 'jobs.hold.offer', 'jobs.hold.answer',
  'jobs.hold.release', 'jobs.hold.referred', 'jobs.hold.locate',
];
