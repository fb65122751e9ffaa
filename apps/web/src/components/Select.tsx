import type { SelectHTMLAttributes } from 'react';
import { useText } from '../lib/reader.tsx';
import { Field, type FieldWords } from './Field.tsx';

export interface Choice<V extends string = string> {
  readonly value: V;
  readonly label: string;
}

interface SelectProps<V extends string> extends FieldWords, Omit<SelectHTMLAttributes<HTMLSelectElement>, 'id' | 'className' | 'style' | 'onChange' | 'value'> {
  readonly choices: readonly Choice<V>[];
  readonly value?: V | '';
  readonly onChange?: (value: V) => void;
}

export function Select<V extends string>({ label, hint, error, optional, choices, value, onChange, ...select }: SelectProps<V>) {
  const { t } = useText();
  const pick = (picked: string) => {
    const choice = choices.find((c) => c.value === picked);
    if (choice) onChange?.(choice.value);
  };
  const control = value === undefined ? {} : { value };
  return (
    <Field {...{ label, hint, error, optional }}>
      {({ id, describedBy, invalid }) => (
        <select {...select} {...control} id={id} className="control" aria-describedby={describedBy} aria-invalid={invalid} onChange={(event) => pick(event.target.value)}>
          {value === '' ? <option value="" disabled>{t('ui.choose')}</option> : null}
          {choices.map((choice) => <option key={choice.value} value={choice.value}>{choice.label}</option>)}
        </select>
      )}
    </Field>
  );
}
