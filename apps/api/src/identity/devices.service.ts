import { Injectable } from '@nestjs/common';
import type { identity as api, ResponseOf, SignedIn } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import type { Device as DeviceRow, Prisma } from '../generated/prisma/client.ts';

type Device = ResponseOf<typeof api.registerDevice>;

/** A fact is accepted from a phone that is known here. */
@Injectable()
export class DevicesService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  /** The phone makes its own id; registering it again by the same person only renames it. */
  register(actor: Actor, id: string, name: string): Promise<Device> {
    return this.database.write(actor, async (tx) => {
      const key = { companyId_id: { companyId: actor.companyId, id } };
      const known = await tx.device.findUnique({ where: key });
      if (known !== null && known.memberId !== actor.id) throw new DomainError('conflict.duplicate');
      const row = await tx.device.upsert({
        where: key, create: { id, companyId: actor.companyId, memberId: actor.id, name, createdAt: actor.request.at, cutOffAt: actor.cutOff === true ? actor.request.at : null }, update: { name },
      });
      if (known === null) await audit(tx, actor, 'device.registered', { id });
      if (actor.sessionId !== null) await tx.session.updateMany({ where: { companyId: actor.companyId, id: actor.sessionId, deviceId: null }, data: { deviceId: id } });
      return present(row);
    });
  }

  cutOff(actor: Actor, id: string): Promise<Device> {
    return this.database.write(actor, async (tx) => {
      const known = found(await this.row(tx, actor, id));
      if (known.cutOffAt !== null) return present(known);
      const row = await tx.device.update({ where: { companyId_id: { companyId: actor.companyId, id } }, data: { cutOffAt: actor.request.at } });
      await tx.session.updateMany({ where: { companyId: actor.companyId, deviceId: id, cutOffAt: null }, data: { cutOffAt: actor.request.at } });
      await audit(tx, actor, 'device.cutOff', { id });
      return present(row);
    });
  }

  /** Sessions of members that are open now, the newest first. */
  async signedIn(actor: Actor): Promise<{ items: SignedIn[] }> {
    return this.database.read(actor, async (tx) => {
      const where = { companyId: actor.companyId, memberId: { not: null }, revokedAt: null, expiresAt: { gt: actor.request.at }, member: { active: true } };
      const rows = await tx.session.findMany({ where, include: sessionParts, orderBy: [{ createdAt: 'desc' }, { id: 'desc' }], take: 500 });
      return { items: rows.map((row) => presentSession(row, actor)) };
    });
  }

  /** The phone of the session records into quarantine from now on, and its session reads nothing. Nobody cuts off what they sit at. */
  cutOffSession(actor: Actor, id: string): Promise<SignedIn> {
    if (id === actor.sessionId) throw new DomainError('conflict.state', { own: true });
    return this.database.write(actor, async (tx) => {
      const key = { companyId_id: { companyId: actor.companyId, id } };
      const known = found(await tx.session.findFirst({ where: { companyId: actor.companyId, id, memberId: { not: null } }, include: sessionParts }));
      if (known.cutOffAt !== null) return presentSession(known, actor);
      const row = await tx.session.update({ where: key, data: { cutOffAt: actor.request.at }, include: sessionParts });
      if (row.deviceId !== null) await tx.device.updateMany({ where: { companyId: actor.companyId, id: row.deviceId, cutOffAt: null }, data: { cutOffAt: actor.request.at } });
      await audit(tx, actor, 'device.cutOff', { id }, { name: row.member?.name ?? '' });
      await emit(tx, actor, 'sessions', null, row.memberId);
      return presentSession(row, actor);
    });
  }

  private row(tx: Tx, actor: Actor, id: string) {
    return tx.device.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } } });
  }
}

function present(row: DeviceRow): Device {
  return { id: row.id, name: row.name, cutOffAt: row.cutOffAt?.toISOString() ?? null };
}

const sessionParts = { member: { select: { name: true } } } satisfies Prisma.SessionInclude;
type SessionRecord = Prisma.SessionGetPayload<{ include: typeof sessionParts }>;

function presentSession(row: SessionRecord, actor: Actor): SignedIn {
  return { id: row.id, memberId: row.memberId ?? '', name: row.member?.name ?? '', userAgent: row.userAgent, createdAt: row.createdAt.toISOString(), cutOffAt: row.cutOffAt?.toISOString() ?? null, own: row.id === actor.sessionId };
}
