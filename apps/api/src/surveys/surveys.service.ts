import { Injectable } from '@nestjs/common';
import { type BodyOf, differences, type Survey, type surveys as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { requireVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { SurveyFactsService } from './facts.service.ts';
import { loadSurvey, storedForm } from './live.ts';
import { advanceJob } from './project.ts';
import { presentSurvey, surveyParts } from './surveys.presenter.ts';

type Body = BodyOf<typeof api.create>;

@Injectable()
export class SurveysService {
  private readonly database: Database;
  private readonly facts: SurveyFactsService;

  constructor(database: Database, facts: SurveyFactsService) {
    this.database = database;
    this.facts = facts;
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
      await lockJob(tx, actor, jobId);
      const id = newId();
      const { at } = actor.request;
      await tx.survey.create({ data: { id, companyId: actor.companyId, jobId, name, ...stored, disputed: [], createdById: actor.id, createdAt: at, updatedAt: at } });
      await advanceJob(tx, actor, jobId, content.levelBook.readings.length > 0);
      await this.record(tx, actor, 'survey.created', jobId, id, stored.sha256);
      return this.describe(tx, actor, jobId, id);
    });
  }

  /** Of a survey that phones recorded, what is typed otherwise becomes facts of the desk, so that a phone that is out knows what it did not see. */
  async replace(actor: Actor, jobId: string, surveyId: string, { name, content }: Body): Promise<Survey> {
    const stored = await storedForm(content);
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const row = found(await tx.survey.findFirst({ where: { companyId: actor.companyId, jobId, id: surveyId } }));
      requireVersion(actor.request, row.version);
      const survey = await loadSurvey(tx, actor, surveyId);
      if (survey.facts.length > 0) {
        await this.facts.fromDesk(tx, actor, job, survey, differences(survey.folded(), { name, content }));
        return this.describe(tx, actor, jobId, surveyId);
      }
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
