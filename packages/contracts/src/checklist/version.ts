/**
 * The rules by which a list was built. A list of earlier rules is judged by them to its end, so that what was proven stays so.
 * 2: a figure outside its limits is a failure, corrected and looked at again by somebody else; the tick of the taped grate is given after its photos.
 * 3: figures, photos and signers of each row; equal parts in one step; trench, bedding and cover of every buried line.
 * 4: likely rain asks for a pump where an old drain is cut; the trench is looked at each day and after rain; what is glued cures before it is put under pressure;
 * the contract is ticked once it cannot be cancelled; parts are checked line by line.
 */
export const rulesVersion = 4;

/** Lists that carry no number were built by the first rules. */
export function rulesOf({ rules }: { readonly rules?: number | undefined }): number {
  return rules ?? 1;
}
