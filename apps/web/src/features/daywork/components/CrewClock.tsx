import { lazy, Suspense, useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useKeepDaywork } from '../../../hooks/useRecord.ts';
import { useText } from '../../../lib/reader.tsx';
import { useDaywork } from '../api/useDaywork.ts';
import { useTasks } from '../api/useTasks.ts';
import { taskName } from '../model/taskName.ts';
import './daywork.css';

/** The clock stands on the crew's home, which brings no form along. */
const GoodsForm = lazy(() => import('./GoodsForm.tsx').then((one) => ({ default: one.GoodsForm })));

/** The clock of who holds the phone, and what came or was used: one line, each a tap or two away. */
export function CrewClock({ jobId }: { readonly jobId: string }) {
  const text = useText();
  const { t } = text;
  const { me, may } = useMe();
  const { all, now } = useDaywork(jobId);
  const keep = useKeepDaywork(jobId);
  const [open, setOpen] = useState<'task' | 'goods' | null>(null);
  const theirs = useTasks(jobId);
  if (!may('checklists.record')) return null;
  // A clock that was started this minute stands a moment ahead of the page's own.
  const running = all.spans.findLast((span) => span.memberId === me?.id && span.until === null && Date.parse(span.from) <= now + 60_000) ?? null;
  return (
    <div className="crew-clock">
      {running === null ? null : <p className="figure-line">{t('daywork.since', { task: taskName(running.task, text), at: running.from })}</p>}
      <div className="row">
        <Button size="crew" onClick={() => setOpen('task')}>{t(running === null ? 'daywork.start' : 'daywork.other')}</Button>
        {running === null ? null : <Button size="crew" busy={keep.isPending} onClick={() => keep.mutate({ kind: 'stopped' })}>{t('daywork.stop')}</Button>}
        <Button size="crew" onClick={() => setOpen('goods')}>{t('daywork.goods')}</Button>
      </div>
      <KeepProblem problem={keep.error} />
      <Dialog open={open === 'task'} title={open === 'task' ? t('daywork.what') : ''} onClose={() => setOpen(null)} size="crew">
        <div className="stack">
          {open !== 'task' ? null : theirs.map((task) => <Button key={task} size="crew" wide onClick={() => keep.mutate({ kind: 'started', task }, { onSuccess: () => setOpen(null) })}>{taskName(task, text)}</Button>)}
        </div>
      </Dialog>
      <Dialog open={open === 'goods'} title={t('daywork.goods')} onClose={() => setOpen(null)} size="crew">
        {open === 'goods' ? <Suspense fallback={<Loading what={t('ui.part')} />}><GoodsForm jobId={jobId} onDone={() => setOpen(null)} /></Suspense> : null}
      </Dialog>
    </div>
  );
}
