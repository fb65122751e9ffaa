import type { Role } from '@yardfall/contracts';
import { mayTick } from './evidence.ts';
import { isSettled, type ChecklistView, type ItemView } from './view.ts';

/**
 * The next thing to do in the order of the work, after the step on screen and then from the top. What only the office or time can still do
 * comes after what this person can do, and what is held or stopped comes last.
 */
export function nextOf({ items }: ChecklistView, except: string | null = null, roles: readonly Role[] = []): ItemView | null {
  const from = items.findIndex(({ item }) => item.key === except) + 1;
  const left = [...items.slice(from), ...items.slice(0, from)].filter((view) => !isSettled(view) && view.item.key !== except);
  const free = left.filter((view) => view.heldBy.length === 0 && view.stops.length === 0);
  return free.find((view) => !waitsForOffice(view, roles)) ?? free[0] ?? left[0] ?? null;
}

/** All that is still to be shown is the tick of the office. */
function waitsForOffice({ item, missing, tooEarly }: ItemView, roles: readonly Role[]): boolean {
  return missing.length > 0 && missing.every((mark) => mark === 'tick') && (!mayTick(item.requirement, roles) || tooEarly);
}
