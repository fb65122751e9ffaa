import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import type { Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { presentReport, reportParts } from '../found/found.presenter.ts';
import { setHolds } from './holds.ts';

const holdCode = 'found.hold.open';

/** The job waits for each thing that the crew found and nobody has answered, since the work stopped for it. */
export async function holdForFound(tx: Tx, actor: Actor, jobId: string): Promise<void> {
  const open = await tx.foundReport.findMany({ where: { companyId: actor.companyId, jobId, status: 'open' }, include: reportParts });
  await setHolds(tx, actor, jobId, holdCode, open.map(presentReport).map(({ id, kind, stoppedAt }) => ({ waitsFor: 'us', code: holdCode, params: { kind: `found.kind.${kind}`, report: id }, since: new Date(stoppedAt) })));
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
