import { holdPointRules } from '../checklist/guards.ts';

/** Lines that belong to the homeowner: 811 does not mark them. */
export const privateLineKinds = ['irrigation', 'pool', 'septic', 'gasAfterMeter', 'lights', 'subPanel', 'invisibleFence'] as const;
export type PrivateLineKind = (typeof privateLineKinds)[number];

/** `locator`: whether somebody looked for them with an instrument. */
export const privateQuestions = [...privateLineKinds, 'locator'] as const;
export type PrivateQuestion = (typeof privateQuestions)[number];

export const privateStates = ['yes', 'no', 'unknown'] as const;
export type PrivateState = (typeof privateStates)[number];

export interface PrivateAnswer {
  readonly question: PrivateQuestion;
  readonly state: PrivateState;
}

/** What whoever digs is warned of: nobody said whether there is one, or there is one and nobody has located it. */
export function privateLineWarnings(answers: readonly PrivateAnswer[]): readonly { readonly kind: PrivateLineKind; readonly why: 'unknown' | 'notLocated' | 'located' }[] {
  const state = (question: PrivateQuestion) => answers.find((answer) => answer.question === question)?.state ?? 'unknown';
  const isLocated = state('locator') === 'yes';
  return privateLineKinds.flatMap((kind) => {
    const is = state(kind);
    if (is === 'no') return [];
    return [{ kind, why: is === 'unknown' ? 'unknown' as const : isLocated ? 'located' as const : 'notLocated' as const }];
  });
}

const first = holdPointRules.filter(({ id }) => id === 'HP-1').flatMap(({ items, guards }) => [...items, ...guards]);
/** Steps at which the crew is warned: those of the hold point for locates and what it guards, and the declaration itself. */
export const privateLineSteps: ReadonlySet<string> = new Set([...first, 'A3']);
