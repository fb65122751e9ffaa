import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { missingSentence, toldOf } from '../model/sentences.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';
import { ItemName } from './NextControl.tsx';

interface HeldProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly onOpen: (key: string) => void;
}

/** What has to be proven before the work of this item may begin; each opens from here. */
export function Held({ list, view, onOpen }: HeldProps) {
  const { t } = useText();
  const keys = [...new Set(view.heldBy.flatMap(({ items }) => items))];
  const items = list.items.filter(({ item }) => keys.includes(item.key));
  return (
    <Notice severity="stop" title={t('checklists.heldUntil')}>
      {items.map((one) => (
        <div key={one.item.key} className="stack held-item">
          <Button size="crew" wide onClick={() => onOpen(one.item.key)}><ItemName view={one} /></Button>
          <Missing view={one} />
        </div>
      ))}
      {view.heldBy.some(({ holdPoint }) => holdPoint === 'HP-1') ? <p>{t('checklists.heldByMarks')}</p> : null}
    </Notice>
  );
}

function Missing({ view }: { readonly view: ItemView }) {
  const { t, say } = useText();
  if (view.missing.length === 0 && view.readyAt !== null) return <p>{t('checklists.pressureFrom', { at: new Date(view.readyAt).toISOString() })}</p>;
  if (view.missing.length === 0) return view.item.requirement.freshFor === null ? null : <p className="faint">{t('checklists.tooOld', { fresh: view.item.requirement.freshFor })}</p>;
  return <ul className="faint">{toldOf(view.missing).map((mark) => <li key={mark}>{missingSentence(say, mark, view.item.requirement)}</li>)}</ul>;
}
