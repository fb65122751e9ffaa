import { Injectable } from '@nestjs/common';
import { type BodyOf, canonicalBytes, type Handover, type handover as api, type ResponseOf, sha256Hex } from '@yardfall/contracts';
import { render } from '@yardfall/text';
import { DateTime } from 'luxon';
import { buildRevisionOf, type BuildRevision } from '../checklists/build.ts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import type { Job } from '../generated/prisma/client.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { moveTo } from '../jobs/stages.ts';
import { ProofService } from '../proof/proof.service.ts';
import { compareAsBuilt } from './asBuilt.rules.ts';
import { type HandoverContent, handoverParts, presentHandover } from './handover.presenter.ts';
import { tiesOnRecord } from './ties.ts';
import { type Open, openBeforeHandover } from './open.ts';

type Body = BodyOf<typeof api.complete>;

@Injectable()
export class HandoverService {
  private readonly database: Database;
  private readonly proof: ProofService;

  constructor(database: Database, proof: ProofService) {
    this.database = database;
    this.proof = proof;
  }

  read(actor: Actor, jobId: string): Promise<ResponseOf<typeof api.read>> {
    return this.database.read(actor, async (tx) => {
      const job = await requireJob(tx, actor, jobId);
      const done = await this.row(tx, actor, jobId);
      if (done !== null) return { handover: presentHandover(done), open: [] };
      if (job.buildRevisionId === null) return { handover: null, open: [{ code: 'handover.open.notReleased', params: {} }] };
      return { handover: null, open: await this.open(tx, actor, jobId, await buildRevisionOf(tx, actor, job)) };
    });
  }

  complete(actor: Actor, jobId: string, body: Body): Promise<Handover> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      if ((await this.row(tx, actor, jobId)) !== null) throw notReady(actor, [{ code: 'handover.open.done', params: {} }]);
      if (job.buildRevisionId === null) throw notReady(actor, [{ code: 'handover.open.notReleased', params: {} }]);
      const revision = await buildRevisionOf(tx, actor, job);
      const open = await this.open(tx, actor, jobId, revision);
      if (open.length > 0) throw notReady(actor, open);
      const content = await this.content(tx, actor, job, revision, body);
      return this.write(tx, actor, job, content, body.customerName);
    });
  }

  private async write(tx: Tx, actor: Actor, job: Job, content: HandoverContent, customerName: string): Promise<Handover> {
    const bytes = canonicalBytes(content);
    const sha256 = await sha256Hex(bytes);
    const row = await tx.handover.create({
      data: {
        id: newId(), companyId: actor.companyId, jobId: job.id, content: bytes, sha256, customerName, handedOverAt: actor.request.at,
        warrantyFrom: dayOf(content.warrantyFrom), warrantyUntil: dayOf(content.warrantyUntil), byMemberId: actor.id,
      },
      include: handoverParts,
    });
    await moveTo(tx, actor, job, 'handedOver');
    await audit(tx, actor, 'job.handedOver', { jobId: job.id, id: row.id }, { sha256, levels: content.asBuilt.length });
    await emit(tx, actor, 'handover', job.id, row.id);
    return presentHandover(row);
  }

  private async content(tx: Tx, actor: Actor, job: Job, revision: BuildRevision, body: Body): Promise<HandoverContent> {
    const { asBuilt, unknown } = compareAsBuilt(revision.document, body.asBuilt);
    const issues = unknown.map((index) => ({ path: `body.asBuilt.${String(index)}`, message: 'names no level of the build revision' }));
    if (issues.length > 0) throw new DomainError('request.invalid', {}, issues);
    const { documentSha256 } = found(await tx.revision.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: revision.id } }, select: { documentSha256: true } }));
    const { timeZone } = found(await tx.property.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: job.propertyId } } }));
    const from = DateTime.fromJSDate(actor.request.at, { zone: timeZone }).startOf('day');
    const proofs = (await this.proof.tests(tx, actor, job.id)).map(({ sha256 }) => sha256);
    return {
      version: 1, revisionId: revision.id, documentSha256, proofs, asBuilt, pumpSerial: body.pumpSerial, breaker: body.breaker, deviations: body.deviations,
      ties: await tiesOnRecord(tx, actor, job.id),
      warrantyFrom: from.toFormat('yyyy-MM-dd'), warrantyUntil: from.plus({ years: body.warrantyYears }).toFormat('yyyy-MM-dd'),
    };
  }

  private async open(tx: Tx, actor: Actor, jobId: string, revision: BuildRevision): Promise<Open> {
    return openBeforeHandover(tx, actor, jobId, revision.document, await this.proof.tests(tx, actor, jobId));
  }

  private row(tx: Tx, actor: Actor, jobId: string) {
    return tx.handover.findUnique({ where: { companyId_jobId: { companyId: actor.companyId, jobId } }, include: handoverParts });
  }
}

function notReady(actor: Actor, open: Open): DomainError {
  const issues = open.map(({ code, params }) => ({ path: code, message: render(actor.language, actor.units, code, params) }));
  return new DomainError('handover.notReady', { open: open.length }, issues);
}

/** A calendar day as the driver wants it. */
function dayOf(day: string): Date {
  return new Date(`${day}T00:00:00Z`);
}
