/** What can be said of a step beside its evidence. */
export type Way = 'notApplicable' | 'failed' | 'corrected' | 'waived';

/** Fewest characters of a reason in one's own words. */
export const shortest: Readonly<Record<Way, number>> = { notApplicable: 10, failed: 3, corrected: 3, waived: 10 };

/** Reasons to be chosen with one touch, `checklists.ready.<way>.<name>`; a waiver is written by the owner alone. */
export const readyReasons = {
  failed: ['level', 'line', 'leaks', 'broken', 'wrongPart', 'unfinished'],
  notApplicable: ['notHere', 'thereAlready', 'byOthers', 'agreed'],
  corrected: ['setAgain', 'sealedAgain', 'replaced', 'doneAgain', 'cleaned'],
  waived: [],
} as const satisfies Readonly<Record<Way, readonly string[]>>;

/** The reason as it is recorded: what was chosen, then what was written. */
export function reasonOf(chosen: string, words: string): string {
  return [chosen, words.trim()].filter((part) => part !== '').join('. ');
}
