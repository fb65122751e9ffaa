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
  const waived = new Set(live.states().flatMap(({ key, state }) => (state === 'waived' ? [key] : [])));
  return [...items, ...(reports > 0 ? [{ code: 'handover.open.found', params: { count: reports } }] : []), ...openProofs(document, tests, waived)];
}

/** The last test of each duty pump counts; where the owner waived its item, none is asked for. */
export function openProofs(document: DesignDocument, newestFirst: readonly ProofTest[], waived: ReadonlySet<string>): Open {
  const pumps = document.system.parts.flatMap((part) => (part.kind === 'pump' && part.role === 'duty' && !waived.has(`J1:${part.id}`) ? [part] : []));
  return pumps.flatMap(({ id, name }) => {
    const last = newestFirst.find(({ pump }) => pump === id);
    const params = { pump: name, item: `J1:${id}` };
    if (last === undefined) return [{ code: 'handover.open.noProof', params }];
    return settles(last) ? [] : [{ code: 'handover.open.proofFailed', params }];
  });
}
