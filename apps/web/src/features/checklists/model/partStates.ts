import { standingOf } from './standing.ts';
import { isSettled, type ItemView } from './view.ts';

export type PartState = 'built' | 'next' | 'notYet' | 'held';

/** How each part stands that has steps of its own, by these steps: all settled, the next one among them, kept from going on, or not begun to be built. */
export function partStates(items: readonly ItemView[], next: string | null): Readonly<Record<string, PartState>> {
  const parts = new Map<string, ItemView[]>();
  for (const view of items) if (view.item.part !== null) parts.set(view.item.part, [...(parts.get(view.item.part) ?? []), view]);
  return Object.fromEntries([...parts].map(([part, steps]) => [part, stateOf(steps, next)]));
}

function stateOf(steps: readonly ItemView[], next: string | null): PartState {
  const left = steps.filter((view) => !isSettled(view));
  if (left.length === 0) return 'built';
  if (left.some((view) => isHeld(view, next))) return 'held';
  if (left.some(({ item }) => item.key === next)) return 'next';
  // A part in work whose next step waits for a hold point is kept from going on; one that nobody has touched only waits for its turn.
  const begun = steps.some(({ facts, ...view }) => facts.length > 0 || isSettled(view));
  return begun && left.every(({ heldBy }) => heldBy.length > 0) ? 'held' : 'notYet';
}

function isHeld(view: ItemView, next: string | null): boolean {
  const standing = standingOf(view, next);
  return standing === 'stopped' || standing === 'failed' || standing === 'disputed';
}
