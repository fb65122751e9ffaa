import { canonicalBytes } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { advance } from '../jobs/stages.ts';
import { storedForm, type LiveSurvey } from './live.ts';

/** Writes the survey as its facts make it: its first fact gives birth to it, every later one makes a new version. The caller holds the lock of the job. */
export async function projectSurvey(tx: Tx, actor: Actor, jobId: string, survey: LiveSurvey): Promise<void> {
  const { name, content, disputed } = survey.folded();
  const columns = { name, ...(await storedForm(content)), disputed: [...disputed], updatedAt: actor.request.at };
  const { companyId } = actor;
  if (survey.row === null) {
    await tx.survey.create({ data: { id: survey.id, companyId, jobId, ...columns, createdById: actor.id, createdAt: actor.request.at } });
  } else {
    const base = survey.base === null ? null : canonicalBytes(survey.base);
    await tx.survey.update({ where: { companyId_id: { companyId, id: survey.id } }, data: { ...columns, base, version: { increment: 1 } } });
  }
  await advanceJob(tx, actor, jobId, content.levelBook.readings.length > 0);
}

/** Whoever measures has visited; levels begin the design. */
export async function advanceJob(tx: Tx, actor: Actor, jobId: string, hasLevels: boolean): Promise<void> {
  for (const stage of ['visit', ...(hasLevels ? ['design' as const] : [])] as const) {
    await advance(tx, actor, await tx.job.findUniqueOrThrow({ where: { companyId_id: { companyId: actor.companyId, id: jobId } } }), stage);
  }
}
