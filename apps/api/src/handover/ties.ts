import { tiesOf, type TiesOnRecord } from '@yardfall/contracts';
import { loadChecklist } from '../checklists/live.ts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';

/** The ties that the crew recorded, as they are handed over; null where the list asked for none. */
export async function tiesOnRecord(tx: Tx, actor: Actor, jobId: string): Promise<TiesOnRecord | null> {
  const live = await loadChecklist(tx, actor, jobId);
  const steps = [...live.items.values()].map(({ row, requirement, facts }) => ({
    template: row.template, part: row.part, requirement, facts: facts.flatMap(({ fact, verdict }) => (verdict === 'kept' && fact.requirementHash === row.requirementHash ? [fact] : [])),
  }));
  const ties = tiesOf(steps);
  if (ties === null) return null;
  const [one, two] = ties.from;
  return { from: [one ?? '', two ?? ''], parts: ties.parts.map((part) => ({ ...part })) };
}
