import type { DesignDocument } from '@yardfall/calc';
import { beforeHandover, type handover as api, type ItemInState, type ProofTest, type ResponseOf } from '@yardfall/contracts';
import { loadChecklist } from '../checklists/live.ts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { settles } from '../proof/proof.rules.ts';

export type Open = ResponseOf<typeof api.read>['open'];

/** What stands between the work and the handover: hold points that are closed, steps left undone, reports without an answer, pumps without a settled test. */
export async function openBeforeHandover(tx: Tx, actor: Actor, jobId: string, document: DesignDocument, tests: readonly ProofTest[]): Promise<Open> {
  const live = await loadChecklist(tx, actor, jobId);
  const reports = await tx.foundReport.count({ where: { companyId: actor.companyId, jobId, status: 'open' } });
  const states = live.states();
  const waived = new Set(states.flatMap(({ key, state }) => (state === 'waived' ? [key] : [])));
  return [...openSteps(states), ...(reports > 0 ? [{ code: 'handover.open.found', params: { count: reports } }] : []), ...openProofs(document, tests, waived)];
}

/** An item that keeps two hold points closed is named once. */
export function openSteps(states: readonly ItemInState[]): Open {
  const { held, unsettled } = beforeHandover(states);
  const points = held.flatMap(({ holdPoint, items }) => items.map((item) => ({ code: 'handover.open.item', params: { holdPoint, item } })));
  const once = points.filter(({ params }, index) => points.findIndex((one) => one.params.item === params.item) === index);
  return [...once, ...unsettled.map((item) => ({ code: 'handover.open.step', params: { item } }))];
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
