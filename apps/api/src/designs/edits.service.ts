import { Injectable } from '@nestjs/common';
import { applyOperations, type designs as api, type DraftEdit, type DraftOperation, type QueryOf, type ResponseOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { decodeCursor, pageOf } from '../common/cursor.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { requireJob } from '../jobs/jobs.access.ts';
import { documentOf } from './designs.presenter.ts';

/** The log of a draft: who changed what, and the document as it was after any edit. */
@Injectable()
export class EditsService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string, revisionId: string, { cursor, limit }: QueryOf<typeof api.history>): Promise<ResponseOf<typeof api.history>> {
    return this.database.read(actor, async (tx) => {
      await this.revision(tx, actor, jobId, revisionId);
      const before = cursor === undefined ? {} : { seq: { lt: seqOf(cursor) } };
      const rows = await tx.draftOperation.findMany({
        where: { companyId: actor.companyId, revisionId, ...before }, include: { member: { select: { name: true } } }, orderBy: { seq: 'desc' }, take: limit + 1,
      });
      return pageOf(rows, limit, ({ seq, at, member, part, operation }): DraftEdit => ({ seq, at: at.toISOString(), by: member.name, part, operation: withoutBase(operation) }), ({ seq }) => [String(seq)]);
    });
  }

  /** Drafts that were begun before their start was kept have no earlier moments. */
  moment(actor: Actor, jobId: string, revisionId: string, seq: number): Promise<ResponseOf<typeof api.moment>> {
    return this.database.read(actor, async (tx) => {
      const row = await this.revision(tx, actor, jobId, revisionId);
      const start = found(row.startedDocument);
      const rows = await tx.draftOperation.findMany({ where: { companyId: actor.companyId, revisionId, seq: { lte: Math.min(seq, 2_147_483_647) } }, select: { operation: true }, orderBy: { seq: 'asc' } });
      return { seq, document: applyOperations(documentOf(start) as ResponseOf<typeof api.moment>['document'], rows.map(({ operation }) => withoutBase(operation))) };
    });
  }

  private async revision(tx: Tx, actor: Actor, jobId: string, revisionId: string) {
    await requireJob(tx, actor, jobId);
    return found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId }, select: { startedDocument: true } }));
  }
}

function seqOf(cursor: string): number {
  const seq = Number(decodeCursor(cursor, 1)[0]);
  if (!Number.isInteger(seq) || seq < 0) throw new DomainError('request.invalid', {}, [{ path: 'query.cursor', message: 'is not a cursor of this list' }]);
  return Math.min(seq, 2_147_483_647);
}

/** The stored operation also says which version its editor saw. */
function withoutBase(stored: unknown): DraftOperation {
  const { base: _base, ...operation } = stored as DraftOperation & { readonly base: number };
  return operation as DraftOperation;
}
