import { type LineHit, stopsOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { newId } from '../common/ids.ts';
import { forVerdict } from './locates.presenter.ts';
import { ticketChanged, ticketsOf } from './tickets.ts';

/**
 * The crew reports that a line was hit: that stops every ticket of the job, and is told on the newest that is open.
 * It is told once: while a line lies broken another report of it adds nothing.
 */
export async function tellDamage(tx: Tx, actor: Actor, job: { readonly id: string; readonly stage: string }, hit: Exclude<LineHit, 'no'>, at: Date, note: string): Promise<void> {
  const open = (await ticketsOf(tx, actor, job.id)).filter(({ status }) => status === 'open');
  const [newest] = open;
  if (newest === undefined) return;
  if (open.some((ticket) => stopsOf(forVerdict(ticket).events).some(({ kind, until }) => kind === 'damage' && until === null))) return;
  const { companyId, id: recordedById, request: { at: recordedAt } } = actor;
  await tx.locateEvent.create({
    data: { id: newId(), companyId, ticketId: newest.id, kind: 'damage', utility: '', hazard: hit === 'danger', note: note.slice(0, 500), photoId: null, recordedById, at, recordedAt },
  });
  await ticketChanged(tx, actor, job, newest.id, 'locate.event', { event: 'locates.event.damage' });
}
