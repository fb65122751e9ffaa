import { Injectable } from '@nestjs/common';
import type { identity as api, ResponseOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import type { Device as DeviceRow } from '../generated/prisma/client.ts';

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
        where: key, create: { id, companyId: actor.companyId, memberId: actor.id, name, createdAt: actor.request.at }, update: { name },
      });
      if (known === null) await audit(tx, actor, 'device.registered', { id });
      return present(row);
    });
  }

  cutOff(actor: Actor, id: string): Promise<Device> {
    return this.database.write(actor, async (tx) => {
      const known = found(await this.row(tx, actor, id));
      if (known.cutOffAt !== null) return present(known);
      const row = await tx.device.update({ where: { companyId_id: { companyId: actor.companyId, id } }, data: { cutOffAt: actor.request.at } });
      await audit(tx, actor, 'device.cutOff', { id });
      return present(row);
    });
  }

  private row(tx: Tx, actor: Actor, id: string) {
    return tx.device.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } } });
  }
}

function present(row: DeviceRow): Device {
  return { id: row.id, name: row.name, cutOffAt: row.cutOffAt?.toISOString() ?? null };
}
