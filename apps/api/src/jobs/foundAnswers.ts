import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import type { Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { clearHolds, setHold } from './holds.ts';

const holdCode = 'found.hold.open';

/** The job waits while anything that the crew found is open; the oldest is what it waits for. */
export async function holdForFound(tx: Tx, actor: Actor, jobId: string): Promise<void> {
  const oldest = await tx.foundReport.findFirst({ where: { companyId: actor.companyId, jobId, status: 'open' }, orderBy: [{ reportedAt: 'asc' }, { id: 'asc' }] });
  if (oldest === null) await clearHolds(tx, actor, jobId, [holdCode]);
  else await setHold(tx, actor, jobId, { waitsFor: 'us', code: holdCode, params: { kind: `found.kind.${oldest.kind}` } });
}

/** A revision that was drafted for findings answers them when it is issued: its own number is the answer, and no words are needed. */
export async function answerByRevision(tx: Tx, actor: Actor, jobId: string, revisionId: string): Promise<void> {
  const where = { companyId: actor.companyId, jobId, draftId: revisionId, status: 'open' };
  const reports = await tx.foundReport.findMany({ where, select: { id: true } });
  if (reports.length === 0) return;
  await tx.foundReport.updateMany({ where, data: { status: 'answered', answeredById: actor.id, answeredAt: actor.request.at } });
  await holdForFound(tx, actor, jobId);
  for (const { id } of reports) {
    await audit(tx, actor, 'found.answered', { jobId, id }, { revision: revisionId });
    await emit(tx, actor, 'found', jobId, id);
  }
}
