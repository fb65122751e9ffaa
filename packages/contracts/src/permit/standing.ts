/** Where an approval stands. Only `granted` and `notNeeded` let a job be released to dig. */
export const permitStates = ['unknown', 'notNeeded', 'applied', 'granted', 'refused'] as const;
export type PermitState = (typeof permitStates)[number];

/** Why it holds the release; null when it does not. */
export type PermitGap = 'unknown' | 'applied' | 'refused' | 'expired' | null;

interface Standing {
  readonly state: PermitState;
  /** Last day on which it is good, YYYY-MM-DD. */
  readonly expiresOn: string | null;
}

/** @param today the day where the property stands */
export function permitGap(answer: Standing | null, today: string): PermitGap {
  if (answer === null || answer.state === 'unknown') return 'unknown';
  if (answer.state === 'applied' || answer.state === 'refused') return answer.state;
  return answer.expiresOn !== null && answer.expiresOn < today ? 'expired' : null;
}

interface Evidence extends Standing {
  readonly number: string;
  readonly note: string;
  readonly on: string | null;
  readonly photoId: string | null;
}

/** What an answer lacks to count: an approval is shown by a paper, a picture or who said it and when, a "not needed" by its reason. */
export function evidenceLacking({ state, number, note, on, photoId }: Evidence): readonly ('number' | 'note' | 'on')[] {
  switch (state) {
    case 'unknown': return [];
    case 'notNeeded': case 'refused': return note === '' ? ['note'] : [];
    case 'applied': return [...(number === '' ? ['number' as const] : []), ...(on === null ? ['on' as const] : [])];
    case 'granted': return [...(number === '' && note === '' && photoId === null ? ['note' as const] : []), ...(on === null ? ['on' as const] : [])];
  }
}
