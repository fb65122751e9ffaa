import type { Language } from './languages.ts';
import type { NumericQuantity } from './format.ts';
import { noBreakSpace, numberFormat } from './number.ts';

/** What each quantity is measured in inside a formula; an empty sign for a share or a plain number. */
const signs: Readonly<Record<NumericQuantity, string>> = {
  level: 'm', relative: 'm', levelAndTape: 'm', length: 'm', height: 'm', tape: 'm', diameter: 'm', head: 'm', flow: 'm³/s', fineFlow: 'm³/s', volume: 'm³', bulk: 'm³', velocity: 'm/s',
  area: 'm²', rain: 'mm', intensity: 'm/s', stress: 'Pa', force: 'N', mass: 'kg', acceleration: 'm/s²', percent: '', slope: 'm/m', fall: 'm/m', number: '', count: '', minutes: 's', duration: 's',
  clockMinutes: 'min', seconds: 's', hours: 's', money: 'ct',
};

/** Figures that stand for every digit that a hand calculation can use. */
const figures = 6;

/** A value as it goes into a formula: SI, six figures, never in powers of ten that a pocket calculator asks for twice. */
export function siQuantity(language: Language, kind: NumericQuantity, value: number): string {
  const small = value !== 0 && Math.abs(value) < 1e-6;
  const figure = numberFormat(language, { maximumSignificantDigits: figures, useGrouping: false, ...(small ? { notation: 'scientific' } : {}) }).format(value);
  return signs[kind] === '' ? figure : figure + noBreakSpace + signs[kind];
}
