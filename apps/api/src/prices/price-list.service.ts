import { Injectable } from '@nestjs/common';
import type { BodyOf, PriceItem, prices as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';
import { listItemOf, presentItem } from './prices.presenter.ts';
import type { ListItem } from './sheet.rules.ts';

/** The price list of a company: what the take-off of a design costs us. */
@Injectable()
export class PriceListService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor): Promise<{ items: PriceItem[] }> {
    return this.database.read(actor, async (tx) => {
      const rows = await tx.priceItem.findMany({ where: { companyId: actor.companyId }, orderBy: { code: 'asc' } });
      return { items: rows.map(presentItem) };
    });
  }

  save(actor: Actor, code: string, body: BodyOf<typeof api.saveItem>): Promise<PriceItem> {
    return this.database.write(actor, async (tx) => {
      const data = { ...body, unitCost: BigInt(body.unitCost), updatedAt: actor.request.at };
      const where = { companyId_code: { companyId: actor.companyId, code } };
      const row = await tx.priceItem.upsert({ where, create: { id: newId(), companyId: actor.companyId, code, ...data }, update: data });
      await audit(tx, actor, 'price.itemSaved', { id: row.id }, { code, unitCost: body.unitCost });
      return presentItem(row);
    });
  }

  /** For the sheets, inside their transaction. */
  async active(tx: Tx, actor: Actor): Promise<Map<string, ListItem>> {
    const rows = await tx.priceItem.findMany({ where: { companyId: actor.companyId, active: true } });
    return new Map(rows.map((row) => [row.code, listItemOf(row)]));
  }
}
