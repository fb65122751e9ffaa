import { slipWithin, type FieldFact } from '@yardfall/contracts';
import type { ItemView } from './view.ts';

/** The figure of a failed step that this person typed last, a few minutes ago, and may take back; null when there is none. */
export function mistypedBy({ item, facts, waiting, state }: ItemView, memberId: string | null, now: number): string | null {
  if (state !== 'failed' && state !== 'disputed') return null;
  const struck = new Set(facts.flatMap((fact) => (fact.kind === 'struck' ? [fact.figure] : [])));
  const ours = new Set([...item.facts.filter((stored) => stored.memberId === memberId).map(({ fact }) => fact.id), ...waiting.map(({ id }) => id)]);
  const last = facts.findLast((fact) => isFigure(fact) && !struck.has(fact.id));
  if (last === undefined || !ours.has(last.id)) return null;
  return now - Date.parse(last.deviceTime) <= slipWithin ? last.id : null;
}

function isFigure({ kind }: FieldFact): boolean {
  return kind === 'measured' || kind === 'profile';
}
