import type { JobStage } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import type { Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import type { Job } from '../generated/prisma/client.ts';
import { clearHolds, setHold } from './holds.ts';
import { holdOf, isLater, stageHoldCodes } from './stages.rules.ts';

/** Moves a locked job, with its history line and the hold of the new stage. */
export async function moveTo(tx: Tx, actor: Actor, job: Pick<Job, 'id' | 'stage'>, stage: JobStage): Promise<void> {
  const { companyId } = actor;
  await tx.job.update({ where: { companyId_id: { companyId, id: job.id } }, data: { stage, version: { increment: 1 }, updatedAt: actor.request.at } });
  await writeStage(tx, actor, job.id, stage);
  await clearHolds(tx, actor, job.id, stageHoldCodes);
  const hold = holdOf(stage);
  if (hold !== null) await setHold(tx, actor, job.id, hold);
  await audit(tx, actor, 'job.moved', { jobId: job.id, id: job.id }, { from: job.stage, to: stage });
  await emit(tx, actor, 'job', job.id, job.id);
}

/** Moves a job on when it has not come so far yet; a job that is further stays where it is. */
export async function advance(tx: Tx, actor: Actor, job: Pick<Job, 'id' | 'stage'>, stage: JobStage): Promise<boolean> {
  if (!isLater(job.stage as JobStage, stage)) return false;
  await moveTo(tx, actor, job, stage);
  return true;
}

export async function writeStage(tx: Tx, actor: Actor, jobId: string, stage: JobStage): Promise<void> {
  const byMemberId = actor.kind === 'member' ? actor.id : null;
  await tx.jobStage.create({ data: { id: newId(), companyId: actor.companyId, jobId, stage, byMemberId, at: actor.request.at } });
}
