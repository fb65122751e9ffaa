import { useId } from 'react';
import type { Choice } from './Select.tsx';
import './Choices.css';

interface ChoicesProps<V extends string> {
  readonly label: string;
  readonly choices: readonly Choice<V>[];
  readonly value: V | null;
  readonly onChange: (value: V) => void;
  /** `quiet`: underlined words, for the switches of the header; `crew`: 56 px tall. */
  readonly look?: 'plain' | 'quiet' | 'crew';
  readonly disabled?: boolean;
}

/** One of a few, all in sight: radio buttons drawn as words. */
export function Choices<V extends string>({ label, choices, value, onChange, look = 'plain', disabled }: ChoicesProps<V>) {
  const name = useId();
  return (
    <fieldset className={`choices choices-${look}`} disabled={disabled}>
      <legend>{label}</legend>
      <div className="choices-row">
        {choices.map((choice) => (
          <label key={choice.value}>
            <input type="radio" name={name} value={choice.value} checked={choice.value === value} onChange={() => onChange(choice.value)} />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
