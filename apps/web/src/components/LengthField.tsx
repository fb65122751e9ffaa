import { parseLength, type LengthResult, type LengthUnit } from '@yardfall/text';
import { useState } from 'react';
import { useText } from '../lib/reader.tsx';
import { useFigureText } from '../hooks/useFigureText.ts';
import { Button } from './Button.tsx';
import { Field, type FieldWords } from './Field.tsx';
import { FigureKeys } from './FigureKeys.tsx';
import { closed } from './figureKeys.ts';

/** `level` and `length` are typed in feet, `height` and `size` in inches; metres and millimetres on the other switch. */
export type LengthKind = 'level' | 'length' | 'height' | 'size';

interface LengthFieldProps extends FieldWords {
  /** Metres; null while nothing clear is typed. */
  readonly value: number | null;
  readonly onChange: (metres: number | null) => void;
  readonly kind?: LengthKind;
  readonly name?: string;
  readonly required?: boolean;
  readonly disabled?: boolean;
  /** For a thumb: the number keyboard, with keys for what it lacks; `signed` where a figure may be below nothing, `bare` where it needs none. */
  readonly crew?: 'plain' | 'signed' | 'bare' | undefined;
}

const defaults: Record<LengthKind, { us: LengthUnit; metric: LengthUnit }> = {
  level: { us: 'ft', metric: 'm' },
  length: { us: 'ft', metric: 'm' },
  height: { us: 'in', metric: 'mm' },
  size: { us: 'in', metric: 'mm' },
};

/** A length typed the trade's way; it shows how it was read, and asks back where it could mean two things. */
export function LengthField({ value, onChange, kind = 'length', name, required, disabled, crew, label, hint, error, optional }: LengthFieldProps) {
  const { t, units } = useText();
  const unit = defaults[kind][units];
  const [typed, setTyped] = useFigureText(value, (metres) => plain(metres, unit), unit);
  const [left, setLeft] = useState(true);
  const read = parseLength(closed(typed), { unit, offered: units === 'us' ? ['ft', 'in'] : ['m', 'mm'] });

  const type = (text: string) => {
    const now = parseLength(closed(text), { unit, offered: units === 'us' ? ['ft', 'in'] : ['m', 'mm'] });
    setLeft(false);
    setTyped(text, now.ok ? now.metres : null);
    onChange(now.ok ? now.metres : null);
  };
  const unreadable = left && typed.trim() !== '' && !read.ok && read.code === 'length.unreadable';

  return (
    <Field label={`${label} (${t(`ui.unit.${unit}`)})`} hint={hint} optional={optional} error={unreadable ? t('ui.length.unreadable') : error}
      after={<ReadBack read={read} typed={typed} unit={unit} kind={kind} isPlain={crew !== undefined && kind === 'length'} onType={type} />}>
      {({ id, describedBy, invalid }) => (
        <span className={crew === undefined ? undefined : 'control-keys'}>
          <input id={id} name={name} className="control control-figure" value={typed} inputMode={units === 'us' && crew === undefined ? 'text' : 'decimal'} autoComplete="off"
            required={required} disabled={disabled} aria-describedby={describedBy} aria-invalid={invalid}
            onChange={(event) => type(event.target.value)} onBlur={() => setLeft(true)} />
          {crew === undefined || crew === 'bare' || (unit !== 'ft' && unit !== 'in') ? null : <FigureKeys text={typed} unit={unit} signed={crew === 'signed'} onText={type} />}
        </span>
      )}
    </Field>
  );
}

interface ReadBackProps {
  readonly read: LengthResult;
  readonly typed: string;
  readonly unit: LengthUnit;
  readonly kind: LengthKind;
  /** A bare number of the field's unit needs no second look. */
  readonly isPlain: boolean;
  readonly onType: (text: string) => void;
}

/** How it was read, where that is not plain; what is asked back where it could mean two things. */
function ReadBack({ read, typed, unit, kind, isPlain, onType }: ReadBackProps) {
  const { t } = useText();
  const asked = !read.ok && read.code === 'length.ambiguous' ? read.options : [];
  const reads = kind === 'level' || kind === 'length' ? 'ui.length.reads' : 'ui.length.readsShort';
  return (
    <div aria-live="polite">
      {read.ok && ((unit === 'ft' && !isPlain) || !/^-?[\d.]+$/.test(typed.trim())) ? <p className="field-reads">{t(reads, { value: read.metres })}</p> : null}
      {asked.length > 0 ? (
        <div className="stack">
          <p className="field-error">{t('ui.length.ask', { typed })}</p>
          <div className="row">
            {asked.map((option) => (
              <Button key={option.unit} onClick={() => onType(`${plain(option.metres, option.unit)} ${option.unit}`)}>
                {plain(option.metres, option.unit)} {t(`ui.unit.${option.unit}`)}
              </Button>
            ))}
          </div>
        </div>
      ) : null}
    </div>
  );
}

const perUnit: Record<LengthUnit, { metres: number; decimals: number }> = {
  ft: { metres: 0.3048, decimals: 3 },
  in: { metres: 0.0254, decimals: 4 },
  m: { metres: 1, decimals: 4 },
  cm: { metres: 0.01, decimals: 2 },
  mm: { metres: 0.001, decimals: 1 },
};

function plain(metres: number, unit: LengthUnit): string {
  const { metres: size, decimals } = perUnit[unit];
  return String(Number((metres / size).toFixed(decimals)));
}
