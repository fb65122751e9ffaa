/** What can happen to a ticket between its answers and its end. */
export const ticketEventKinds = ['marksAgree', 'marksDestroyed', 'markError', 'remarkRequested', 'remarked', 'areaEnlarged', 'renewed', 'damage', 'damageCleared'] as const;
export type TicketEventKind = (typeof ticketEventKinds)[number];

export interface TicketEvent {
  readonly kind: TicketEventKind;
  /** When it happened, and when it was put on record. */
  readonly at: string;
  readonly recordedAt: string;
}

/** What stops the digging under a ticket, and what lets it go on; nothing does when the area grew: that takes a new ticket. */
const stops = { marksDestroyed: 'remarked', markError: 'remarked', damage: 'damageCleared', areaEnlarged: null } as const satisfies Partial<Record<TicketEventKind, TicketEventKind | null>>;
export type StopKind = keyof typeof stops;

export interface Stop {
  readonly kind: StopKind;
  readonly from: string;
  /** Not part of it; null while it lasts. */
  readonly until: string | null;
}

/** The spans in which nothing may be dug under a ticket, whatever its clock says. A request alone ends none: marks that are not there again are silence. */
export function stopsOf(events: readonly TicketEvent[]): readonly Stop[] {
  const inOrder = events.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at));
  return inOrder.flatMap(({ kind, at }, index): Stop[] => {
    if (!isStop(kind)) return [];
    const end = inOrder.slice(index + 1).find((later) => later.kind === stops[kind]);
    return [{ kind, from: at, until: end?.at ?? null }];
  });
}

export function isStop(kind: TicketEventKind): kind is StopKind {
  return kind in stops;
}
