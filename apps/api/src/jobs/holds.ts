import type { Hold } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';

export interface NewHold {
  readonly waitsFor: Hold['waitsFor'];
  readonly code: string;
  readonly params?: Hold['params'];
}

/** Writes what holds a job, in the transaction of the feature that found it. A hold with the same code is replaced. */
export async function setHold(tx: Tx, actor: Actor, jobId: string, hold: NewHold): Promise<void> {
  await clearHolds(tx, actor, jobId, [hold.code]);
  await tx.jobHold.create({
    data: { id: newId(), companyId: actor.companyId, jobId, waitsFor: hold.waitsFor, code: hold.code, params: { ...hold.params }, since: actor.request.at },
  });
}

export async function clearHolds(tx: Tx, actor: Actor, jobId: string, codes: readonly string[]): Promise<void> {
  await tx.jobHold.updateMany({ where: { companyId: actor.companyId, jobId, code: { in: [...codes] }, clearedAt: null }, data: { clearedAt: actor.request.at } });
}
