import { lazy, Suspense, useState } from 'react';
import { Dialog } from '../../../components/Dialog.tsx';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import './found.css';

/** From the phone's own store once it is installed: the button stands on every first page. */
const StopWork = lazy(() => import('./StopWork.tsx').then((one) => ({ default: one.StopWork })));

/** One tap opens the kinds of finding; the report stops the work, the tap alone does not. */
export function StopButton({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const { may } = useMe();
  const [open, setOpen] = useState(false);
  if (!may('findings.report')) return null;
  return (
    <div className="stop-work">
      <Button kind="danger" size="crew" wide onClick={() => setOpen(true)}>{t('found.stop')}</Button>
      <Dialog open={open} title={t('found.what')} onClose={() => setOpen(false)} size="crew">
        {open ? <Suspense fallback={<Loading what={t('ui.part')} />}><StopWork jobId={jobId} onDone={() => setOpen(false)} /></Suspense> : null}
      </Dialog>
    </div>
  );
}
