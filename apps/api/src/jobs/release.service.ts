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
import type { Offer, Revision } from '../generated/prisma/client.ts';
import { lockJob } from './jobs.access.ts';
import { JobsService } from './jobs.service.ts';
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
      const key = (id: string) => ({ companyId_id: { companyId: actor.companyId, id } });
      const offer = found(await tx.offer.findFirst({ where: { companyId: actor.companyId, jobId, id: offerId } }));
      const revision = found(await tx.revision.findUnique({ where: key(offer.revisionId) }));
      const reasons = await this.reasons(tx, actor, jobId, offer, revision);
      if (reasons.length > 0) throw held(actor, reasons);
      if (job.releasedAt !== null && job.buildRevisionId === revision.id) throw new DomainError('conflict.state', { stage: job.stage });
      await tx.job.update({ where: key(jobId), data: { buildRevisionId: revision.id, releasedAt: actor.request.at, releasedById: actor.id } });
      await audit(tx, actor, 'job.released', { jobId, id: revision.id }, { offer: offer.id, document: revision.documentSha256, accepted: offer.acceptedSha256 });
      await advance(tx, actor, job, 'released');
      await this.checklist.rebuildFor(tx, actor, jobId);
      return this.jobs.describe(tx, actor, jobId);
    });
  }

  private async reasons(tx: Tx, actor: Actor, jobId: string, offer: Offer, revision: Revision): Promise<HeldReason[]> {
    return heldReasons({
      offerAccepted: offer.status === 'accepted',
      revisionIssued: revision.status !== 'draft',
      document: storedDocument(revision.document),
      evaluation: revision.evaluation === null ? null : jsonOf<Evaluation>(revision.evaluation),
      openFoundReports: await tx.foundReport.count({ where: { companyId: actor.companyId, jobId, status: 'open' } }),
    });
  }
}

function held(actor: Actor, reasons: readonly HeldReason[]): DomainError {
  const issues = reasons.map(({ code, params }) => ({ path: code, message: render(actor.language, actor.units, code, params) }));
  return new DomainError('release.held', { reasons: reasons.map((reason) => reason.code).join(',') }, issues);
}

function jsonOf<T>(bytes: Uint8Array): T {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as T;
}
