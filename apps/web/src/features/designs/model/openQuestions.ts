import type { DesignDocument, OutletQuestions } from '@yardfall/calc';

/** O1 to O10, in the order in which they are asked. */
export const questions: readonly (keyof OutletQuestions)[] = [
  'outletTypeNamed', 'ownerKnown', 'permissionHeld', 'notSanitarySewer', 'notOntoNeighbour', 'associationAgrees', 'rightOfWayPermit', 'noWetland', 'clearOfSepticAndWell', 'noEasementConflict',
];

export interface OpenQuestion {
  readonly outlet: string;
  readonly number: number;
  readonly question: keyof OutletQuestions;
}

/** What nobody has answered yet, outlet by outlet. */
export function openQuestions({ system }: DesignDocument): OpenQuestion[] {
  return system.parts.flatMap((part) => (part.kind !== 'outlet' ? [] : questions.flatMap((question, at) => (part.questions[question] === 'unknown' ? [{ outlet: part.name, number: at + 1, question }] : []))));
}
