import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Cautions } from '../../../components/Cautions.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { PartSelect } from '../../../components/PartSelect.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepFound, useKeepPhoto } from '../../../hooks/useRecord.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { kinds, makeSafe, measured, type Kind } from '../model/kinds.ts';

interface StopWorkProps {
  readonly jobId: string;
  readonly onDone: () => void;
}

/** The second tap says what was found; measure, photo and words may follow. */
export function StopWork({ jobId, onDone }: StopWorkProps) {
  const { t } = useText();
  const [kind, setKind] = useState<Kind | null>(null);
  if (kind !== null) return <WhatFound jobId={jobId} kind={kind} onDone={onDone} onBack={() => setKind(null)} />;
  return <div className="found-kinds">{kinds.map((one) => <Button key={one} size="crew" wide onClick={() => setKind(one)}>{t(`found.kind.${one}`)}</Button>)}</div>;
}

function WhatFound({ jobId, kind, onDone, onBack }: StopWorkProps & { readonly kind: Kind; readonly onBack: () => void }) {
  const { t } = useText();
  const [measure, setMeasure] = useState<number | null>(null);
  const [part, setPart] = useState<string | null>(null);
  const [photoIds, setPhotoIds] = useState<readonly string[]>([]);
  const photo = useKeepPhoto(jobId);
  const report = useKeepFound(jobId);
  const words = t(`found.kind.${kind}`);
  const take = (file: File) => photo.mutate({ file, itemKey: null, part, note: words, forCustomer: false }, { onSuccess: ({ id }) => setPhotoIds((ids) => [...ids, id]) });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const note = fieldsOf(event.currentTarget)('note');
    report.mutate({ kind, part, measure, note: note === '' ? words : note, photoIds: [...photoIds] }, { onSuccess: onDone });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <p className="notice-title">{words}</p>
      <Cautions which={makeSafe[kind]} />
      <PhotoPick label={t('found.photo')} hint={t('found.photoHint')} words={t(photoIds.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} disabled={photo.isPending} onPick={take} />
      {photoIds.length > 0 ? <div className="photo-strip">{photoIds.map((id) => <Photo key={id} jobId={jobId} photoId={id} alt={words} />)}</div> : null}
      {measured[kind] ? <LengthField kind="height" optional label={t(`found.measure.${kind}`)} value={measure} onChange={setMeasure} /> : null}
      <PartSelect jobId={jobId} value={part} onChange={setPart} />
      <TextArea label={t('found.note')} name="note" rows={2} maxLength={2000} optional={kind !== 'other'} required={kind === 'other'} />
      <KeepProblem problem={photo.error ?? report.error} />
      <Button type="submit" kind="main" size="crew" wide disabled={report.isPending || photo.isPending}>{t('found.send')}</Button>
      <Button kind="text" size="crew" onClick={onBack}>{t('found.back')}</Button>
    </form>
  );
}
