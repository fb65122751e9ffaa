import { itemText } from '@yardfall/contracts';
import { memo } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { standingOf } from '../model/standing.ts';
import type { ItemView } from '../model/view.ts';
import { ItemMark } from './ItemMark.tsx';
import { StandingWords } from './Standing.tsx';

interface ItemRowProps {
  readonly view: ItemView;
  /** Key of the step that is next. */
  readonly next: string | null;
  readonly onOpen: (key: string) => void;
}

/** One line of the list; the whole line opens the step. */
export const ItemRow = memo(function ItemRow({ view, next, onOpen }: ItemRowProps) {
  const { t, say } = useText();
  const { item } = view;
  const standing = standingOf(view, next);
  return (
    <li>
      <button type="button" className="item-row" data-item={item.key} onClick={() => onOpen(item.key)}>
        <ItemMark standing={standing} />
        <span className="item-what">{say(itemText(item.requirement, 'what'), item.requirement.params)}{item.partName === null ? null : <span className="faint">{t('checklists.ofPart', { part: item.partName })}</span>}</span>
        <span className={`item-state item-state-${standing}`}>
          <span><StandingWords view={view} next={next} /></span>
          {view.waiting.length > 0 ? <span className="faint">{t('ui.phone.here')}</span> : null}
        </span>
      </button>
    </li>
  );
});
