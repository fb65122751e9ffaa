import { lazy, Suspense, useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useKeepFound } from '../../../hooks/useKeepFound.ts';
import { useText } from '../../../lib/reader.tsx';
import { FoundKinds } from './FoundKinds.tsx';
import './found.css';

// What is told afterwards comes when the work is stopped, from the phone's own store.
const StopReport = lazy(() => import('./StopReport.tsx').then((report) => ({ default: report.StopReport })));

interface StopDialogProps {
  readonly jobId: string;
  readonly timeZone: string;
  /** The report that is added to; null while it is asked what was found. */
  readonly reportId: string | null;
  readonly open: boolean;
  readonly onStopped: (reportId: string) => void;
  readonly onClose: () => void;
}

/** The second tap says what was found, and with it the work is stopped: on this phone at once, with the time. */
export function StopDialog({ jobId, timeZone, reportId, open, onStopped, onClose }: StopDialogProps) {
  const { t } = useText();
  const stop = useKeepFound(jobId);
  return (
    <Dialog open={open} title={t(reportId === null ? 'found.what' : 'found.stopped')} onClose={onClose} size="crew">
      {reportId === null ? (
        <>
          <FoundKinds disabled={stop.isPending} onPick={(kind) => stop.mutate({ kind }, { onSuccess: onStopped })} />
          <KeepProblem problem={stop.error} />
        </>
      ) : <Suspense fallback={<Loading what={t('ui.part')} />}><StopReport key={reportId} jobId={jobId} timeZone={timeZone} reportId={reportId} onDone={onClose} /></Suspense>}
    </Dialog>
  );
}

/** The first tap asks what was found. */
export function StopButton({ jobId, timeZone }: Pick<StopDialogProps, 'jobId' | 'timeZone'>) {
  const { t } = useText();
  const { may } = useMe();
  const [open, setOpen] = useState(false);
  const [reportId, setReportId] = useState<string | null>(null);
  if (!may('findings.report')) return null;
  const begin = () => {
    setReportId(null);
    setOpen(true);
  };
  return (
    <div className="stop-work">
      <Button kind="danger" size="crew" wide onClick={begin}>{t('found.stop')}</Button>
      <StopDialog jobId={jobId} timeZone={timeZone} reportId={reportId} open={open} onStopped={setReportId} onClose={() => setOpen(false)} />
    </div>
  );
}
