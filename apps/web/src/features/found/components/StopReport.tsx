import { isHit } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Doubts } from '../../../components/Doubts.tsx';
import { Cautions } from '../../../components/Cautions.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { PartSelect } from '../../../components/PartSelect.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepFoundMore, type NewFoundMore } from '../../../hooks/useRecord.ts';
import { useStops } from '../../../hooks/useStops.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { lookAt, type Look } from '../../../lib/look.ts';
import { useText } from '../../../lib/reader.tsx';
import type { StopNow } from '../../../lib/stops.ts';
import { makeSafe, measured } from '../model/kinds.ts';
import { FoundKinds } from './FoundKinds.tsx';
import { HitSteps } from './HitSteps.tsx';
import { StoppedSince } from './StoppedSince.tsx';

interface StopReportProps {
  readonly jobId: string;
  readonly timeZone: string;
  readonly reportId: string;
  readonly onDone: () => void;
}

/** The work is stopped already; here it is made safe, and what the office needs to answer is added, each thing kept as it is told. */
export function StopReport({ jobId, timeZone, reportId, onDone }: StopReportProps) {
  const { t } = useText();
  const stop = useStops(jobId).find(({ id }) => id === reportId);
  const more = useKeepFoundMore(jobId, reportId);
  const [other, setOther] = useState(false);
  const [look, setLook] = useState<Look | null>(null);
  if (stop === undefined) return <p>{t('found.answeredNow')}</p>;
  const add = (told: NewFoundMore, onAdded?: () => void) => more.mutate(told, onAdded ? { onSuccess: onAdded } : {});
  // Kept first: what was found may be gone a moment later.
  const take = (file: File) => {
    add({ file });
    void lookAt(file).then(setLook);
  };
  if (other) return <FoundKinds disabled={more.isPending} onPick={(kind) => add({ kind }, () => setOther(false))} />;
  return (
    <div className="stack crew-form">
      <StoppedSince stop={stop} timeZone={timeZone} />
      <Cautions which={makeSafe[stop.kind]} />
      {stop.kind === 'utility' ? <WasItHit stop={stop} busy={more.isPending} onTold={(hit) => add({ hit })} /> : null}
      <PhotoPick label={t('found.photo')} hint={t('found.photoHint')} words={t(stop.photoIds.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} disabled={more.isPending} onPick={take} />
      <Doubts look={look} onKeep={() => setLook(null)} />
      {stop.photoIds.length > 0 ? <div className="photo-strip">{stop.photoIds.map((id) => <Photo key={id} jobId={jobId} photoId={id} alt={t(`found.kind.${stop.kind}`)} />)}</div> : null}
      <PartSelect jobId={jobId} value={stop.part} onChange={(part) => { if (part !== null) add({ part }); }} />
      <InWords key={`${String(stop.measure)} ${stop.note}`} stop={stop} busy={more.isPending} onTold={add} />
      <KeepProblem problem={more.error} />
      <Button kind="main" size="crew" wide onClick={onDone}>{t('found.done')}</Button>
      <Button kind="text" size="crew" onClick={() => setOther(true)}>{t('found.back')}</Button>
    </div>
  );
}

interface TellProps {
  readonly stop: StopNow;
  readonly busy: boolean;
}

/** One tap: a line that was hit stops the digging of the whole job. */
function WasItHit({ stop, busy, onTold }: TellProps & { readonly onTold: (hit: 'no' | 'line' | 'danger') => void }) {
  const { t } = useText();
  if (isHit(stop.hit)) {
    return (
      <>
        <Notice severity="stop" title={t('found.hit.told')}><p>{t('found.hit.noDigging')}</p></Notice>
        <HitSteps danger={stop.hit === 'danger'} />
      </>
    );
  }
  return (
    <div className="found-kinds" role="group" aria-label={t('found.hit.ask')}>
      <p className="notice-title">{t('found.hit.ask')}</p>
      <Button kind="danger" size="crew" wide disabled={busy} onClick={() => onTold('danger')}>{t('found.hit.yesDanger')}</Button>
      <Button kind="danger" size="crew" wide disabled={busy} onClick={() => onTold('line')}>{t('found.hit.yesLine')}</Button>
      <Button size="crew" wide disabled={busy} aria-pressed={stop.hit === 'no'} onClick={() => onTold('no')}>{t(stop.hit === 'no' ? 'found.hit.saidNo' : 'found.hit.no')}</Button>
    </div>
  );
}

function InWords({ stop, busy, onTold }: TellProps & { readonly onTold: (told: NewFoundMore) => void }) {
  const { t } = useText();
  const [measure, setMeasure] = useState<number | null>(stop.measure);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const note = fieldsOf(event.currentTarget)('note').trim();
    const news = measure === stop.measure ? null : measure;
    if (note !== '' || news !== null) onTold({ note, measure: news });
  };
  return (
    <form className="stack" onSubmit={submit}>
      {measured[stop.kind] ? <LengthField crew="plain" kind="height" optional label={t(`found.measure.${stop.kind}`)} value={measure} onChange={setMeasure} /> : null}
      {stop.note === '' ? null : <p className="found-note">{stop.note}</p>}
      <TextArea label={t('found.note')} name="note" rows={2} maxLength={2000} optional />
      <Button type="submit" size="crew" wide disabled={busy}>{t('found.add')}</Button>
    </form>
  );
}
