import { isMessageCode } from '@yardfall/text';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { isSettled, type ChecklistView } from '../model/view.ts';
import { ItemMark } from './ItemMark.tsx';

const marks = { open: 'proven', waived: 'waived', passed: 'proven', closed: 'held' } as const;

/** Each hold point with what opens it and what it guards. */
export function HoldPoints({ view }: { readonly view: ChecklistView }) {
  const { t, say } = useText();
  const names = new Map(view.items.map(({ item }) => [item.part, item.partName]));
  const settled = new Set(view.items.filter(isSettled).map(({ item }) => item.key));
  /** Once the work that it guards is done, a hold point that would be closed now is behind us. */
  const standing = ({ open, waived, guards }: ChecklistView['holdPoints'][number]) => {
    if (open) return waived ? 'waived' : 'open';
    return guards.length > 0 && guards.every((key) => settled.has(key)) ? 'passed' : 'closed';
  };
  const what = (id: string) => {
    const code = `checklists.holdPoint.${id.replace(/^HP-/, '').replace(' ', '')}`;
    return isMessageCode(code) ? say(code) : '';
  };
  const word = (keys: readonly string[]) => [...new Set(keys.map((key) => (key === 'handover' ? t('checklists.handover') : key.split(':')[0])))].join(', ');
  return (
    <div className="stack">
      <Heading level={3} aside={t('checklists.holdPoints.open', { open: view.holdPoints.filter(({ open }) => open).length, all: view.holdPoints.length })}>{t('checklists.holdPoints')}</Heading>
      <Table stacks caption={t('checklists.holdPoints')} captionUnseen
        columns={[{ key: 'id', head: t('checklists.holdPoint') }, { key: 'state', head: t('checklists.holdPoints.state') }, { key: 'items', head: t('checklists.holdPoints.opens') }, { key: 'guards', head: t('checklists.holdPoints.guards') }]}
        rows={view.holdPoints.map((point) => ({
          key: `${point.id} ${point.part ?? ''}`,
          cells: {
            id: <span>{point.id} {what(point.id)}{point.part === null ? null : <span className="faint hold-part">{t('checklists.ofPart', { part: names.get(point.part) ?? point.part })}</span>}</span>,
            state: <span className="hold-state"><ItemMark standing={marks[standing(point)]} />{t(`checklists.holdPoints.is.${standing(point)}`)}</span>,
            items: t('checklists.holdPoints.openedBy', { items: word(point.items) }),
            guards: t('checklists.holdPoints.guarding', { items: word(point.guards) }),
          },
        }))} />
    </div>
  );
}
