import { type LocateTicket, stopsOf, type TicketEventKind } from '@yardfall/contracts';

const anytime = ['marksDestroyed', 'markError', 'damage', 'areaEnlarged'] as const satisfies readonly TicketEventKind[];

/** What can be told of a ticket as it stands: what ends a stop is offered while it lasts. */
export function mayHappen({ events }: Pick<LocateTicket, 'events'>): readonly TicketEventKind[] {
  const open = new Set<TicketEventKind>(stopsOf(events).filter(({ until }) => until === null).map(({ kind }) => kind));
  const marks = open.has('marksDestroyed') || open.has('markError');
  return [...(marks ? ['remarked', 'remarkRequested'] as const : []), ...(open.has('damage') ? ['damageCleared'] as const : []), ...anytime.filter((kind) => !open.has(kind))];
}

/** Every answer is there, and nobody has said yet that the marks agree. */
export function asksForMarks({ verdict }: Pick<LocateTicket, 'verdict'>): boolean {
  return verdict.reasons.some(({ code }) => code === 'locates.reason.marksUnseen');
}
