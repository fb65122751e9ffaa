import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';
import type { Job, Prisma } from '../generated/prisma/client.ts';

/** Which jobs an actor sees: the office all of the company, crew those they are on, a customer their own. */
export function visibleJobs(actor: Actor): Prisma.JobWhereInput {
  const { companyId } = actor;
  if (actor.kind === 'customer' || actor.kind === 'sender') return { companyId, id: actor.jobId ?? '' };
  if (actor.kind === 'system' || actor.roles.includes('owner') || actor.roles.includes('estimator')) return { companyId };
  return { companyId, assignments_job: { some: { memberId: actor.id } } };
}

/** The job, or notFound for whoever may not see it. */
export async function requireJob(tx: Tx, actor: Actor, jobId: string): Promise<Job> {
  return found(await tx.job.findFirst({ where: { AND: [visibleJobs(actor), { id: jobId }] } }));
}

/** The same, locked until the end of the transaction: one writer at a time moves a job. */
export async function lockJob(tx: Tx, actor: Actor, jobId: string): Promise<Job> {
  await requireJob(tx, actor, jobId);
  await tx.$queryRaw`SELECT 1 FROM job WHERE company_id = ${actor.companyId}::uuid AND id = ${jobId}::uuid FOR UPDATE`;
  return requireJob(tx, actor, jobId);
}
