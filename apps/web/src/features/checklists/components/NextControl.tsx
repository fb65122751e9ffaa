import { itemText } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useNext } from '../api/useNext.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

interface NextControlProps {
  readonly view: ChecklistView;
  /** The item on screen, so that the next one is another. */
  readonly except?: string;
  /** It is the one thing to do here. */
  readonly main?: boolean;
  readonly onOpen: (key: string) => void;
}

/** The next thing to do as one large control. */
export function NextControl({ view, except, main = except === undefined, onOpen }: NextControlProps) {
  const { t } = useText();
  const next = useNext(view, except ?? null);
  if (next === null) return except === undefined ? <Notice><p>{t('checklists.allDone')}</p></Notice> : null;
  return (
    <Button kind={main ? 'main' : 'plain'} size="crew" wide data-next={next.item.key} onClick={() => onOpen(next.item.key)}>
      <span className="next-words">{t('checklists.next')}</span>
      <ItemName view={next} />
    </Button>
  );
}

export function ItemName({ view: { item } }: { readonly view: ItemView }) {
  const { say, t } = useText();
  return <span>{say(itemText(item.requirement, 'what'), item.requirement.params)}{item.partName === null ? '' : `, ${t('checklists.partName', { part: item.partName })}`}</span>;
}
