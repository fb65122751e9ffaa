import { seenTogether } from '@yardfall/contracts';
import { isSettled, type ChecklistView, type ItemView } from './view.ts';

/** Open steps that one picture shows together with this one; a step that is held is not among them. */
export function companionsOf({ items }: Pick<ChecklistView, 'items'>, view: ItemView): readonly ItemView[] {
  return items.filter((other) => other !== view && !isSettled(other) && other.state !== 'failed' && other.heldBy.length === 0 && !(other.asksBegin && !other.begun) && seenTogether(view.item, other.item));
}
