import { Injectable } from '@nestjs/common';
import { type BodyOf, canonicalBytes, sha256Hex, type Survey, type SurveyContent, type surveys as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { requireVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { advance } from '../jobs/stages.ts';
import { presentSurvey, surveyParts } from './surveys.presenter.ts';

type Body = BodyOf<typeof api.create>;

@Injectable()
export class SurveysService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string): Promise<{ items: Survey[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.survey.findMany({ where: { companyId: actor.companyId, jobId }, include: surveyParts, orderBy: { id: 'desc' } });
      return { items: rows.map(presentSurvey) };
    });
  }

  read(actor: Actor, jobId: string, surveyId: string): Promise<Survey> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      return this.describe(tx, actor, jobId, surveyId);
    });
  }

  async create(actor: Actor, jobId: string, { name, content }: Body): Promise<Survey> {
    const stored = await storedForm(content);
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const id = newId();
      const { at } = actor.request;
      await tx.survey.create({ data: { id, companyId: actor.companyId, jobId, name, ...stored, createdById: actor.id, createdAt: at, updatedAt: at } });
      if (job.stage === 'intake') await advance(tx, actor, job, 'visit');
      if (content.levelBook.readings.length > 0) await advance(tx, actor, { id: jobId, stage: job.stage === 'intake' ? 'visit' : job.stage }, 'design');
      await this.record(tx, actor, 'survey.created', jobId, id, stored.sha256);
      return this.describe(tx, actor, jobId, id);
    });
  }

  async replace(actor: Actor, jobId: string, surveyId: string, { name, content }: Body): Promise<Survey> {
    const stored = await storedForm(content);
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const row = found(await tx.survey.findFirst({ where: { companyId: actor.companyId, jobId, id: surveyId } }));
      requireVersion(actor.request, row.version);
      const where = { companyId: actor.companyId, id: surveyId, version: row.version };
      const { count } = await tx.survey.updateMany({ where, data: { name, ...stored, version: { increment: 1 }, updatedAt: actor.request.at } });
      if (count === 0) throw new DomainError('conflict.stale');
      await this.record(tx, actor, 'survey.replaced', jobId, surveyId, stored.sha256);
      return this.describe(tx, actor, jobId, surveyId);
    });
  }

  private async describe(tx: Tx, actor: Actor, jobId: string, id: string): Promise<Survey> {
    return presentSurvey(found(await tx.survey.findFirst({ where: { companyId: actor.companyId, jobId, id }, include: surveyParts })));
  }

  private async record(tx: Tx, actor: Actor, action: string, jobId: string, id: string, sha256: string): Promise<void> {
    await audit(tx, actor, action, { jobId, id }, { sha256 });
    await emit(tx, actor, 'survey', jobId, id);
  }
}

async function storedForm(content: SurveyContent): Promise<{ content: Uint8Array<ArrayBuffer>; sha256: string }> {
  const bytes = canonicalBytes(content);
  return { content: bytes, sha256: await sha256Hex(bytes) };
}
