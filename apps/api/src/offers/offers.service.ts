import { Injectable } from '@nestjs/common';
import { type BodyOf, canonicalBytes, type Offer, type offers as api, sha256Hex } from '@yardfall/contracts';
import type { Language } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { CustomersService } from '../customers/customers.service.ts';
import { documentOf, evaluationOf } from '../designs/designs.presenter.ts';
import { LinksService } from '../identity/links.service.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { jobParts } from '../jobs/jobs.presenter.ts';
import { dayAt, dayOf } from '../jobs/propertyDay.ts';
import { advance } from '../jobs/stages.ts';
import { SheetsService } from '../prices/sheets.service.ts';
import { isExpired, offerTexts, renderOffer } from './offer.rules.ts';
import { offerParts, type OfferRecord, placeOf, presentOffer, statusOf } from './offers.presenter.ts';
import { whyTexts } from './why.rules.ts';

const waiting = ['jobs.hold.price', 'jobs.hold.offer', 'jobs.hold.answer'];

@Injectable()
export class OffersService {
  private readonly database: Database;
  private readonly sheets: SheetsService;
  private readonly customers: CustomersService;
  private readonly links: LinksService;

  constructor(database: Database, sheets: SheetsService, customers: CustomersService, links: LinksService) {
    this.database = database;
    this.sheets = sheets;
    this.customers = customers;
    this.links = links;
  }

  list(actor: Actor, jobId: string): Promise<{ items: Offer[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.offer.findMany({ where: { companyId: actor.companyId, jobId }, ...offerParts, orderBy: { number: 'desc' } });
      return { items: rows.map((row) => presentOffer(row, actor, this.customers)) };
    });
  }

  create(actor: Actor, jobId: string, { sheetId, validUntil, message }: BodyOf<typeof api.create>): Promise<Offer> {
    return this.database.write(actor, async (tx) => {
      const { companyId } = actor;
      await lockJob(tx, actor, jobId);
      const job = found(await tx.job.findUnique({ where: keyOf(actor, jobId), include: { ...jobParts, company: true } }));
      if (isExpired(validUntil, dayAt(actor.request.at, job.property.timeZone))) throw new DomainError('request.invalid', {}, [{ path: 'body.validUntil', message: 'is over already' }]);
      const sheet = await this.sheets.freeze(tx, actor, jobId, sheetId);
      const revision = found(await tx.revision.findUnique({ where: keyOf(actor, sheet.revisionId) }));
      const evaluation = evaluationOf(revision.evaluation);
      if (revision.status !== 'issued' || evaluation === null) throw new DomainError('conflict.state', { status: revision.status });
      const document = documentOf(revision.document);
      const number = (await tx.offer.count({ where: { companyId, jobId } })) + 1;
      const texts = offerTexts({
        number, company: job.company.name, customerName: found(this.customers.person(job.customer)).name, address: found(this.customers.place(job.customer, job.property)).address,
        message, designName: sheet.designName, revisionNumber: revision.number, documentSha256: revision.documentSha256, document,
        why: whyTexts(document, evaluation, job.company.responsibleName), price: sheet.totals.price, validUntil,
      });
      const id = newId();
      const bytes = renderOffer(texts, job.customer.language as Language);
      await tx.offer.create({
        data: {
          id, companyId, jobId, revisionId: revision.id, number, status: 'draft', price: BigInt(sheet.totals.price), sha256: await sha256Hex(bytes), language: job.customer.language,
          content: this.customers.sealBytes(job.customer, placeOf.content(id), bytes), texts: this.customers.sealBytes(job.customer, placeOf.texts(id), canonicalBytes(texts)),
          validUntil: new Date(`${validUntil}T00:00:00Z`), createdById: actor.id, createdAt: actor.request.at,
        },
      });
      await tx.offerSheet.create({ data: { id: newId(), companyId, offerId: id, sheetId } });
      await clearHolds(tx, actor, jobId, waiting);
      await setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.offer' });
      return this.finish(tx, actor, 'offer.made', jobId, id);
    });
  }

  send(actor: Actor, jobId: string, offerId: string): Promise<{ offer: Offer; link: string }> {
    return this.database.write(actor, async (tx) => {
      const { job, offer } = await this.open(tx, actor, jobId, offerId, ['draft', 'sent']);
      const { at } = actor.request;
      if (isExpired(dayOf(offer.validUntil), dayAt(at, offer.job.property.timeZone))) throw new DomainError('offer.notOpen', { status: 'expired' });
      const others = { companyId: actor.companyId, jobId, status: 'sent', id: { not: offerId } };
      await tx.offer.updateMany({ where: others, data: { status: 'withdrawn', withdrawnAt: at } });
      if (offer.status === 'draft') await tx.offer.update({ where: keyOf(actor, offerId), data: { status: 'sent', sentAt: at } });
      const { link } = await this.links.mintForCustomer(tx, actor, jobId);
      await advance(tx, actor, job, 'offered');
      await clearHolds(tx, actor, jobId, waiting);
      await setHold(tx, actor, jobId, { waitsFor: 'customer', code: 'jobs.hold.answer', params: { number: offer.number, validUntil: dayOf(offer.validUntil) } });
      return { offer: await this.finish(tx, actor, 'offer.sent', jobId, offerId), link };
    });
  }

  withdraw(actor: Actor, jobId: string, offerId: string): Promise<Offer> {
    return this.database.write(actor, async (tx) => {
      await this.open(tx, actor, jobId, offerId, ['draft', 'sent', 'expired']);
      await tx.offer.update({ where: keyOf(actor, offerId), data: { status: 'withdrawn', withdrawnAt: actor.request.at } });
      await clearHolds(tx, actor, jobId, waiting);
      await setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.offer' });
      return this.finish(tx, actor, 'offer.withdrawn', jobId, offerId);
    });
  }

  private async open(tx: Tx, actor: Actor, jobId: string, offerId: string, allowed: readonly Offer['status'][]) {
    const job = await lockJob(tx, actor, jobId);
    const offer = await this.row(tx, actor, jobId, offerId);
    const status = statusOf(offer, actor.request.at);
    if (!allowed.includes(status)) throw new DomainError('offer.notOpen', { status });
    return { job, offer };
  }

  private async row(tx: Tx, actor: Actor, jobId: string, id: string): Promise<OfferRecord> {
    return found(await tx.offer.findFirst({ where: { companyId: actor.companyId, jobId, id }, ...offerParts }));
  }

  private async finish(tx: Tx, actor: Actor, action: string, jobId: string, id: string): Promise<Offer> {
    const row = await this.row(tx, actor, jobId, id);
    await audit(tx, actor, action, { jobId, id }, { number: row.number, sha256: row.sha256, price: Number(row.price) });
    await emit(tx, actor, 'offer', jobId, id);
    return presentOffer(row, actor, this.customers);
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });
