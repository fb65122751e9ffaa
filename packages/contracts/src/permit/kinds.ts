import type { DesignDocument, OutletQuestions } from '@yardfall/calc';

/** Permits and other approvals that are asked for on every job; which of them a place asks for is the word of its offices, never ours. */
export const permitKinds = [
  'plumbing', 'electrical', 'rightOfWay', 'grading', 'stormConnection', 'tree', 'floodPlain', 'wetland', 'association', 'poolBarrier', 'erosionControl', 'licence',
] as const;
export type PermitKind = (typeof permitKinds)[number];

export const outletQuestionIds = ['O1', 'O2', 'O3', 'O4', 'O5', 'O6', 'O7', 'O8', 'O9', 'O10'] as const;
export type OutletQuestionId = (typeof outletQuestionIds)[number];

export const outletQuestions = {
  O1: 'outletTypeNamed', O2: 'ownerKnown', O3: 'permissionHeld', O4: 'notSanitarySewer', O5: 'notOntoNeighbour', O6: 'associationAgrees',
  O7: 'rightOfWayPermit', O8: 'noWetland', O9: 'clearOfSepticAndWell', O10: 'noEasementConflict',
} as const satisfies Record<OutletQuestionId, keyof OutletQuestions>;

/** Approvals that the parts of this design usually ask for. The others may be asked for all the same. */
export function usualPermits({ system: { parts } }: DesignDocument): ReadonlySet<PermitKind> {
  const usual = new Set<PermitKind>();
  for (const part of parts) {
    if (part.kind === 'pump') usual.add('electrical').add('plumbing');
    if (part.kind === 'outlet' && part.outletKind === 'curb') usual.add('rightOfWay');
    if (part.kind === 'outlet' && part.outletKind === 'stormConnection') usual.add('stormConnection').add('plumbing');
    if (part.kind === 'swale') usual.add('grading');
  }
  return usual;
}
