import { Injectable } from '@nestjs/common';
import {
  applyOperations, type BodyOf, type Conflict, conflictsOf, type designs as api, type DraftOperation, isRemovalOfPart, OperationError, partOf, type Revision,
} from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import type { Prisma, Revision as RevisionRecord } from '../generated/prisma/client.ts';
import { requireJob } from '../jobs/jobs.access.ts';
import { lockDraft, MovedOn, untilStill } from './designs.lock.ts';
import { acknowledgementsOf, documentOf, evaluationOf } from './designs.presenter.ts';
import { DesignsService } from './designs.service.ts';
import { type DraftEvaluated, Evaluator, invalid } from './evaluator.ts';
import { cautionAt, stillAccepted, type StoredAcknowledgement } from './verdict.rules.ts';

/** Edits of a draft: a log of operations, the document that they make, and its evaluation. */
@Injectable()
export class DraftsService {
  private readonly database: Database;
  private readonly designs: DesignsService;
  private readonly evaluator: Evaluator;

  constructor(database: Database, designs: DesignsService, evaluator: Evaluator) {
    this.database = database;
    this.designs = designs;
    this.evaluator = evaluator;
  }

  operate(actor: Actor, jobId: string, revisionId: string, { base, operations }: BodyOf<typeof api.operate>): Promise<Revision> {
    return untilStill(actor, async () => {
      const seen = await this.database.read(actor, (tx) => this.editable(tx, actor, jobId, revisionId, base, operations));
      const evaluated = await this.evaluator.evaluateDraft(applied(seen, operations));
      return this.database.write(actor, async (tx) => {
        const row = await lockDraft(tx, actor, jobId, revisionId);
        if (row.version !== seen.version) throw new MovedOn();
        await this.log(tx, actor, row, base, operations);
        await this.store(tx, actor, row, operations.length, evaluated);
        return this.designs.describe(tx, actor, jobId, revisionId);
      });
    });
  }

  acknowledge(actor: Actor, jobId: string, revisionId: string, { code, at, note }: BodyOf<typeof api.acknowledge>): Promise<Revision> {
    return this.database.write(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const row = await lockDraft(tx, actor, jobId, revisionId);
      const evaluation = evaluationOf(row.evaluation);
      found(evaluation === null ? null : cautionAt(evaluation, code, at));
      const { name } = found(await tx.member.findUnique({ where: keyOf(actor, actor.id), select: { name: true } }));
      const given: StoredAcknowledgement = { code, at, memberId: actor.id, by: name, when: actor.request.at.toISOString(), note };
      const others = acknowledgementsOf(row.acknowledgements).filter((ack) => ack.code !== code || ack.at !== at);
      await tx.revision.update({ where: keyOf(actor, row.id), data: { acknowledgements: asJson([...others, given]), version: { increment: 1 }, updatedAt: actor.request.at } });
      await audit(tx, actor, 'caution.accepted', { jobId, id: revisionId }, { code, at });
      await emit(tx, actor, 'design', jobId, revisionId);
      return this.designs.describe(tx, actor, jobId, revisionId);
    });
  }

  /** The draft as it stands, unless an edit meets what somebody else changed since its base. */
  private async editable(tx: Tx, actor: Actor, jobId: string, revisionId: string, base: number, operations: readonly DraftOperation[]): Promise<RevisionRecord> {
    await requireJob(tx, actor, jobId);
    const row = found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId } }));
    if (row.status !== 'draft') throw new DomainError('design.notDraft');
    if (operations.some(setsLimits)) throw new DomainError('auth.forbidden');
    if (base > row.version) throw new DomainError('request.invalid', {}, [{ path: 'body.base', message: `the draft is at version ${String(row.version)}` }]);
    const later = await tx.draftOperation.findMany({ where: { companyId: actor.companyId, revisionId, seq: { gt: base } }, orderBy: { seq: 'asc' } });
    const entries = later.map(({ part, memberId, operation }) => ({ part, memberId, removed: isRemovalOfPart(operation as unknown as DraftOperation) }));
    const conflicts = conflictsOf(documentOf(row.document), operations, entries);
    if (conflicts[0] !== undefined) throw await this.conflict(tx, actor, conflicts[0], conflicts);
    return row;
  }

  private async conflict(tx: Tx, actor: Actor, first: Conflict, all: readonly Conflict[]): Promise<DomainError> {
    const member = await tx.member.findUnique({ where: keyOf(actor, first.memberId), select: { name: true } });
    const params = { part: first.part, path: first.path, removed: first.removed, by: member?.name ?? '', theirs: JSON.stringify(first.theirs) };
    return new DomainError('draft.conflict', params, all.map(({ path, theirs }) => ({ path, message: JSON.stringify(theirs) })));
  }

  /** One row an operation; its number is the version that it made. */
  private async log(tx: Tx, actor: Actor, row: RevisionRecord, base: number, operations: readonly DraftOperation[]): Promise<void> {
    const common = { companyId: actor.companyId, revisionId: row.id, memberId: actor.id, at: actor.request.at };
    const data = operations.map((operation, index) => ({ id: newId(), ...common, seq: row.version + index + 1, part: partOf(operation), operation: asJson({ ...operation, base }) }));
    await tx.draftOperation.createMany({ data });
  }

  private async store(tx: Tx, actor: Actor, row: RevisionRecord, steps: number, { columns, evaluation }: DraftEvaluated): Promise<void> {
    const given = acknowledgementsOf(row.acknowledgements);
    const acknowledgements = asJson(evaluation === null ? given : stillAccepted(evaluationOf(row.evaluation), evaluation, given));
    await tx.revision.update({ where: keyOf(actor, row.id), data: { ...columns, acknowledgements, version: { increment: steps }, updatedAt: actor.request.at } });
    await audit(tx, actor, 'draft.edited', { jobId: row.jobId, id: row.id }, { operations: steps, document: columns.documentSha256 });
    await emit(tx, actor, 'design', row.jobId, row.id);
  }
}

function applied(row: RevisionRecord, operations: readonly DraftOperation[]): unknown {
  try {
    return applyOperations(documentOf(row.document), operations);
  } catch (error) {
    if (!(error instanceof OperationError)) throw error;
    throw invalid(error.path, error.reason, error);
  }
}

/** Limits are the company's: no draft sets its own. */
const setsLimits = (operation: DraftOperation): boolean => operation.kind !== 'connect' && operation.path[0] === 'limits';

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });

/** As a JSON column takes it. */
function asJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;
}
