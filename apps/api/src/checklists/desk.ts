import { type FieldFact, holdPointRules } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';
import { deskOf } from '../identity/phones.ts';
import type { LiveChecklist, LiveItem } from './live.ts';

type Body = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, keyof Base> : never) : never;
type Base = Pick<FieldFact, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'>;

/** A fact that a member records through an endpoint of its own and not from a phone's outbox: it follows all that is known of the item, and what opened the hold points before it. */
export async function deskFact(tx: Tx, actor: Actor, live: LiveChecklist, item: LiveItem, body: Body): Promise<FieldFact> {
  const deviceId = await deskOf(tx, actor);
  const last = await tx.fieldFact.aggregate({ where: { companyId: actor.companyId, deviceId }, _max: { seq: true } });
  const base: Base = {
    id: newId(), deviceId, seq: (last._max.seq ?? 0) + 1, deviceTime: actor.request.at.toISOString(), factVersion: 1, revisionId: item.row.revisionId, itemKey: item.row.key,
    requirementHash: item.row.requirementHash, seen: [...guardsOf(live, item), item].flatMap(({ facts }) => facts.map(({ fact }) => fact.id)).slice(-mostSeen),
  };
  return { ...base, ...body };
}

const mostSeen = 200;

function guardsOf({ items }: LiveChecklist, { row: { template, part } }: LiveItem): LiveItem[] {
  const before = holdPointRules.filter(({ guards }) => guards.includes(template));
  return [...items.values()].filter(({ row }) => row.template !== template && before.some((rule) => rule.items.includes(row.template) && (!rule.byPart || row.part === part)));
}
