import { useFigureText } from '../hooks/useFigureText.ts';
import { useText } from '../lib/reader.tsx';
import { Field, type FieldWords } from './Field.tsx';

interface NumberFieldProps extends FieldWords {
  /** In the unit that `perUnit` gives: stored value = typed x perUnit. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  /** Written after the field, for example gpm. */
  readonly unit?: string;
  /** Size of one typed unit in the stored one; 1 when they are the same. */
  readonly perUnit?: number;
  readonly decimals?: number;
  readonly name?: string;
  readonly required?: boolean;
  readonly disabled?: boolean;
}

export function NumberField({ value, onChange, unit, perUnit = 1, decimals = 3, name, required, disabled, label, hint, error, optional }: NumberFieldProps) {
  const { t } = useText();
  const [typed, setTyped] = useFigureText(value, (stored) => String(Number((stored / perUnit).toFixed(decimals))), unit ?? '');
  const bad = typed.trim() !== '' && parse(typed) === null;
  const type = (text: string) => {
    const figure = parse(text);
    const stored = figure === null ? null : figure * perUnit;
    setTyped(text, stored);
    onChange(stored);
  };
  return (
    <Field label={label} hint={hint} optional={optional} error={bad ? t('ui.number.unreadable') : error}>
      {({ id, describedBy, invalid }) => (
        <span className="control-unit">
          <input id={id} name={name} className="control control-figure" value={typed} inputMode="decimal" autoComplete="off" required={required}
            disabled={disabled} aria-describedby={describedBy} aria-invalid={invalid} onChange={(event) => type(event.target.value)} />
          {unit === undefined ? null : <span>{unit}</span>}
        </span>
      )}
    </Field>
  );
}

/** A plain decimal; a comma is not read, because it means thousands to one reader and a decimal to the next. */
function parse(text: string): number | null {
  const tidy = text.trim().replace('\u2212', '-');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(tidy) ? Number(tidy) : null;
}
