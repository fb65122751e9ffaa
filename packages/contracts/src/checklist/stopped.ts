import type { Requirement } from '../checklists.ts';
import type { FoundReport } from '../found.ts';

type Kind = FoundReport['kind'];

/** What was found, and at which part of the design; null when no part was named. */
export interface Stop {
  readonly kind: Kind;
  readonly part: string | null;
}

/** A step that asks about several parts together names each of them. */
interface Step {
  readonly template: string;
  readonly part: string | null;
  readonly requirement: Pick<Requirement, 'params'>;
}

const cutting = ['B5', 'C1', 'C2'];
const digging = ['C3', 'C4', 'C5', 'C6', 'C7', 'E1', 'F1', 'F2', 'G4'];

/** Steps of the whole job that wait for the answer, by what was found; `other` stops whatever is left. Common practice, no source. */
const stoppedBy: Readonly<Record<Kind, readonly string[] | 'all'>> = {
  thickerSlab: cutting, steel: cutting, pipeInTheWay: digging, water: digging, soil: digging, utility: [...cutting, ...digging], other: 'all',
};

/**
 * Whether a step waits for the answer to a finding: the steps of the part that it was found at, or, where no part was named, those of that kind of work.
 * A line in the ground stops all digging and cutting, wherever it was found.
 */
export function isStopped({ kind, part }: Stop, step: Step): boolean {
  // The record at the end names every part and builds none.
  if (part !== null && (step.part === part || (`at:${part}` in step.requirement.params && !step.template.startsWith('J')))) return true;
  if (part !== null && kind !== 'utility') return false;
  const steps = stoppedBy[kind];
  return steps === 'all' || steps.includes(step.template);
}
