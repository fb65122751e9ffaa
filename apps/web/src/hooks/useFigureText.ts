import { useState } from 'react';

interface Typed {
  readonly text: string;
  readonly value: number | null;
  readonly unit: string;
}

/**
 * The text in a figure's field. It is the reader's own text until the value changes from outside (undo, a dragged
 * part, another unit); only then is it written anew, so that typing "3 1/4" is never rewritten under the thumb.
 */
export function useFigureText(value: number | null, write: (value: number) => string, unit: string) {
  const [typed, setTyped] = useState<Typed>(() => ({ text: value === null ? '' : write(value), value, unit }));
  const changed = typed.value !== value || typed.unit !== unit;
  if (changed) setTyped({ text: value === null ? (typed.value === null ? typed.text : '') : write(value), value, unit });
  const set = (text: string, next: number | null) => setTyped({ text, value: next, unit });
  return [typed.text, set] as const;
}
