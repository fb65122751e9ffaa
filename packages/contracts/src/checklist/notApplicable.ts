import type { Requirement } from '../checklists.ts';
import type { Role } from '../access.ts';
import { holdPointRules } from './guards.ts';

const guarded = new Set(holdPointRules.flatMap(({ guards }) => guards));
/** Steps that keep people from harm and wait for no hold point: private lines and power in the cut zone. Ours. */
const harm = new Set(['A3', 'B8']);

/** Whether owner or estimator says of a step that it does not apply: where somebody can come to harm, where the work waits for a hold point, and what the office ticks itself. */
export function officeSaysNot({ template, signers }: Pick<Requirement, 'template' | 'signers'>): boolean {
  return guarded.has(template) || harm.has(template) || (signers.includes('owner') && !signers.includes('crewLead'));
}

/** What proves a hold point always applies; its exception is the owner's waiver. */
export function maySayNot(requirement: Pick<Requirement, 'template' | 'signers'>, holdPoint: string | null, roles: readonly Role[]): boolean {
  return holdPoint === null && (!officeSaysNot(requirement) || roles.includes('owner') || roles.includes('estimator'));
}
