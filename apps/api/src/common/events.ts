import type { Actor } from './actor.ts';
import type { Tx } from './database.ts';
import { newId } from './ids.ts';

/** Tells open pages that something changed; they read it again under their own rights. The database stamps the order. */
export async function emit(tx: Tx, actor: Actor, topic: string, jobId: string | null, subjectId: string | null = null): Promise<void> {
  await tx.$executeRaw`
    INSERT INTO event (id, company_id, xid, job_id, topic, subject_id, at)
    VALUES (${newId()}::uuid, ${actor.companyId}::uuid, 0, ${jobId}::uuid, ${topic}, ${subjectId}::uuid, ${actor.request.at})`;
}
