import { permitGap, type Permit, type PermitGap, type Permits } from '@yardfall/contracts';
import { keptAnswers, lastAndRefused } from '../../../lib/answersHere.ts';
import type { JobAnswer, OutboxAnswer, OutboxEntry } from '../../../lib/outbox.ts';

type Approval = Extract<JobAnswer, { readonly what: 'permit' | 'outlet' }>;
export type ApprovalHere = OutboxAnswer & { readonly answer: Approval };

interface PermitsHere {
  readonly permits: Permits;
  /** What is on this phone of each approval and outlet question, by `permitKey` and `outletKey`. */
  readonly kept: ReadonlyMap<string, readonly ApprovalHere[]>;
}

export const permitKey = (kind: Permit['kind']) => kind;
export const outletKey = (outlet: string, question: string) => `${outlet} ${question}`;

/**
 * Where everything stands with what is on this phone, counted to the safe side: what holds the release holds it at once, what would
 * free it frees nothing until the office has it.
 * @param today the day where the property stands
 */
export function permitsHere(told: Permits, entries: readonly OutboxEntry[], jobId: string, today: string): PermitsHere {
  const kept = new Map<string, ApprovalHere[]>();
  const all: readonly ApprovalHere[] = [...keptAnswers(entries, jobId, 'permit'), ...keptAnswers(entries, jobId, 'outlet')];
  for (const entry of all) kept.set(keyOf(entry.answer), [...(kept.get(keyOf(entry.answer)) ?? []), entry]);
  const stricter = <A extends { readonly gap: PermitGap }>(key: string, approval: A): A => ({ ...approval, gap: worst(approval.gap, lastAndRefused(kept.get(key) ?? []), today) });
  return {
    kept,
    permits: {
      ...told,
      permits: told.permits.map((permit) => stricter(permitKey(permit.kind), permit)),
      outlets: told.outlets.map((outlet) => ({ ...outlet, questions: outlet.questions.map((question) => stricter(outletKey(outlet.outlet, question.question), question)) })),
    },
  };
}

function keyOf({ what, said }: Approval): string {
  return what === 'permit' ? permitKey(said.kind) : outletKey(said.outlet, said.question);
}

const weight = (gap: PermitGap) => (gap === null ? 0 : gap === 'refused' ? 2 : 1);

function worst(told: PermitGap, entries: readonly ApprovalHere[], today: string): PermitGap {
  const gaps = entries.map(({ answer: { said } }) => permitGap(said, today));
  return gaps.reduce((worse, gap) => (weight(gap) > weight(worse) ? gap : worse), told);
}

/** What stands about an answer on this phone, as a code. */
export function hereWords({ refused, answer: { said } }: ApprovalHere, today: string) {
  if (refused !== null) return 'locates.here.refused' as const;
  return permitGap(said, today) === null ? ('permits.here.waits' as const) : ('permits.here.holds' as const);
}
