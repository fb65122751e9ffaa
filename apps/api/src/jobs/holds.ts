import type { Hold } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';

export interface NewHold {
  readonly waitsFor: Hold['waitsFor'];
  readonly code: string;
  readonly params?: Hold['params'];
  /** Since when it holds; from now on where nothing is told. */
  readonly since?: Date;
}

/** Writes what holds a job, in the transaction of the feature that found it. A hold with the same code is replaced. */
export async function setHold(tx: Tx, actor: Actor, jobId: string, hold: NewHold): Promise<void> {
  await setHolds(tx, actor, jobId, hold.code, [hold]);
}

/** The same for a code of which several may hold a job at once; nothing of it holds where none are told. */
export async function setHolds(tx: Tx, actor: Actor, jobId: string, code: string, holds: readonly NewHold[]): Promise<void> {
  await clearHolds(tx, actor, jobId, [code]);
  await tx.jobHold.createMany({
    data: holds.map(({ waitsFor, params, since }) => ({ id: newId(), companyId: actor.companyId, jobId, waitsFor, code, params: { ...params }, since: since ?? actor.request.at })),
  });
}

export async function clearHolds(tx: Tx, actor: Actor, jobId: string, codes: readonly string[]): Promise<void> {
  await tx.jobHold.updateMany({ where: { companyId: actor.companyId, jobId, code: { in: [...codes] }, clearedAt: null }, data: { clearedAt: actor.request.at } });
}
