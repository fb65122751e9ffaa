import type { DesignDocument } from '@yardfall/calc';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { storedDocument } from '../common/storedDocument.ts';

export interface BuildRevision {
  readonly id: string;
  readonly document: DesignDocument;
}

/** The issued revision that is built; a job without one has no checklist, proof or as-built. */
export async function buildRevisionOf(tx: Tx, actor: Actor, job: { readonly buildRevisionId: string | null }): Promise<BuildRevision> {
  if (job.buildRevisionId === null) throw new DomainError('checklist.notBuildRevision');
  return revisionOf(tx, actor, job.buildRevisionId);
}

export async function revisionOf(tx: Tx, actor: Actor, id: string): Promise<BuildRevision> {
  const row = found(await tx.revision.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } }, select: { id: true, document: true } }));
  return { id: row.id, document: storedDocument(row.document) };
}
