import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useStops } from '../../../hooks/useStops.ts';
import { useText } from '../../../lib/reader.tsx';
import { Answered } from './Answered.tsx';
import { StopDialog } from './StopButton.tsx';
import { StoppedSince } from './StoppedSince.tsx';
import './found.css';

interface StoppedProps {
  readonly jobId: string;
  readonly timeZone: string;
  /** Named where the page is about several jobs. */
  readonly job?: string;
}

/** Before anything else of a job: that its work is stopped, by what, since when, and whether the office knows. Then what the office has answered today. */
export function Stopped({ jobId, timeZone, job }: StoppedProps) {
  const { t } = useText();
  const { may } = useMe();
  const stops = useStops(jobId);
  const [added, setAdded] = useState<string | null>(null);
  if (stops.length === 0) return <Answered jobId={jobId} timeZone={timeZone} />;
  return (
    <section className="stopped no-print" aria-label={t('found.stopped')}>
      <p className="stopped-title"><FindingMark severity="stop" wordUnseen />{job === undefined ? t('found.stopped') : t('found.stoppedAt', { job })}</p>
      <ul>
        {stops.map((stop) => (
          <li key={stop.id}>
            <StoppedSince stop={stop} timeZone={timeZone} />
            {stop.hitAt === null ? null : <p><strong>{t('found.hit.noDigging')}</strong></p>}
            {stop.mine ? <Button size="crew" onClick={() => setAdded(stop.id)}>{t('found.addTo')}</Button> : null}
          </li>
        ))}
      </ul>
      <Answered jobId={jobId} timeZone={timeZone} />
      {may('findings.answer') && stops.some(({ inOffice }) => inOffice) ? <p><a href={`/jobs/${jobId}#work`}>{t('found.toAnswer')}</a></p> : <p>{t('found.until')}</p>}
      <StopDialog jobId={jobId} timeZone={timeZone} reportId={added} open={added !== null} onStopped={setAdded} onClose={() => setAdded(null)} />
    </section>
  );
}
