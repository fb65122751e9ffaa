import type { Actor } from './actor.ts';
import type { Tx } from './database.ts';
import { newId } from './ids.ts';

export interface Subject {
  readonly jobId?: string | null;
  readonly id?: string | null;
}

/**
 * One line of the trail, in the transaction of the change. `params` hold ids, codes and SI numbers,
 * never a name, phone or address: those are erased with their customer and the trail stays.
 */
export async function audit(
  tx: Tx, actor: Actor, action: string, subject: Subject = {}, params: Readonly<Record<string, string | number | boolean | null>> = {},
): Promise<void> {
  await tx.auditEntry.create({
    data: {
      id: newId(), companyId: actor.companyId, actorKind: actor.kind, actorId: actor.kind === 'system' ? null : actor.id,
      jobId: subject.jobId ?? actor.jobId, action, subjectId: subject.id ?? null, params, requestId: actor.request.id, at: actor.request.at,
    },
  });
}
