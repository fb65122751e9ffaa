import { cancelUntil, type Place } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';

/** Where a job stands, and until when its customer may cancel: by the first offer that was accepted, because what is added later is no reason to stop the work. */
export async function placeOf(tx: Tx, { companyId }: Actor, jobId: string): Promise<Place> {
  const { property } = found(await tx.job.findUnique({ where: { companyId_id: { companyId, id: jobId } }, select: { property: { select: { state: true, timeZone: true } } } }));
  const first = await tx.offer.findFirst({ where: { companyId, jobId, acceptedAt: { not: null } }, orderBy: { acceptedAt: 'asc' }, select: { acceptedAt: true } });
  const acceptedAt = first?.acceptedAt ?? null;
  return { timeZone: property.timeZone, cancelUntil: acceptedAt === null ? null : cancelUntil(acceptedAt.toISOString(), property) };
}
