import { groupText, itemGroups } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import { memo, useDeferredValue, useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useChecklistView } from '../api/useChecklistView.ts';
import { useNext } from '../api/useNext.ts';
import { isSettled, leftCount, type ChecklistView } from '../model/view.ts';
import { HoldPoints } from './HoldPoints.tsx';
import { ItemDialog } from './ItemDialog.tsx';
import { ItemRow } from './ItemRow.tsx';
import { Run } from './Run.tsx';
import './checklists.css';

/** The list of the work, built from what will be built; an item opens as one screen. */
export function Checklist({ jobId, released }: { readonly jobId: string; readonly released: boolean }) {
  const { t } = useText();
  const { view, pending, problem, again } = useChecklistView(jobId, released);
  const [open, setOpen] = useState<string | null>(null);
  // A press is acknowledged on the step that is open; the list behind it follows in its own time.
  const behind = useDeferredValue(view) ?? view;
  if (!released) return <Empty what={t('checklists.none')} why={t('checklists.noneWhy')} />;
  if (pending) return <Loading what={t('checklists.loading')} />;
  if (!view || !behind) return <ProblemNotice problem={problem} action={<Button onClick={again}>{t('ui.tryAgain')}</Button>} />;
  return (
    <div className="stack">
      <List view={behind} onOpen={setOpen} />
      <ItemDialog view={view} openKey={open} onOpen={setOpen} />
    </div>
  );
}

interface ListProps {
  readonly view: ChecklistView;
  readonly onOpen: (key: string) => void;
}

const List = memo(function List({ view, onOpen }: ListProps) {
  const { t } = useText();
  const next = useNext(view)?.item.key ?? null;
  return (
    <>
      <p className="run-line faint"><Run views={view.items} next={next} />{leftCount(view.items) === 0 ? t('checklists.built') : t('checklists.left', { n: leftCount(view.items) })}</p>
      <div className="no-print"><Link className="button button-crew" to="/jobs/$jobId/list" params={{ jobId: view.jobId }}>{t('checklists.printed.open')}</Link></div>
      <Groups view={view} next={next} onOpen={onOpen} />
      <HoldPoints view={view} />
    </>
  );
});

function Groups({ view, next, onOpen }: ListProps & { readonly next: string | null }) {
  const { t, say } = useText();
  return itemGroups.map((group) => {
    const items = view.items.filter(({ item }) => item.group === group);
    if (items.length === 0) return null;
    return (
      <div key={group}>
        <Heading level={3} aside={items.every(isSettled) ? t('checklists.built') : t('checklists.leftHere', { n: leftCount(items) })}>{say(groupText(group, items.map(({ item }) => item.template)))}</Heading>
        <ul className="item-list">{items.map((one) => <ItemRow key={one.item.key} view={one} next={next} onOpen={onOpen} />)}</ul>
      </div>
    );
  });
}
