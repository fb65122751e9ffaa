import type { Basin } from '@yardfall/calc';
import { CheckField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import { cylinder, type TypedRun } from '../model/runs.ts';

interface RunFieldsProps {
  readonly number: number;
  readonly run: TypedRun;
  readonly basin: Basin | null;
  readonly onChange: (change: Partial<TypedRun>) => void;
}

const GALLON = 0.003785411784;

/** One run: two marks, the water between them, the time. */
export function RunFields({ number, run, basin, onChange }: RunFieldsProps) {
  const { t, q, units } = useText();
  const { upperLevel, lowerLevel, volume, seconds } = run;
  const upsideDown = upperLevel !== null && lowerLevel !== null && upperLevel <= lowerLevel;
  const holds = basin !== null && upperLevel !== null && lowerLevel !== null && !upsideDown ? t('proof.cylinder', { volume: cylinder(basin, upperLevel, lowerLevel) }) : undefined;
  const flow = volume !== null && seconds !== null && seconds > 0 && volume > 0 ? q('flow', volume / seconds) : null;
  return (
    <fieldset className="proof-run">
      <legend>{t('proof.run', { n: number })}</legend>
      <LengthField kind="level" label={t('proof.upper')} value={upperLevel} onChange={(upper) => onChange({ upperLevel: upper })} error={upsideDown ? t('proof.upsideDown') : undefined} />
      <LengthField kind="level" label={t('proof.lower')} value={lowerLevel} onChange={(lower) => onChange({ lowerLevel: lower })} />
      <NumberField label={t('proof.volume')} hint={holds} value={volume} unit={units === 'us' ? 'gal' : 'L'} perUnit={units === 'us' ? GALLON : 0.001} onChange={(water) => onChange({ volume: water })} />
      <NumberField label={t('proof.seconds')} value={seconds} unit="s" decimals={1} onChange={(time) => onChange({ seconds: time })} />
      <CheckField label={t('proof.emptyLine')} checked={run.emptyLine} onChange={(event) => onChange({ emptyLine: event.target.checked })} />
      <p className="figure" aria-live="polite">{flow ?? ''}</p>
    </fieldset>
  );
}
