import { Injectable } from '@nestjs/common';
import { type BodyOf, type found as api, type FoundReport, isHit, type LineHit } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { requirePhotos } from '../jobs/answers.ts';
import { holdForFound } from '../jobs/foundAnswers.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { tellDamage } from '../locates/damage.ts';
import { presentReport, reportParts } from './found.presenter.ts';

type Job = Awaited<ReturnType<typeof lockJob>>;

/** "Stop work: we found ...": a report is on record from the second tap, and what is added to it later is rows of its own. */
@Injectable()
export class ReportsService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  report(actor: Actor, jobId: string, { id = newId(), at, photoIds, hit = null, ...body }: BodyOf<typeof api.report>): Promise<FoundReport> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const known = await tx.foundReport.findUnique({ where: keyOf(actor, id), include: reportParts });
      if (known !== null) return presentReport(ownOrTaken(known, known.jobId === jobId && known.reportedById === actor.id));
      const photos = await photosOf(tx, actor, jobId, photoIds);
      const stoppedAt = past(actor, at);
      await tx.foundReport.create({
        data: { id, companyId: actor.companyId, jobId, ...body, hit, photoIds: photos, status: 'open', reportedById: actor.id, reportedAt: actor.request.at, stoppedAt },
      });
      await audit(tx, actor, 'found.reported', { jobId, id }, { kind: body.kind });
      return this.told(tx, actor, job, id, hit, stoppedAt);
    });
  }

  /** Only who reported it adds to it, also after it was answered: nothing that a phone recorded is lost. */
  amend(actor: Actor, jobId: string, reportId: string, { id, at, photoIds, hit = null, ...body }: BodyOf<typeof api.amend>): Promise<FoundReport> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const report = found(await tx.foundReport.findFirst({ where: { companyId: actor.companyId, jobId, id: reportId, reportedById: actor.id }, include: reportParts }));
      const known = await tx.foundAddition.findUnique({ where: keyOf(actor, id), select: { reportId: true } });
      if (known !== null) return presentReport(ownOrTaken(report, known.reportId === reportId));
      const photos = await photosOf(tx, actor, jobId, photoIds);
      const told = past(actor, at);
      await tx.foundAddition.create({ data: { id, companyId: actor.companyId, reportId, ...body, hit, photoIds: photos, addedById: actor.id, at: told, recordedAt: actor.request.at } });
      await audit(tx, actor, 'found.amended', { jobId, id: reportId }, {});
      return this.told(tx, actor, job, reportId, hit, told);
    });
  }

  private async told(tx: Tx, actor: Actor, job: Job, id: string, hit: LineHit | null, at: Date): Promise<FoundReport> {
    await holdForFound(tx, actor, job.id);
    await emit(tx, actor, 'found', job.id, id);
    const report = presentReport(found(await tx.foundReport.findUnique({ where: keyOf(actor, id), include: reportParts })));
    if (isHit(hit)) await tellDamage(tx, actor, job, hit === 'danger' ? 'danger' : 'line', at, report.note);
    return report;
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });

function ownOrTaken<T>(row: T, isSame: boolean): T {
  if (!isSame) throw new DomainError('conflict.duplicate');
  return row;
}

/** A phone whose clock runs ahead does not reach into the future. */
function past({ request }: Actor, at: string | undefined): Date {
  const told = at === undefined ? request.at : new Date(at);
  return told < request.at ? told : request.at;
}

async function photosOf(tx: Tx, actor: Actor, jobId: string, photoIds: readonly string[]): Promise<string[]> {
  const photos = [...new Set(photoIds)];
  await requirePhotos(tx, actor, jobId, photos);
  return photos;
}
