import type { GivenTimes } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';
import type { LocateGiven, Prisma } from '../generated/prisma/client.ts';

const byEntry = [{ at: 'asc' }, { id: 'asc' }] satisfies Prisma.LocateGivenOrderByWithRelationInput[];
export const lastGiven = { locateGivens_ticket: { orderBy: byEntry } } satisfies Prisma.LocateTicketInclude;
export const givenWithNames = { locateGivens_ticket: { orderBy: byEntry, include: { recordedBy: { select: { name: true } } } } } satisfies Prisma.LocateTicketInclude;

/** What the center wrote, as it was entered last. */
export function givenTimes(rows: readonly Pick<LocateGiven, 'startAt' | 'expiresAt'>[]): GivenTimes | undefined {
  const last = rows.at(-1);
  return last === undefined ? undefined : { startAt: last.startAt?.toISOString() ?? null, expiresAt: last.expiresAt?.toISOString() ?? null };
}

export async function addGiven(tx: Tx, actor: Actor, ticketId: string, given: GivenTimes | undefined, note = ''): Promise<void> {
  if (given === undefined || (given.startAt === null && given.expiresAt === null && note === '')) return;
  await tx.locateGiven.create({ data: { id: newId(), companyId: actor.companyId, ticketId, startAt: given.startAt, expiresAt: given.expiresAt, note, recordedById: actor.id, at: actor.request.at } });
}
