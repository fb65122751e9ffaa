import { Injectable } from '@nestjs/common';
import { calcVersion, type DesignDocument } from '@yardfall/calc';
import { type BodyOf, canonicalBytes, type proof as api, type ProofTest, sha256Hex } from '@yardfall/contracts';
import { buildRevisionOf } from '../checklists/build.ts';
import { ChecklistsService } from '../checklists/checklists.service.ts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { advance } from '../jobs/stages.ts';
import { holdForMarks } from '../locates/tickets.ts';
import { type ProofContent, presentProof, proofParts } from './proof.presenter.ts';
import { InvalidRuns, judgeRuns, settles } from './proof.rules.ts';

type Body = BodyOf<typeof api.record>;
const holdCodes = ['proof.hold.explain', 'proof.hold.fail', 'proof.hold.repeat'];

@Injectable()
export class ProofService {
  private readonly database: Database;
  private readonly checklists: ChecklistsService;

  constructor(database: Database, checklists: ChecklistsService) {
    this.database = database;
    this.checklists = checklists;
  }

  list(actor: Actor, jobId: string): Promise<{ items: ProofTest[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      return { items: await this.tests(tx, actor, jobId) };
    });
  }

  /** Newest first; for the handover, inside its transaction. */
  async tests(tx: Tx, actor: Actor, jobId: string): Promise<ProofTest[]> {
    const rows = await tx.proofTest.findMany({ where: { companyId: actor.companyId, jobId }, include: proofParts, orderBy: [{ recordedAt: 'desc' }, { id: 'desc' }] });
    return rows.map(presentProof);
  }

  /** Judged before the transaction; the transaction makes sure that it was the revision that is still built, and that nothing holds the test. */
  async record(actor: Actor, jobId: string, body: Body): Promise<ProofTest> {
    const revision = await this.database.read(actor, async (tx) => buildRevisionOf(tx, actor, await requireJob(tx, actor, jobId)));
    const content = contentFrom(revision.id, revision.document, body);
    const bytes = canonicalBytes(content);
    const sha256 = await sha256Hex(bytes);
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      if (job.buildRevisionId !== revision.id) throw new DomainError('checklist.notBuildRevision');
      await this.checklists.requireOpen(tx, actor, jobId, `J1:${body.pump}`);
      const row = await tx.proofTest.create({
        data: {
          id: newId(), companyId: actor.companyId, jobId, revisionId: revision.id, content: bytes, sha256, verdict: content.verdict, recordedById: actor.id, recordedAt: actor.request.at,
        },
        include: proofParts,
      });
      if (settles(content)) await this.checklists.attach(tx, actor, job, `J1:${body.pump}`, row.id);
      const { stage } = await requireJob(tx, actor, jobId);
      // The digging is done: no mark is waited for any more.
      if (await advance(tx, actor, { id: jobId, stage }, 'proving')) await holdForMarks(tx, actor, { id: jobId, stage: 'proving' });
      await clearHolds(tx, actor, jobId, holdCodes);
      if (!settles(content)) await setHold(tx, actor, jobId, { waitsFor: 'proof', code: `proof.hold.${content.verdict}`, params: { pump: nameOf(revision.document, body.pump) } });
      await audit(tx, actor, 'proof.recorded', { jobId, id: row.id }, { verdict: content.verdict, sha256, difference: content.difference });
      await emit(tx, actor, 'proof', jobId, row.id);
      return presentProof(row);
    });
  }
}

function contentFrom(revisionId: string, document: DesignDocument, { pump, runs, note }: Body): ProofContent {
  if (!document.system.parts.some((part) => part.kind === 'pump' && part.id === pump)) {
    throw new DomainError('proof.invalid', { reason: 'noPump' }, [{ path: 'body.pump', message: 'is no pump of the build revision' }]);
  }
  try {
    return { version: 1, calcVersion, revisionId, pump, runs: [...runs], note, ...judgeRuns(document, pump, runs) };
  } catch (error) {
    if (!(error instanceof InvalidRuns)) throw error;
    throw new DomainError('proof.invalid', { reason: error.reason }, [{ path: `body.${error.path.replaceAll('/', '.')}`, message: error.reason }], { cause: error });
  }
}

function nameOf(document: DesignDocument, id: string): string {
  return document.system.parts.find((part) => part.id === id)?.name ?? id;
}
