import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepDaywork, useKeepPhoto } from '../../../hooks/useRecord.ts';
import { useText } from '../../../lib/reader.tsx';
import { stepped, type GoodsUnit, type Material } from '../model/takeOff.ts';
import { MaterialPick, useMaterials } from './MaterialPick.tsx';
import './daywork.css';

const kinds = ['used', 'delivered'] as const;
const empty = { kind: 'used' as (typeof kinds)[number], what: '', amount: 1 as number | null, unit: '', note: '' };

/** What was used or came: a tap on a material of the design, more or less by a press, and a photo of the slip. Only what stands in no list is written. */
export function GoodsForm({ jobId, onDone }: { readonly jobId: string; readonly onDone: () => void }) {
  const { t, say } = useText();
  const keep = useKeepDaywork(jobId);
  const photo = useKeepPhoto(jobId);
  const materials = useMaterials(jobId);
  const [now, setNow] = useState(empty);
  const [picked, setPicked] = useState<Material | 'other' | null>(null);
  const [photoIds, setPhotoIds] = useState<readonly string[]>([]);
  const pick = (material: Material | null) => {
    setPicked(material ?? 'other');
    setNow(material === null ? { ...empty, kind: now.kind } : { ...now, what: say(`prices.item.${material.code}`), unit: t(`daywork.unit.${material.unit}`), amount: material.designed });
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const { kind, amount, ...goods } = now;
    if (amount === null) return;
    keep.mutate(kind === 'used' ? { ...goods, kind, amount } : { ...goods, kind, amount, photoIds: [...photoIds] }, { onSuccess: onDone });
  };
  const take = (file: File) => photo.mutate({ file, itemKey: null, part: null, note: now.what, forCustomer: false }, { onSuccess: ({ id }) => setPhotoIds((ids) => [...ids, id]) });
  const write = (field: 'what' | 'unit' | 'note') => ({ value: now[field], onChange: (event: { readonly target: { readonly value: string } }) => setNow({ ...now, [field]: event.target.value }) });
  const isWritten = picked === 'other' || materials.length === 0;
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <Choices look="crew" label={t('daywork.field.kind')} value={now.kind} onChange={(kind) => setNow({ ...now, kind })} choices={kinds.map((kind) => ({ value: kind, label: t(`daywork.kind.${kind}`) }))} />
      {materials.length > 0 && picked === null ? <MaterialPick materials={materials} picked={null} onPick={pick} /> : null}
      {isWritten ? <TextField label={t('daywork.field.what')} hint={t('daywork.field.whatHint')} required maxLength={120} {...write('what')} /> : null}
      {picked === null && !isWritten ? null : (
        <>
          {isWritten ? null : <p className="notice-title">{now.what}</p>}
          <Amount unit={picked === null || picked === 'other' ? null : picked.unit} amount={now.amount} onChange={(amount) => setNow({ ...now, amount })} />
          {isWritten ? <TextField label={t('daywork.field.unit')} optional maxLength={20} {...write('unit')} /> : null}
          {now.kind === 'delivered' ? <PhotoPick label={t('found.photo')} words={t(photoIds.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} disabled={photo.isPending} onPick={take} /> : null}
          {photoIds.length > 0 ? <div className="photo-strip">{photoIds.map((id) => <Photo key={id} jobId={jobId} photoId={id} alt={now.what} />)}</div> : null}
          {isWritten ? <TextArea label={t('found.note')} optional rows={2} maxLength={500} {...write('note')} /> : null}
          <KeepProblem problem={keep.error ?? photo.error} />
          <Button type="submit" kind="main" size="crew" wide disabled={keep.isPending || photo.isPending}>{t('daywork.keep')}</Button>
          {materials.length > 0 ? <Button kind="text" size="crew" onClick={() => setPicked(null)}>{t('daywork.another')}</Button> : null}
        </>
      )}
    </form>
  );
}

interface AmountProps {
  /** Null for what is counted in words of one's own. */
  readonly unit: GoodsUnit | null;
  readonly amount: number | null;
  readonly onChange: (amount: number | null) => void;
}

/** A press less, the figure, a press more. */
function Amount({ unit, amount, onChange }: AmountProps) {
  const { t } = useText();
  const by = (sign: 1 | -1) => onChange(stepped(amount ?? 0, unit ?? 'each', sign));
  return (
    <div className="goods-amount">
      <Button size="crew" aria-label={t('daywork.less')} onClick={() => by(-1)}>{'−'}</Button>
      <NumberField label={t('daywork.field.amount')} value={amount} onChange={onChange} error={amount === null ? t('ui.needed') : undefined} {...(unit === null ? {} : { unit: t(`daywork.unit.${unit}`) })} />
      <Button size="crew" aria-label={t('daywork.more')} onClick={() => by(1)}>{'+'}</Button>
    </div>
  );
}
