import { foot, inch } from './units.ts';
import { fixed, withUnit } from './number.ts';
import type { Language } from './languages.ts';

/** A length as a tape shows it: whole feet, whole inches, sixteenths in lowest terms. */
export interface TapeReading {
  readonly negative: boolean;
  readonly feet: number;
  readonly inches: number;
  readonly numerator: number;
  readonly denominator: number;
}

export function tapeReading(metres: number): TapeReading {
  const sixteenths = Math.round((Math.abs(metres) / inch) * 16);
  const whole = Math.floor(sixteenths / 16);
  let numerator = sixteenths - whole * 16;
  let denominator = 16;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  return {
    negative: metres < 0 && sixteenths > 0,
    feet: Math.floor(whole / 12),
    inches: whole % 12,
    numerator,
    denominator: numerator === 0 ? 1 : denominator,
  };
}

/** `3' 3 1/4"`, as a crew reads it off the tape. */
export function formatTape(metres: number): string {
  const { negative, feet, inches, numerator, denominator } = tapeReading(metres);
  const parts: string[] = [];
  if (feet > 0) parts.push(`${feet}'`);
  const fraction = numerator > 0 ? `${numerator}/${denominator}` : '';
  if (inches > 0 || numerator > 0 || feet === 0) {
    parts.push(`${[inches > 0 || fraction === '' ? String(inches) : '', fraction].filter(Boolean).join('\u00a0')}"`);
  }
  return (negative ? '-' : '') + parts.join('\u00a0');
}

/** A level with its tape reading beside: `0.27 ft (3 1/4")`. */
export function formatFeetAndTape(language: Language, metres: number): string {
  return `${withUnit(fixed(language, metres / foot, 2), 'ft')} (${formatTape(metres)})`;
}
