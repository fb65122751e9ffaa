import { Injectable } from '@nestjs/common';
import type { FoundReport, Revision } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { DesignsService } from '../designs/designs.service.ts';
import { holdForFound } from '../jobs/foundAnswers.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { presentReport, reportParts } from './found.presenter.ts';

/** What the crew found holds the job until the estimator has answered every report. */
@Injectable()
export class FoundService {
  private readonly database: Database;
  private readonly designs: DesignsService;

  constructor(database: Database, designs: DesignsService) {
    this.database = database;
    this.designs = designs;
  }

  list(actor: Actor, jobId: string): Promise<{ items: FoundReport[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.foundReport.findMany({ where: { companyId: actor.companyId, jobId }, include: reportParts, orderBy: [{ reportedAt: 'desc' }, { id: 'desc' }] });
      return { items: rows.map(presentReport) };
    });
  }

  answer(actor: Actor, jobId: string, reportId: string, answer: string): Promise<FoundReport> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const report = found(await tx.foundReport.findFirst({ where: { companyId: actor.companyId, jobId, id: reportId } }));
      if (report.status !== 'open') throw new DomainError('conflict.state', { status: report.status });
      const row = await tx.foundReport.update({
        where: { companyId_id: { companyId: actor.companyId, id: reportId } },
        data: { status: 'answered', answer, answeredById: actor.id, answeredAt: actor.request.at }, include: reportParts,
      });
      await holdForFound(tx, actor, jobId);
      await audit(tx, actor, 'found.answered', { jobId, id: reportId }, {});
      await emit(tx, actor, 'found', jobId, reportId);
      return presentReport(row);
    });
  }

  /** A draft from the build revision that names the finding; the edit that the finding asks for is shown there, and nothing is changed before somebody accepts it. */
  async openDraft(actor: Actor, jobId: string, reportId: string): Promise<Revision> {
    const { build, joined } = await this.database.read(actor, async (tx) => {
      const job = await requireJob(tx, actor, jobId);
      const report = await this.without(tx, actor, jobId, reportId);
      if (job.buildRevisionId === null) throw new DomainError('conflict.state', { stage: job.stage });
      const from = found(await tx.revision.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: job.buildRevisionId } }, select: { id: true, designId: true } }));
      return { build: from, joined: await this.openFor(tx, actor, report.jobId, from.designId) };
    });
    const name = async (tx: Tx, draftId: string): Promise<void> => {
      await lockJob(tx, actor, jobId);
      const { id } = await this.without(tx, actor, jobId, reportId);
      await tx.foundReport.update({ where: { companyId_id: { companyId: actor.companyId, id } }, data: { draftId } });
      await audit(tx, actor, 'found.drafted', { jobId, id }, { revision: draftId });
      await emit(tx, actor, 'found', jobId, id);
    };
    if (joined === null) return this.designs.revise(actor, jobId, build.designId, build.id, name);
    return this.database.write(actor, async (tx) => {
      await name(tx, joined);
      return this.designs.describe(tx, actor, jobId, joined);
    });
  }

  /** The report while it is open and no draft was opened for it. */
  private async without(tx: Tx, actor: Actor, jobId: string, reportId: string) {
    const report = found(await tx.foundReport.findFirst({ where: { companyId: actor.companyId, jobId, id: reportId } }));
    if (report.status !== 'open') throw new DomainError('conflict.state', { status: report.status });
    if (report.draftId !== null) throw new DomainError('conflict.state', { draft: true });
    return report;
  }

  /** The draft that is open for another finding of the same design. */
  private async openFor(tx: Tx, actor: Actor, jobId: string, designId: string): Promise<string | null> {
    const draft = await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, designId, status: 'draft', foundReports_draft: { some: {} } }, select: { id: true } });
    return draft?.id ?? null;
  }
}
