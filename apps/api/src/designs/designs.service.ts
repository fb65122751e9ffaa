import { Injectable } from '@nestjs/common';
import type { BodyOf, Design, designs as api, Revision } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { CompanyService } from '../company/company.service.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { advance } from '../jobs/stages.ts';
import { tableOf } from '../rain/rain.presenter.ts';
import { documentOf, presentDesign, presentRevision, revisionParts, rowParts } from './designs.presenter.ts';
import { type Evaluated, Evaluator, invalid } from './evaluator.ts';
import { presenceLasts } from './presence.rules.ts';
import { startDocument, type Taken, underLimits } from './start.rules.ts';

@Injectable()
export class DesignsService {
  private readonly database: Database;
  private readonly evaluator: Evaluator;
  private readonly company: CompanyService;

  constructor(database: Database, evaluator: Evaluator, company: CompanyService) {
    this.database = database;
    this.company = company;
    this.evaluator = evaluator;
  }

  list(actor: Actor, jobId: string): Promise<{ items: Design[] }> {
    return this.database.read(actor, async (tx) => {
      const job = await requireJob(tx, actor, jobId);
      const revisions = { ...rowParts, orderBy: { number: 'desc' as const } };
      const rows = await tx.design.findMany({ where: { companyId: actor.companyId, jobId }, include: { revisions_design: revisions }, orderBy: { id: 'asc' } });
      return { items: rows.map((row) => presentDesign(row, job.buildRevisionId)) };
    });
  }

  read(actor: Actor, jobId: string, revisionId: string): Promise<Revision> {
    return this.database.read(actor, (tx) => this.describe(tx, actor, jobId, revisionId));
  }

  async create(actor: Actor, jobId: string, body: BodyOf<typeof api.create>): Promise<Revision> {
    const source = await this.database.read(actor, (tx) => this.sourceOf(tx, actor, jobId, body));
    const evaluated = await this.evaluator.evaluate(source);
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const designId = newId();
      await tx.design.create({ data: { id: designId, companyId: actor.companyId, jobId, name: body.name, createdAt: actor.request.at } });
      await advance(tx, actor, job, 'design');
      return this.insert(tx, actor, { jobId, designId, number: 1 }, evaluated);
    });
  }

  /** `also` is done in the transaction of the new draft, for a feature that opens it. */
  async revise(actor: Actor, jobId: string, designId: string, fromRevisionId: string, also?: (tx: Tx, draftId: string) => Promise<void>): Promise<Revision> {
    const source = await this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const where = { companyId: actor.companyId, jobId, designId, id: fromRevisionId };
      return documentOf(found(await tx.revision.findFirst({ where, select: { document: true } })).document);
    });
    const evaluated = await this.evaluator.evaluate(source);
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const where = { companyId: actor.companyId, designId };
      await this.refuseSecondDraft(tx, actor, designId);
      const last = await tx.revision.aggregate({ where, _max: { number: true } });
      const draft = await this.insert(tx, actor, { jobId, designId, number: (last._max.number ?? 0) + 1 }, evaluated);
      await also?.(tx, draft.id);
      return draft;
    });
  }

  /** For the services of drafts, inside their transaction. */
  async describe(tx: Tx, actor: Actor, jobId: string, revisionId: string): Promise<Revision> {
    const job = await requireJob(tx, actor, jobId);
    const where = { companyId: actor.companyId, jobId, id: revisionId };
    return presentRevision(found(await tx.revision.findFirst({ where, ...revisionParts })), job.buildRevisionId);
  }

  /** A design has one draft at a time. Whoever has it open now is named, else who began it. */
  private async refuseSecondDraft(tx: Tx, { companyId, request }: Actor, designId: string): Promise<void> {
    const draft = await tx.revision.findFirst({ where: { companyId, designId, status: 'draft' }, select: { id: true, number: true, createdBy: { select: { name: true } } } });
    if (draft === null) return;
    const here = await tx.draftPresence.findMany({ where: { companyId, revisionId: draft.id, seenAt: { gt: new Date(request.at.getTime() - presenceLasts) } }, select: { member: { select: { name: true } } }, orderBy: { memberId: 'asc' } });
    const by = here.length > 0 ? here.map(({ member }) => member.name).join(', ') : draft.createdBy.name;
    throw new DomainError('design.draftOpen', { by, number: draft.number, revisionId: draft.id });
  }

  private async insert(tx: Tx, actor: Actor, place: { jobId: string; designId: string; number: number }, evaluated: Evaluated): Promise<Revision> {
    const id = newId();
    const { at } = actor.request;
    await tx.revision.create({
      data: { id, companyId: actor.companyId, ...place, status: 'draft', ...evaluated.columns, startedDocument: evaluated.columns.document, createdById: actor.id, createdAt: at, updatedAt: at },
    });
    await audit(tx, actor, 'revision.started', { jobId: place.jobId, id }, { number: place.number, document: evaluated.columns.documentSha256 });
    await emit(tx, actor, 'design', place.jobId, id);
    return this.describe(tx, actor, place.jobId, id);
  }

  private async sourceOf(tx: Tx, actor: Actor, jobId: string, body: BodyOf<typeof api.create>): Promise<unknown> {
    const job = await requireJob(tx, actor, jobId);
    const where = { companyId: actor.companyId, jobId };
    const { limits } = await this.company.settings(tx, actor);
    if (body.document !== null) return underLimits(body.document, limits);
    if (body.fromRevisionId !== null) return documentOf(found(await tx.revision.findFirst({ where: { ...where, id: body.fromRevisionId }, select: { document: true } })).document);
    const survey = await tx.survey.findFirst({ where, orderBy: { id: 'desc' } });
    const rain = await tx.rainTable.findFirst({ where, orderBy: { id: 'desc' }, omit: { original: true } });
    if (rain === null) throw invalid('rain', 'the job has no rain table yet');
    return startDocument(job.title, survey === null ? null : taken(actor, survey, jsonOf(survey.content)), taken(actor, rain, tableOf(rain.content)), limits);
  }
}

function taken<T>(actor: Actor, row: { id: string; sha256: string }, content: T): Taken<T> {
  return { content, stamp: { id: row.id, sha256: row.sha256, takenAt: actor.request.at.toISOString() } };
}

function jsonOf<T>(bytes: Uint8Array): T {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as T;
}
