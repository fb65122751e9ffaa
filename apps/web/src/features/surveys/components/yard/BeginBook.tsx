import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Choices } from '../../../../components/Choices.tsx';
import { TextField } from '../../../../components/Field.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { useText } from '../../../../lib/reader.tsx';
import type { BookHead } from '../../model/fieldBook.ts';

const FOOT = 0.3048;
/** A rod of the usual length, and a floor of 100.00 ft, as the trade does. */
const usual = { level: 100 * FOOT, rod: 13 * FOOT } as const;

/** The mark, the rod and the instrument; all of it stands filled in. */
export function BeginBook({ head, onBegin }: { readonly head: BookHead | null; readonly onBegin: (head: BookHead) => void }) {
  const { t } = useText();
  const [mode, setMode] = useState<BookHead['mode']>(head?.mode ?? 'heightOfInstrument');
  const [name, setName] = useState(head?.benchMark.name ?? t('surveys.floor'));
  const [level, setLevel] = useState<number | null>(head?.benchMark.level ?? usual.level);
  const [rod, setRod] = useState<number | null>(head?.rod ?? usual.rod);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (level !== null && rod !== null && rod > 0 && name.trim() !== '') onBegin({ mode, benchMark: { name: name.trim(), level }, rod });
  };
  return (
    <form className="stack crew-form" onSubmit={submit} aria-label={t('surveys.yard.setUpTitle')}>
      <Choices look="crew" label={t('surveys.mode')} value={mode} onChange={setMode}
        choices={[{ value: 'heightOfInstrument', label: t('surveys.yard.modeInstrument') }, { value: 'direct', label: t('surveys.yard.modeDirect') }]} />
      <TextField label={t('surveys.benchMark')} hint={t('surveys.yard.hint.floor')} value={name} required maxLength={80} onChange={(event) => setName(event.target.value)} />
      <LengthField kind="level" label={t('surveys.benchMarkLevel')} value={level} required onChange={setLevel} />
      <LengthField label={t('surveys.yard.rod')} value={rod} required onChange={setRod} />
      <Button type="submit" kind="main" size="crew" wide>{t('surveys.yard.begin')}</Button>
    </form>
  );
}
