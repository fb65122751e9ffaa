import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { newId } from '../common/ids.ts';

/** The phone that speaks must be one that its member has made known; one request comes from one phone. */
export async function requirePhone(tx: Tx, actor: Actor, facts: readonly { readonly deviceId: string }[]): Promise<{ readonly cutOff: boolean }> {
  const ids = [...new Set(facts.map(({ deviceId }) => deviceId))];
  const device = found(await tx.device.findFirst({ where: { companyId: actor.companyId, memberId: actor.id, id: ids[0] ?? '' } }));
  if (ids.length > 1) throw new DomainError('request.invalid', {}, [{ path: 'body.facts', message: 'come from more than one device' }]);
  return { cutOff: device.cutOffAt !== null || actor.cutOff === true };
}

const desk = 'desk';

/** The member's own desk, for facts that come through an endpoint of their own; locked so that its sequence has no gap and no double. */
export async function deskOf(tx: Tx, actor: Actor): Promise<string> {
  const known = await tx.$queryRaw<{ id: string }[]>`
    SELECT id FROM device WHERE company_id = ${actor.companyId}::uuid AND member_id = ${actor.id}::uuid AND name = ${desk} ORDER BY id LIMIT 1 FOR UPDATE`;
  if (known.length > 0) return found(known[0]).id;
  const { id } = await tx.device.create({ data: { id: newId(), companyId: actor.companyId, memberId: actor.id, name: desk, createdAt: actor.request.at } });
  return id;
}
