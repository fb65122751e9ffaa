import { Injectable } from '@nestjs/common';
import type { BodyOf, found as api, FoundReport } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { presentReport, reportParts } from './found.presenter.ts';

const holdCode = 'found.hold.open';

/** "Stop work: we found ..." holds the job until the estimator has answered every report. */
@Injectable()
export class FoundService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string): Promise<{ items: FoundReport[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.foundReport.findMany({ where: { companyId: actor.companyId, jobId }, include: reportParts, orderBy: [{ reportedAt: 'desc' }, { id: 'desc' }] });
      return { items: rows.map(presentReport) };
    });
  }

  report(actor: Actor, jobId: string, { photoIds, ...body }: BodyOf<typeof api.report>): Promise<FoundReport> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const photos = [...new Set(photoIds)];
      if ((await tx.photo.count({ where: { companyId: actor.companyId, jobId, id: { in: photos } } })) !== photos.length) throw new DomainError('notFound');
      const row = await tx.foundReport.create({
        data: { id: newId(), companyId: actor.companyId, jobId, ...body, photoIds: photos, status: 'open', reportedById: actor.id, reportedAt: actor.request.at }, include: reportParts,
      });
      await this.hold(tx, actor, jobId);
      await audit(tx, actor, 'found.reported', { jobId, id: row.id }, { kind: body.kind });
      await emit(tx, actor, 'found', jobId, row.id);
      return presentReport(row);
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
      await this.hold(tx, actor, jobId);
      await audit(tx, actor, 'found.answered', { jobId, id: reportId }, {});
      await emit(tx, actor, 'found', jobId, reportId);
      return presentReport(row);
    });
  }

  private async hold(tx: Tx, actor: Actor, jobId: string): Promise<void> {
    const oldest = await tx.foundReport.findFirst({ where: { companyId: actor.companyId, jobId, status: 'open' }, orderBy: [{ reportedAt: 'asc' }, { id: 'asc' }] });
    if (oldest === null) await clearHolds(tx, actor, jobId, [holdCode]);
    else await setHold(tx, actor, jobId, { waitsFor: 'us', code: holdCode, params: { kind: `found.kind.${oldest.kind}` } });
  }
}
