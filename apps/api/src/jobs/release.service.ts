import { Injectable } from '@nestjs/common';
import type { Evaluation } from '@yardfall/calc';
import type { Job } from '@yardfall/contracts';
import { render } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { storedDocument } from '../common/storedDocument.ts';
import type { Job as JobRow, Offer, Revision } from '../generated/prisma/client.ts';
import { lockJob, requireJob } from './jobs.access.ts';
import { JobsService } from './jobs.service.ts';
import { holdForPermits, permitsFor } from './permits.ts';
import { heldReasons, type HeldReason } from './release.rules.ts';
import { advance } from './stages.ts';

/** The owner's release to dig: with the accepted offer it sets the build revision, the only source of checklist, proof and as-built. */
@Injectable()
export class ReleaseService {
  private readonly database: Database;
  private readonly jobs: JobsService;
  private readonly checklist: ChecklistBuilder;

  constructor(database: Database, jobs: JobsService, checklist: ChecklistBuilder) {
    this.database = database;
    this.jobs = jobs;
    this.checklist = checklist;
  }

  release(actor: Actor, jobId: string, offerId: string): Promise<Job> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const { revision, offer, reasons } = await this.standing(tx, actor, job, offerId);
      if (reasons.length > 0) throw held(actor, reasons);
      if (job.releasedAt !== null && job.buildRevisionId === revision.id) throw new DomainError('conflict.state', { stage: job.stage });
      await tx.job.update({ where: keyOf(actor, jobId), data: { buildRevisionId: revision.id, releasedAt: actor.request.at, releasedById: actor.id } });
      await audit(tx, actor, 'job.released', { jobId, id: revision.id }, { offer: offer.id, document: revision.documentSha256, accepted: offer.acceptedSha256 });
      await advance(tx, actor, job, 'released');
      await this.checklist.rebuildFor(tx, actor, jobId);
      await holdForPermits(tx, actor, await lockJob(tx, actor, jobId));
      return this.jobs.describe(tx, actor, jobId);
    });
  }

  /** What still holds an offer, for whoever would release it. */
  check(actor: Actor, jobId: string, offerId: string): Promise<{ reasons: { code: string; params: Record<string, string | number> }[] }> {
    return this.database.read(actor, async (tx) => {
      const { reasons } = await this.standing(tx, actor, await requireJob(tx, actor, jobId), offerId);
      return { reasons: reasons.map(({ code, params }) => ({ code, params: { ...params } })) };
    });
  }

  private async standing(tx: Tx, actor: Actor, job: JobRow, offerId: string): Promise<{ offer: Offer; revision: Revision; reasons: HeldReason[] }> {
    const offer = found(await tx.offer.findFirst({ where: { companyId: actor.companyId, jobId: job.id, id: offerId } }));
    const revision = found(await tx.revision.findUnique({ where: keyOf(actor, offer.revisionId) }));
    const reasons = heldReasons({
      offerAccepted: offer.status === 'accepted',
      revisionIssued: revision.status !== 'draft',
      permits: await permitsFor(tx, actor, job, storedDocument(revision.document)),
      evaluation: revision.evaluation === null ? null : jsonOf<Evaluation>(revision.evaluation),
      openFoundReports: await tx.foundReport.count({ where: { companyId: actor.companyId, jobId: job.id, status: 'open' } }),
    });
    return { offer, revision, reasons };
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });

function held(actor: Actor, reasons: readonly HeldReason[]): DomainError {
  const issues = reasons.map(({ code, params }) => ({ path: code, message: render(actor.language, actor.units, code, params) }));
  return new DomainError('release.held', { reasons: reasons.map((reason) => reason.code).join(',') }, issues);
}

function jsonOf<T>(bytes: Uint8Array): T {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as T;
}
