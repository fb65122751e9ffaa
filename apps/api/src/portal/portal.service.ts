import { Injectable } from '@nestjs/common';
import type { Portal } from '@yardfall/contracts';
import { type Actor, systemActor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';
import { CustomersService } from '../customers/customers.service.ts';
import { documentOf, evaluationOf } from '../designs/designs.presenter.ts';
import { requireJob } from '../jobs/jobs.access.ts';
import { jobParts } from '../jobs/jobs.presenter.ts';
import { acceptedName, offerParts, type OfferRecord, placeOf, statusOf } from '../offers/offers.presenter.ts';
import type { CodedText } from '../offers/why.rules.ts';
import { jobOf } from './job.ts';
import { presentDrawing, presentHandover, presentPhoto, presentProof, presentWaiver, weakerRules, whyOf } from './portal.presenter.ts';
import { timesOf } from './times.ts';

/** The customer page: one job, what was sent, what was proven. Nothing of cost can be reached from here. */
@Injectable()
export class PortalService {
  private readonly database: Database;
  private readonly customers: CustomersService;

  constructor(database: Database, customers: CustomersService) {
    this.database = database;
    this.customers = customers;
  }

  async read(actor: Actor): Promise<Portal> {
    return this.describe(actor, await this.names(actor));
  }

  offerText(actor: Actor, offerId: string): Promise<string> {
    return this.database.read(actor, async (tx) => {
      const offer = await this.sentOffer(tx, actor, offerId);
      const { content } = found(await tx.offer.findUnique({ where: keyOf(actor, offer.id), select: { content: true } }));
      const bytes = found(this.customers.openBytes(offer.job.customer, placeOf.content(offer.id), content));
      return Buffer.from(bytes).toString('utf8');
    });
  }

  /** An offer that was sent to this customer; drafts are nobody's business yet. */
  async sentOffer(tx: Tx, actor: Actor, offerId: string): Promise<OfferRecord> {
    return found(await tx.offer.findFirst({ where: { companyId: actor.companyId, jobId: jobOf(actor), id: offerId, sentAt: { not: null } }, ...offerParts }));
  }

  describe(actor: Actor, names: ReadonlyMap<string, string>): Promise<Portal> {
    return this.database.read(actor, (tx) => this.inside(tx, actor, names));
  }

  /** The whole page inside a transaction of the customer. */
  async inside(tx: Tx, actor: Actor, names: ReadonlyMap<string, string>): Promise<Portal> {
    const jobId = jobOf(actor);
    await requireJob(tx, actor, jobId);
    const job = found(await tx.job.findUnique({ where: keyOf(actor, jobId), include: { ...jobParts, company: true } }));
    const offer = await tx.offer.findFirst({ where: { companyId: actor.companyId, jobId, sentAt: { not: null } }, ...offerParts, orderBy: { sentAt: 'desc' } });
    const texts = offer === null ? [] : await this.textsOf(tx, actor, offer);
    const design = await this.design(tx, actor, job.buildRevisionId ?? offer?.revisionId ?? null);
    const { proof, handover, photos, waivers, weaker, times } = await this.records(tx, actor, jobId, names);
    return {
      company: { name: job.company.name, responsibleName: job.company.responsibleName, phone: job.company.phone },
      jobTitle: job.title, customerName: found(this.customers.person(job.customer)).name, address: found(this.customers.place(job.customer, job.property)).address,
      stage: job.stage as Portal['stage'], next: { code: `portal.next.${job.stage}`, params: {} },
      why: whyOf(texts), drawing: design === null ? null : presentDrawing(design.document, design.evaluation),
      offer: offer === null ? null : this.presentOffer(offer, actor, texts), weaker, waivers, times, photos: photos.map(presentPhoto), proof: proof === null ? null : presentProof(proof),
      handover: handover === null || design === null ? null : presentHandover(handover, design.document),
    };
  }

  /** Who waived what is told by name, and customers cannot read the members: the names come through the service itself. */
  async names(actor: Actor): Promise<ReadonlyMap<string, string>> {
    const service = systemActor(actor.companyId, actor.request.id, actor.request.at);
    const members = await this.database.read(service, (tx) =>
      tx.member.findMany({ where: { companyId: actor.companyId, fieldFacts_member: { some: { jobId: jobOf(actor), kind: 'waived' } } }, select: { id: true, name: true } }));
    return new Map(members.map(({ id, name }) => [id, name]));
  }

  private async records(tx: Tx, actor: Actor, jobId: string, names: ReadonlyMap<string, string>) {
    const where = { companyId: actor.companyId, jobId };
    const facts = await tx.fieldFact.findMany({ where: { ...where, kind: 'waived', verdict: 'kept' }, orderBy: { serverTime: 'asc' } });
    const items = await tx.checklistItem.findMany({ where, orderBy: { position: 'asc' } });
    const holdPoints = new Map(items.map(({ key, holdPoint }) => [key, holdPoint]));
    const listed = items.filter(({ retiredAt }) => retiredAt === null);
    return {
      weaker: weakerRules(listed), times: await timesOf(tx, actor, listed),
      waivers: facts.map((fact) => presentWaiver(fact, holdPoints.get(fact.itemKey ?? '') ?? null, names.get(fact.memberId) ?? '')),
      photos: await tx.photo.findMany({ where: { ...where, forCustomer: true, photoCopies_photo: { some: { kind: 'view' } } }, include: { photoAdditions_photo: true }, orderBy: { takenAt: 'asc' } }),
      proof: await tx.proofTest.findFirst({ where, orderBy: { recordedAt: 'desc' } }),
      handover: await tx.handover.findUnique({ where: { companyId_jobId: where } }),
    };
  }

  private async design(tx: Tx, actor: Actor, revisionId: string | null) {
    if (revisionId === null) return null;
    const row = found(await tx.revision.findUnique({ where: keyOf(actor, revisionId), select: { document: true, evaluation: true } }));
    return { document: documentOf(row.document), evaluation: found(evaluationOf(row.evaluation)) };
  }

  private async textsOf(tx: Tx, actor: Actor, offer: OfferRecord): Promise<CodedText[]> {
    const { texts } = found(await tx.offer.findUnique({ where: keyOf(actor, offer.id), select: { texts: true } }));
    const bytes = found(this.customers.openBytes(offer.job.customer, placeOf.texts(offer.id), texts));
    return JSON.parse(Buffer.from(bytes).toString('utf8')) as CodedText[];
  }

  private presentOffer(row: OfferRecord, actor: Actor, texts: CodedText[]): Portal['offer'] {
    return {
      id: row.id, number: row.number, status: statusOf(row, actor.request.at) as 'sent', price: Number(row.price), validUntil: row.validUntil.toISOString().slice(0, 10), sha256: row.sha256,
      language: row.language as 'en', texts, acceptedAt: row.acceptedAt?.toISOString() ?? null, acceptedName: acceptedName(row, actor, this.customers), acceptedSha256: row.acceptedSha256,
    };
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });
