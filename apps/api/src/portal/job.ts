import type { Actor } from '../common/actor.ts';
import { DomainError } from '../common/errors.ts';

/** The job that a customer's link belongs to. */
export function jobOf(actor: Actor): string {
  if (actor.jobId === null) throw new DomainError('notFound');
  return actor.jobId;
}
