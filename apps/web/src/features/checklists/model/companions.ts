import { askedTogether } from '@yardfall/contracts';
import { isSettled, type ChecklistView, type ItemView } from './view.ts';

/** Open steps that are asked together with this one: one picture shows both, or they are the same at another pipe; a step that is held is not among them. */
export function companionsOf({ items }: Pick<ChecklistView, 'items'>, view: ItemView): readonly ItemView[] {
  return items.filter((other) => other !== view && !isSettled(other) && other.state !== 'failed' && other.heldBy.length === 0 && !(other.asksBegin && !other.begun) && askedTogether(view.item, other.item));
}
