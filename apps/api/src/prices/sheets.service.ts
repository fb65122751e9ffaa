import { Injectable } from '@nestjs/common';
import type { BodyOf, prices as api, PriceSheet } from '@yardfall/contracts';
import { type Language, render } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { requireVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { lineCost, type MoneyRates, totalsOf } from './money.rules.ts';
import { PriceListService } from './price-list.service.ts';
import { lineFromInput, presentSheet, presentTotals, quantitiesOf, sheetParts } from './prices.presenter.ts';
import { atSheetRate, type LabourLine, linesOf, type ListItem, type SheetLine } from './sheet.rules.ts';
import { fromThousandths } from './units.rules.ts';

type Rates = MoneyRates & { readonly labourRate: bigint };

/** Where a company has no sheet yet: 38 % margin, 7 % tax on materials, 6 % contingency, $42 an hour (ours, for every sheet to change). */
const firstRates: Rates = { marginBasisPoints: 3800, taxBasisPoints: 700, contingencyBasisPoints: 600, labourRate: 420_000n };

@Injectable()
export class SheetsService {
  private readonly database: Database;
  private readonly list: PriceListService;

  constructor(database: Database, list: PriceListService) {
    this.database = database;
    this.list = list;
  }

  ofJob(actor: Actor, jobId: string): Promise<{ items: PriceSheet[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.priceSheet.findMany({ where: { companyId: actor.companyId, jobId }, include: sheetParts, orderBy: { id: 'desc' } });
      return { items: rows.map(presentSheet) };
    });
  }

  create(actor: Actor, jobId: string, { revisionId }: BodyOf<typeof api.create>): Promise<PriceSheet> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const revision = found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId }, omit: { document: true } }));
      if (revision.evaluation === null) throw new DomainError('conflict.state');
      const rates = await this.lastRates(tx, actor);
      const { lines } = linesOf(quantitiesOf(revision.evaluation), await this.list.active(tx, actor), { name: await labourName(tx, actor), rate: rates.labourRate });
      const id = newId();
      const totals = presentTotals(totalsOf(lines, rates));
      await tx.priceSheet.create({ data: { id, companyId: actor.companyId, jobId, revisionId, status: 'draft', ...rates, totals, createdById: actor.id, createdAt: actor.request.at } });
      await this.writeLines(tx, actor, id, lines);
      return this.finish(tx, actor, 'price.sheetMade', jobId, id);
    });
  }

  replace(actor: Actor, jobId: string, sheetId: string, { lines: inputs, labourRate, ...rest }: BodyOf<typeof api.replace>): Promise<PriceSheet> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const { companyId } = actor;
      const row = found(await tx.priceSheet.findFirst({ where: { companyId, jobId, id: sheetId } }));
      if (row.status !== 'draft') throw new DomainError('conflict.state', { status: row.status });
      requireVersion(actor.request, row.version);
      const rates: Rates = { ...rest, labourRate: BigInt(labourRate) };
      const lines = inputs.map((input) => atSheetRate(lineFromInput(input), rates.labourRate));
      await tx.priceLine.deleteMany({ where: { companyId, sheetId } });
      await this.writeLines(tx, actor, sheetId, lines);
      await tx.priceSheet.update({ where: { companyId_id: { companyId, id: sheetId } }, data: { ...rates, totals: presentTotals(totalsOf(lines, rates)), version: { increment: 1 } } });
      return this.finish(tx, actor, 'price.sheetChanged', jobId, sheetId);
    });
  }

  /** For an offer, inside its transaction: the complete sheet, which nobody changes any more. */
  async freeze(tx: Tx, actor: Actor, jobId: string, sheetId: string): Promise<PriceSheet> {
    const sheet = await this.describe(tx, actor, jobId, sheetId);
    if (sheet.missing.length > 0) throw new DomainError('price.incomplete', { missing: sheet.missing.join(',') }, sheet.missing.map((code) => ({ path: code, message: 'has no price' })));
    const where = { companyId_id: { companyId: actor.companyId, id: sheetId } };
    if (sheet.status === 'draft') await tx.priceSheet.update({ where, data: { status: 'frozen', frozenAt: actor.request.at } });
    return this.describe(tx, actor, jobId, sheetId);
  }

  /** The price list with the crew's last rate, for whoever weighs designs by cost. */
  async priceList(tx: Tx, actor: Actor): Promise<{ readonly items: ReadonlyMap<string, ListItem>; readonly labour: LabourLine }> {
    const { labourRate } = await this.lastRates(tx, actor);
    return { items: await this.list.active(tx, actor), labour: { name: await labourName(tx, actor), rate: labourRate } };
  }

  private async describe(tx: Tx, actor: Actor, jobId: string, id: string): Promise<PriceSheet> {
    return presentSheet(found(await tx.priceSheet.findFirst({ where: { companyId: actor.companyId, jobId, id }, include: sheetParts })));
  }

  private async finish(tx: Tx, actor: Actor, action: string, jobId: string, id: string): Promise<PriceSheet> {
    const sheet = await this.describe(tx, actor, jobId, id);
    await audit(tx, actor, action, { jobId, id }, { lines: sheet.lines.length, missing: sheet.missing.length });
    await emit(tx, actor, 'price', jobId, id);
    return sheet;
  }

  private async writeLines(tx: Tx, actor: Actor, sheetId: string, lines: readonly SheetLine[]): Promise<void> {
    const data = lines.map((line, position) => ({ id: newId(), companyId: actor.companyId, sheetId, position, ...line, quantity: fromThousandths(line.quantity), cost: lineCost(line) }));
    await tx.priceLine.createMany({ data });
  }

  private async lastRates(tx: Tx, actor: Actor): Promise<Rates> {
    const row = await tx.priceSheet.findFirst({ where: { companyId: actor.companyId }, orderBy: { id: 'desc' } });
    if (row === null) return firstRates;
    const { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate } = row;
    return { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate };
  }
}

async function labourName(tx: Tx, actor: Actor): Promise<string> {
  const { language } = found(await tx.company.findUnique({ where: { id: actor.companyId }, select: { language: true } }));
  return render(language as Language, 'us', 'prices.line.labour');
}
