import type { DesignDocument } from '@yardfall/calc';
import { holdPointsNow, type handover as api, type ProofTest, type ResponseOf } from '@yardfall/contracts';
import { loadChecklist } from '../checklists/live.ts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { settles } from '../proof/proof.rules.ts';

export type Open = ResponseOf<typeof api.read>['open'];

/** What stands between the work and the handover: hold points HP-14 and HP-15, reports without an answer, pumps without a settled test. */
export async function openBeforeHandover(tx: Tx, actor: Actor, jobId: string, document: DesignDocument, tests: readonly ProofTest[]): Promise<Open> {
  const live = await loadChecklist(tx, actor, jobId);
  const points = holdPointsNow(live.states(), { at: null, mayDig: true }).filter(({ id, open }) => !open && (id === 'HP-14' || id === 'HP-15'));
  const items = points.flatMap(({ id, closedBy }) => closedBy.map((item) => ({ code: 'handover.open.item', params: { holdPoint: id, item } })));
  const reports = await tx.foundReport.count({ where: { companyId: actor.companyId, jobId, status: 'open' } });
  return [...items, ...(reports > 0 ? [{ code: 'handover.open.found', params: { count: reports } }] : []), ...openProofs(document, tests)];
}

/** The last test of each duty pump counts. */
export function openProofs(document: DesignDocument, newestFirst: readonly ProofTest[]): Open {
  const pumps = document.system.parts.flatMap((part) => (part.kind === 'pump' && part.role === 'duty' ? [part] : []));
  return pumps.flatMap(({ id, name }) => {
    const last = newestFirst.find(({ pump }) => pump === id);
    if (last === undefined) return [{ code: 'handover.open.noProof', params: { pump: name } }];
    return settles(last) ? [] : [{ code: 'handover.open.proofFailed', params: { pump: name } }];
  });
}
