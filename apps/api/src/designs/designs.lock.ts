import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import type { Revision } from '../generated/prisma/client.ts';

/** Somebody wrote the row between the reading that was evaluated and the lock. */
export class MovedOn extends Error {}

/** The draft, locked until the end of the transaction; anything that was issued is no draft any more. */
export async function lockDraft(tx: Tx, actor: Actor, jobId: string, revisionId: string): Promise<Revision> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    SELECT id FROM revision WHERE company_id = ${actor.companyId}::uuid AND job_id = ${jobId}::uuid AND id = ${revisionId}::uuid FOR UPDATE`;
  const row = rows[0] === undefined ? null : await tx.revision.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: revisionId } } });
  const revision = found(row);
  if (revision.status !== 'draft') throw new DomainError('design.notDraft');
  return revision;
}

const attempts = 3;

/**
 * Reads, evaluates outside of a transaction, then locks and compares. When the row moved on meanwhile the whole is done again:
 * the transaction that found it was rolled back, and the key of the request with it.
 */
export async function untilStill<T>(actor: Actor, work: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof MovedOn)) throw error;
      if (attempt === attempts) throw new DomainError('busy', {}, [], { cause: error });
      if (actor.request.idempotency !== null) actor.request.idempotency.claimed = false;
    }
  }
}
