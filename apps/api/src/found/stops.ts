import type { Stop } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { presentReport, reportParts } from './found.presenter.ts';

/** What had stopped work at a moment and was not answered then. */
export async function stopsAt(tx: Tx, actor: Actor, jobId: string, at: Date): Promise<readonly Stop[]> {
  const rows = await tx.foundReport.findMany({ where: { companyId: actor.companyId, jobId, OR: [{ answeredAt: null }, { answeredAt: { gt: at } }] }, include: reportParts });
  return rows.map(presentReport).filter(({ stoppedAt }) => Date.parse(stoppedAt) <= at.getTime());
}
