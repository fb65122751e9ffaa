import type { FieldFact, Held, StoredFact } from '@yardfall/contracts';
import type { Judgement } from './judge.rules.ts';
import type { LiveChecklist } from './live.ts';
import { inOrderOfRecording, type Placed } from './order.rules.ts';

/** What may be said of an item that is held: that it failed, a figure was mistyped, it does not apply, is waived, or that it rained. It counts as no work on it. */
const allowedWhileHeld: readonly FieldFact['kind'][] = ['failed', 'struck', 'notApplicable', 'waived', 'rained'];

/**
 * Judges every fact again in the order of recording: work on a guarded item counts when its hold points had opened by what was recorded before it.
 * So the same facts give the same verdicts in whatever order they arrive. Answers the facts whose verdict is another than before.
 * @param live the checklist with all its facts; it holds the new verdicts afterwards
 * @param fresh ids that were never judged for hold points: only for these the locate tickets of today are asked
 */
export function replay(live: LiveChecklist, fresh: ReadonlySet<string>): readonly StoredFact[] {
  const asItWas = live.withoutFacts();
  const changed: StoredFact[] = [];
  for (const placed of inOrderOfRecording(live.facts())) {
    const { stored } = placed;
    const { verdict, reason } = isOpen(stored, live) ? judgeHeld(placed, asItWas, fresh) : stored;
    const now = verdict === stored.verdict && reason === stored.reason ? stored : { ...stored, verdict, reason };
    asItWas.add(now);
    if (now !== stored) changed.push(now);
  }
  for (const one of changed) live.replace(one);
  return changed;
}

/** Only what counts, or did not because of a hold point, is judged again; every other reason is final here. */
function isOpen({ fact, verdict, reason }: StoredFact, live: LiveChecklist): boolean {
  const item = live.items.get(fact.itemKey);
  if (item === undefined || item.row.requirementHash !== fact.requirementHash || allowedWhileHeld.includes(fact.kind)) return false;
  return verdict === 'kept' || (verdict === 'refused' && (reason ?? '').startsWith('held:'));
}

function judgeHeld({ stored, at }: Placed, asItWas: LiveChecklist, fresh: ReadonlySet<string>): Judgement {
  const countedBefore = stored.verdict === 'kept' && !fresh.has(stored.fact.id);
  // Tickets are closed when the work is done: what was legal to dig then stays so.
  const held = asItWas.heldBy(stored.fact.itemKey, { at, mayDig: countedBefore || asItWas.moment(new Date(at)).mayDig });
  const guard = held.find((point) => !countedBefore || wasAsked(point, stored, asItWas));
  return guard === undefined ? { verdict: 'kept', reason: null } : { verdict: 'refused', reason: `held:${guard.holdPoint}` };
}

/** What a later design asks for does not undo work that counted before it. */
function wasAsked({ items }: Held, { serverTime }: StoredFact, { items: all }: LiveChecklist): boolean {
  return items.some((key) => (all.get(key)?.row.askedSince?.getTime() ?? -Infinity) <= Date.parse(serverTime));
}
