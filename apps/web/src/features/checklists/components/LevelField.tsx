import { useState } from 'react';
import { LengthField } from '../../../components/LengthField.tsx';
import type { FieldWords } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Instrument } from '../api/useInstrument.ts';

interface LevelFieldProps extends FieldWords {
  /** Level above the job's datum [m]. */
  readonly value: number | null;
  readonly onChange: (level: number | null) => void;
  readonly instrument: Instrument;
}

/** A level, or the rod from which the phone reckons it. */
export function LevelField(props: LevelFieldProps) {
  const { isRod, height } = props.instrument;
  return isRod && height !== null ? <RodField key={height} {...props} height={height} /> : <LengthField crew="plain" kind="level" {...props} />;
}

function RodField({ value, onChange, height, label, hint }: LevelFieldProps & { readonly height: number }) {
  const { t } = useText();
  // What was read stays what it is; the level follows from it.
  const [rod, setRod] = useState(value === null ? null : height - value);
  return (
    <div className="stack">
      <LengthField crew="plain" kind="length" label={t('checklists.rodOf', { what: label })} hint={hint} value={rod} onChange={(read) => { setRod(read); onChange(read === null ? null : height - read); }} />
      {value === null ? null : <p className="field-reads">{t('checklists.levelIs', { level: value })}</p>}
    </div>
  );
}
