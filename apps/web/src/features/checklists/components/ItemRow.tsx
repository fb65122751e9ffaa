import { useText } from '../../../lib/reader.tsx';
import { isSettled, type ItemView } from '../model/view.ts';
import { ItemMark } from './ItemMark.tsx';

export function standingOf(view: ItemView) {
  return view.heldBy.length > 0 && !isSettled(view) && view.state !== 'failed' ? 'held' : view.state;
}

/** One line of the list; the whole line opens the item. */
export function ItemRow({ view, onOpen }: { readonly view: ItemView; readonly onOpen: (key: string) => void }) {
  const { t, say } = useText();
  const { item } = view;
  const standing = standingOf(view);
  const holds = view.heldBy.map(({ holdPoint }) => holdPoint).join(', ');
  return (
    <li>
      <button type="button" className="item-row" onClick={() => onOpen(item.key)}>
        <ItemMark standing={standing} />
        <span className="item-id figure">{item.template}</span>
        <span className="item-what">{say(`checklists.${item.template}.what`, item.requirement.params)}{item.partName === null ? null : <span className="faint">{t('checklists.ofPart', { part: item.partName })}</span>}</span>
        <span className={`item-state item-state-${standing}`}>
          {standing === 'held' ? t('checklists.held', { holdPoint: holds }) : t(`checklists.state.${standing}`)}
          {view.waiting.length > 0 ? <span className="faint">{t('ui.phone.here')}</span> : null}
        </span>
      </button>
    </li>
  );
}
