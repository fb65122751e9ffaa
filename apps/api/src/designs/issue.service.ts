import { Injectable } from '@nestjs/common';
import type { ErrorCode, Revision } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { expectedVersion, requireVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { answerByRevision } from '../jobs/foundAnswers.ts';
import { advance } from '../jobs/stages.ts';
import { lockDraft, MovedOn, untilStill } from './designs.lock.ts';
import { acknowledgementsOf, documentOf } from './designs.presenter.ts';
import { DesignsService } from './designs.service.ts';
import { Evaluator } from './evaluator.ts';
import { type IssueVerdict, mayIssue } from './verdict.rules.ts';

const codes = { referred: 'design.referred', stopped: 'design.stopFindings', unacknowledged: 'design.unacknowledged' } as const satisfies Record<string, ErrorCode>;

/** Issuing: the service evaluates the very bytes that it freezes, and the issued revision of the variant steps back. */
@Injectable()
export class IssueService {
  private readonly database: Database;
  private readonly designs: DesignsService;
  private readonly evaluator: Evaluator;

  constructor(database: Database, designs: DesignsService, evaluator: Evaluator) {
    this.database = database;
    this.designs = designs;
    this.evaluator = evaluator;
  }

  issue(actor: Actor, jobId: string, revisionId: string): Promise<Revision> {
    expectedVersion(actor.request);
    return untilStill(actor, async () => {
      const seen = await this.database.read(actor, async (tx) => {
        await requireJob(tx, actor, jobId);
        return found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId } }));
      });
      if (seen.status !== 'draft') throw new DomainError('design.notDraft');
      requireVersion(actor.request, seen.version);
      const evaluated = await this.evaluator.evaluate(documentOf(seen.document));
      if (evaluated.columns.documentSha256 !== seen.documentSha256) throw new Error(`revision ${revisionId} does not hold the bytes of its hash`);
      refuse(mayIssue(evaluated.evaluation, acknowledgementsOf(seen.acknowledgements)));
      const { document: _, documentSha256: __, ...results } = evaluated.columns;
      return this.database.write(actor, async (tx) => {
        const job = await lockJob(tx, actor, jobId);
        const row = await lockDraft(tx, actor, jobId, revisionId);
        if (row.version !== seen.version) throw new MovedOn();
        const { companyId } = actor;
        const { at } = actor.request;
        await tx.revision.updateMany({ where: { companyId, designId: row.designId, status: 'issued' }, data: { status: 'superseded' } });
        await tx.revision.update({
          where: { companyId_id: { companyId, id: row.id } },
          data: { ...results, status: 'issued', issuedAt: at, issuedById: actor.id, version: { increment: 1 }, updatedAt: at },
        });
        await audit(tx, actor, 'revision.issued', { jobId, id: row.id }, { number: row.number, document: row.documentSha256, evaluation: results.evaluationSha256 });
        await emit(tx, actor, 'design', jobId, row.id);
        await answerByRevision(tx, actor, jobId, row.id);
        await advance(tx, actor, job, 'pricing');
        return this.designs.describe(tx, actor, jobId, row.id);
      });
    });
  }
}

function refuse(verdict: IssueVerdict): void {
  if (verdict.kind === 'free') return;
  const issues = verdict.findings.map(({ code, at }) => ({ path: at ?? '', message: code }));
  throw new DomainError(codes[verdict.kind], { codes: [...new Set(verdict.findings.map(({ code }) => code))].join(',') }, issues);
}
