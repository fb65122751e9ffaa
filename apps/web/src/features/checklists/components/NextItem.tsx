import { lazy, memo, Suspense, useDeferredValue, useEffect, useState } from 'react';
import { useRest } from '../../../hooks/useRest.ts';
import { useText } from '../../../lib/reader.tsx';
import { useChecklistView } from '../api/useChecklistView.ts';
import { useNext } from '../api/useNext.ts';
import { leftCount, lookedAtToday, type ChecklistView } from '../model/view.ts';
import { ItemDialog } from './ItemDialog.tsx';
import { NextControl } from './NextControl.tsx';
import { Run } from './Run.tsx';
import './checklists.css';

/** Brings what records along: it comes when the page rests, and its room is kept. */
const RainTold = lazy(() => import('./RainTold.tsx').then((one) => ({ default: one.RainTold })));

interface NextItemProps {
  readonly jobId: string;
  /** Told once the control is on the screen: what can wait begins then. */
  readonly onShown?: () => void;
}

/** For the crew's home: the next item of one job, worked on right there. Nothing before the job is released to dig. */
export function NextItem({ jobId, onShown }: NextItemProps) {
  const { view } = useChecklistView(jobId);
  const [open, setOpen] = useState<string | null>(null);
  // A press is acknowledged on the step that is open; what stands behind it follows in its own time.
  const behind = useDeferredValue(view) ?? view;
  const shown = view !== null;
  const rested = useRest(shown);
  useEffect(() => {
    if (shown) onShown?.();
  }, [shown, onShown]);
  if (!view || !behind) return null;
  const looked = lookedAtToday(view.items);
  return (
    <>
      <div className="stack next-item">
        <NextOf view={behind} onOpen={setOpen} />
        <ItemDialog view={view} openKey={open} onOpen={setOpen} />
      </div>
      {looked === null ? null : <div className="rain-told">{rested ? <Suspense fallback={null}><RainTold list={view} view={looked} /></Suspense> : null}</div>}
    </>
  );
}

const NextOf = memo(function NextOf({ view, onOpen }: { readonly view: ChecklistView; readonly onOpen: (key: string) => void }) {
  const { t } = useText();
  const next = useNext(view);
  return (
    <>
      <NextControl view={view} onOpen={onOpen} />
      <p className="run-line faint"><Run views={view.items} next={next?.item.key ?? null} />{leftCount(view.items) === 0 ? t('checklists.built') : t('checklists.left', { n: leftCount(view.items) })}</p>
    </>
  );
});
