import { isSettled, type ItemView } from './view.ts';

/** How a step stands before the crew: stopped by a finding and held come before its own state, and the next one is told apart. */
export function standingOf(view: ItemView, next: string | null) {
  if (view.stops.length > 0 && !isSettled(view)) return 'stopped';
  if (view.heldBy.length > 0 && !isSettled(view) && view.state !== 'failed') return 'held';
  return view.state === 'open' && view.item.key === next ? 'next' : view.state;
}
