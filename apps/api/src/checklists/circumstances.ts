import { type FieldFact, isStopped, seenTogether } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { byOurClock } from '../common/phoneClock.ts';
import { stopsAt } from '../found/stops.ts';
import type { Circumstances, PhotoOnRecord } from './judge.rules.ts';
import type { LiveChecklist } from './live.ts';

/** Everything that bears on whether a fact counts, but for hold points. */
export async function circumstancesOf(
  tx: Tx, actor: Actor, jobId: string, live: LiveChecklist, fact: FieldFact, recorder: Pick<Circumstances, 'deviceCutOff' | 'roles'> & { readonly clockBehind: number },
): Promise<Circumstances> {
  const item = live.items.get(fact.itemKey);
  const at = byOurClock(fact.deviceTime, recorder.clockBehind, actor.request.at);
  return {
    deviceCutOff: recorder.deviceCutOff, roles: recorder.roles, at: at.getTime(),
    item: item === undefined ? null : { requirement: item.requirement, requirementHash: item.row.requirementHash, holdPoint: item.row.holdPoint },
    photo: fact.kind === 'photo' ? await photoOf(tx, actor, jobId, live, fact) : null,
    proofOnRecord: fact.kind === 'document' && item?.requirement.template === 'J1' && (await isProven(tx, actor, jobId, fact.reference)),
    stopped: fact.kind === 'begun' && item !== undefined && (await isStoppedAt(tx, actor, jobId, { template: item.row.template, part: item.row.part, requirement: item.requirement }, at)),
  };
}

/** Work may not begin on what was found and is not answered; all else of a step stays recordable, because making safe must be. */
export async function isStoppedAt(tx: Tx, actor: Actor, jobId: string, step: Parameters<typeof isStopped>[1], at: Date): Promise<boolean> {
  return (await stopsAt(tx, actor, jobId, at)).some((stop) => isStopped(stop, step));
}

async function photoOf(tx: Tx, actor: Actor, jobId: string, live: LiveChecklist, { photoId, itemKey }: Extract<FieldFact, { kind: 'photo' }>): Promise<PhotoOnRecord | null> {
  const photo = await tx.photo.findFirst({ where: { companyId: actor.companyId, jobId, id: photoId }, select: { id: true, itemKey: true, takenAt: true } });
  if (photo === null) return null;
  const [of, shown] = [live.items.get(photo.itemKey ?? '')?.row, live.items.get(itemKey)?.row];
  return { ...photo, seenTogether: of !== undefined && shown !== undefined && seenTogether(of, shown) };
}

/** J1 is shown by a pump-down of this job that passes or is explained: its reference is the id of the test. */
async function isProven(tx: Tx, actor: Actor, jobId: string, reference: string): Promise<boolean> {
  const rows = await tx.proofTest.findMany({ where: { companyId: actor.companyId, jobId, verdict: { in: ['pass', 'explain'] } }, select: { id: true } });
  return rows.some(({ id }) => id === reference);
}
