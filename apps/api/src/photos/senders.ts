import type { Actor } from '../common/actor.ts';

/** Whose photo it is: a member's, or of whoever came by a link. */
export interface Author {
  readonly memberId: string | null;
  readonly linkId: string | null;
}

export function authorOf(actor: Actor): Author {
  return { memberId: actor.kind === 'member' ? actor.id : null, linkId: actor.kind === 'sender' ? actor.id : null };
}
