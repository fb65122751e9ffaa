import { useState } from 'react';
import { LengthField } from '../../../components/LengthField.tsx';
import type { FieldWords } from '../../../components/Field.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Instrument } from '../api/useInstrument.ts';

interface CheckShotProps extends FieldWords {
  readonly onChange: (off: number | null) => void;
  readonly instrument: Instrument;
  /** Height of the instrument [m]. */
  readonly height: number;
}

/** A point of the survey shot again: the phone says how far off the survey it is. */
export function CheckShot({ label, hint, onChange, instrument: { points }, height }: CheckShotProps) {
  const { t } = useText();
  const [at, setAt] = useState('');
  const [rod, setRod] = useState<number | null>(null);
  const tell = (point: string, read: number | null) => {
    const level = points.find(({ id }) => id === point)?.level;
    onChange(level === undefined || read === null ? null : height - read - level);
  };
  return (
    <fieldset className="stack">
      <legend>{label}</legend>
      <Select label={t('checklists.checkPoint')} value={at} choices={points.map(({ id, name, level }) => ({ value: id, label: t('checklists.checkPoint.of', { name, level }) }))} onChange={(point) => { setAt(point); tell(point, rod); }} />
      <LengthField crew="plain" kind="length" label={t('checklists.rodOf', { what: label })} hint={hint} value={rod} onChange={(read) => { setRod(read); tell(at, read); }} />
    </fieldset>
  );
}
