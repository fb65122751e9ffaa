import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { Select } from '../../../components/Select.tsx';
import { useKeepDaywork, useKeepPhoto } from '../../../hooks/useRecord.ts';
import { useText } from '../../../lib/reader.tsx';

/** What was used or came: what, how much, and a photo of the slip. */
export function GoodsForm({ jobId, onDone }: { readonly jobId: string; readonly onDone: () => void }) {
  const { t } = useText();
  const keep = useKeepDaywork(jobId);
  const photo = useKeepPhoto(jobId);
  const [now, setNow] = useState({ kind: 'used' as 'used' | 'delivered', what: '', amount: 1 as number | null, unit: '', note: '' });
  const [photoIds, setPhotoIds] = useState<readonly string[]>([]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const { kind, amount, ...goods } = now;
    if (amount === null) return;
    keep.mutate(kind === 'used' ? { ...goods, kind, amount } : { ...goods, kind, amount, photoIds: [...photoIds] }, { onSuccess: onDone });
  };
  const take = (file: File) => photo.mutate({ file, itemKey: null, part: null, note: now.what, forCustomer: false }, { onSuccess: ({ id }) => setPhotoIds((ids) => [...ids, id]) });
  const write = (field: 'what' | 'unit' | 'note') => ({ value: now[field], onChange: (event: { readonly target: { readonly value: string } }) => setNow({ ...now, [field]: event.target.value }) });
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <Select label={t('daywork.field.kind')} value={now.kind} onChange={(kind) => setNow({ ...now, kind })} choices={(['used', 'delivered'] as const).map((kind) => ({ value: kind, label: t(`daywork.kind.${kind}`) }))} />
      <TextField label={t('daywork.field.what')} hint={t('daywork.field.whatHint')} required maxLength={120} {...write('what')} />
      <NumberField label={t('daywork.field.amount')} value={now.amount} onChange={(amount) => setNow({ ...now, amount })} error={now.amount === null ? t('ui.needed') : undefined} />
      <TextField label={t('daywork.field.unit')} optional maxLength={20} {...write('unit')} />
      {now.kind === 'delivered' ? <PhotoPick label={t('found.photo')} words={t(photoIds.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} disabled={photo.isPending} onPick={take} /> : null}
      {photoIds.length > 0 ? <div className="photo-strip">{photoIds.map((id) => <Photo key={id} jobId={jobId} photoId={id} alt={now.what} />)}</div> : null}
      <TextArea label={t('found.note')} optional rows={2} maxLength={500} {...write('note')} />
      <KeepProblem problem={keep.error ?? photo.error} />
      <Button type="submit" kind="main" size="crew" wide disabled={keep.isPending || photo.isPending}>{t('daywork.keep')}</Button>
    </form>
  );
}
