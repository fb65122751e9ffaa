import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { useKeepFound } from '../../../hooks/useKeepFound.ts';
import { useText } from '../../../lib/reader.tsx';
import { HitSteps } from './HitSteps.tsx';
import { StopDialog } from './StopButton.tsx';
import './found.css';

/** What to do when a buried line is hit, to be read while walking away; one tap more puts it on record, and nobody digs under any ticket of the job. */
export function LineHit({ jobId, timeZone }: { readonly jobId: string; readonly timeZone: string }) {
  const { t } = useText();
  const hit = useKeepFound(jobId);
  const [inSight, setInSight] = useState(false);
  const [reportId, setReportId] = useState<string | null>(null);
  const record = (how: 'danger' | 'line') => (
    <Button kind="danger" size="crew" wide disabled={hit.isPending} onClick={() => hit.mutate({ kind: 'utility', hit: how }, { onSuccess: setReportId })}>{t(how === 'danger' ? 'found.hit.recordDanger' : 'found.hit.recordLine')}</Button>
  );
  return (
    <details className="line-hit" onToggle={(event) => setInSight(event.currentTarget.open)}>
      <summary>{t('found.hit')}</summary>
      <h3>{t('found.hit.gas')}</h3>
      <HitSteps danger inSight={inSight} />
      {record('danger')}
      <h3>{t('found.hit.other')}</h3>
      <HitSteps danger={false} />
      {record('line')}
      <KeepProblem problem={hit.error} />
      <p className="faint">{t('ui.caution.gasStrike.source')}</p>
      <StopDialog jobId={jobId} timeZone={timeZone} reportId={reportId} open={reportId !== null} onStopped={setReportId} onClose={() => setReportId(null)} />
    </details>
  );
}
