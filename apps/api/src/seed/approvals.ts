import { type PermitKind, permitKinds } from '@yardfall/contracts';
import { PermitsService } from '../permits/permits.service.ts';
import { act, type Cast } from './cast.ts';

export interface Told {
  /** Number on the paper of what was granted. */
  readonly granted: Partial<Record<PermitKind, string>>;
  /** Why the offices of the place do not ask for the others. */
  readonly otherwise: string;
}

/** The offices were asked; each answer is on record. */
export async function answerPermits(cast: Cast, jobId: string, { granted, otherwise }: Told, daysAgo: number): Promise<void> {
  const actor = act(cast, 'estimator', daysAgo, 15);
  const on = actor.request.at.toISOString().slice(0, 10);
  const answers = permitKinds.map((kind) => {
    const number = granted[kind];
    const rest = { kind, on, expiresOn: null, photoId: null };
    return number === undefined ? { ...rest, state: 'notNeeded' as const, number: '', note: otherwise } : { ...rest, state: 'granted' as const, number, note: '' };
  });
  await cast.app.get(PermitsService).answer(actor, jobId, { answers });
}
