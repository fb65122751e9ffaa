import { holdPointRules, itemText } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { isSettled, type ChecklistView } from '../model/view.ts';
import { ItemMark } from './ItemMark.tsx';
import { holdPointWords } from './Standing.tsx';

/** The same look once more, for what went on before it: one line for both. */
const repeats = new Set(holdPointRules.filter(({ again }) => again === true).map(({ id }) => id));

const marks = { open: 'proven', waived: 'waived', passed: 'proven', closed: 'open' } as const;

/** Where the work stops until something is proven: each with what proves it and what may begin then, in the words of the steps. */
export function HoldPoints({ view }: { readonly view: ChecklistView }) {
  const { t, say } = useText();
  const items = new Map(view.items.map(({ item }) => [item.key, item]));
  const parts = new Map(view.items.map(({ item }) => [item.part, item.partName]));
  const settled = new Set(view.items.filter(isSettled).map(({ item }) => item.key));
  /** Once the work that it guards is done, a hold point that would be closed now is behind us. */
  const standing = ({ open, waived, guards }: ChecklistView['holdPoints'][number]) => {
    if (open) return waived ? 'waived' : 'open';
    return guards.length > 0 && guards.every((key) => settled.has(key)) ? 'passed' : 'closed';
  };
  const what = (key: string) => {
    const item = items.get(key);
    return item === undefined ? t('checklists.handover') : say(itemText(item.requirement, 'what'), item.requirement.params);
  };
  const steps = (keys: readonly string[]) => <ul>{[...new Set(keys.map(what))].map((words) => <li key={words}>{words}</li>)}</ul>;
  return (
    <div className="stack">
      <Heading level={3}>{t('checklists.holdPoints')}</Heading>
      <p className="faint">{t('checklists.holdPoints.why')}</p>
      <ul className="hold-points">
        {view.holdPoints.filter(({ id }) => !repeats.has(id)).map((point) => (
          <li key={`${point.id} ${point.part ?? ''}`}>
            <details>
              <summary>
                <ItemMark standing={marks[standing(point)]} />
                <span className="item-what">{holdPointWords(say, point.id)}{point.part === null ? null : <span className="faint">{t('checklists.ofPart', { part: parts.get(point.part) ?? point.part })}</span>}</span>
                <span className="item-state">{t(`checklists.holdPoints.is.${standing(point)}`)}</span>
              </summary>
              <dl>
                <div><dt>{t('checklists.holdPoints.proves')}</dt><dd>{steps(point.items)}</dd></div>
                <div><dt>{t('checklists.holdPoints.lets')}</dt><dd>{steps(point.guards)}</dd></div>
              </dl>
            </details>
          </li>
        ))}
      </ul>
    </div>
  );
}
