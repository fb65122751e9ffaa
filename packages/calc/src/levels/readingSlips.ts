import { FOOT, INCH } from '../common/constants.ts';
import { requireNotNegative } from '../common/require.ts';

/** What the rod is marked in. */
export type RodUnit = 'foot' | 'inch' | 'metre';
export type SlipKind = 'wholeFoot' | 'tenthFoot' | 'wholeInch' | 'tenthMetre' | 'digitsSwapped' | 'inchesAsTenths';

export interface ReadingSlip {
  readonly kind: SlipKind;
  /** What was meant [m]. */
  readonly value: number;
}

const nearest = (value: number): number => Math.floor(value + 0.5);

/** Two digits side by side in the wrong order, in every place of a number of four digits or fewer. */
function swapped(count: number): number[] {
  const found: number[] = [];
  for (let place = 1; place <= 100; place *= 10) {
    const low = Math.floor(count / place) % 10;
    const high = Math.floor(count / (place * 10)) % 10;
    if (low !== high) found.push(count + (high - low) * place + (low - high) * place * 10);
  }
  return found;
}

/** Four feet eleven inches keyed as 4.11, or four feet six as 4.6. */
function fromInches(hundredths: number): number | null {
  const feet = Math.floor(hundredths / 100);
  const part = hundredths - feet * 100;
  const inches = part % 10 === 0 ? part / 10 : part;
  return inches >= 1 && inches <= 11 ? (feet + inches / 12) * FOOT : null;
}

/**
 * What else a rod reading may have been: the slips of the eye and of the key that happen in a field.
 *
 * @param value as written down [m], >= 0
 * @param unit  marks of the rod: hundredths of a foot, fractions of an inch, millimetres
 * @returns each other reading with its slip, none below zero
 * Source: common practice, no source: the foot figure misread, one tenth off, digits in the wrong order, inches keyed as tenths
 * Checked against: hand-made loops
 */
export function readingSlips(value: number, unit: RodUnit): ReadingSlip[] {
  requireNotNegative({ value });
  const steps = (kind: SlipKind, size: number): ReadingSlip[] => [value - size, value + size].map((meant) => ({ kind, value: meant }));
  const found: ReadingSlip[] = [];
  if (unit === 'metre') {
    found.push(...steps('tenthMetre', 0.1));
    found.push(...swapped(nearest(value * 1000)).map((count): ReadingSlip => ({ kind: 'digitsSwapped', value: count / 1000 })));
  } else {
    found.push(...steps('wholeFoot', FOOT));
    if (unit === 'inch') found.push(...steps('wholeInch', INCH));
    else {
      const hundredths = nearest((value / FOOT) * 100);
      found.push(...steps('tenthFoot', FOOT / 10));
      found.push(...swapped(hundredths).map((count): ReadingSlip => ({ kind: 'digitsSwapped', value: (count / 100) * FOOT })));
      const meant = fromInches(hundredths);
      if (meant !== null) found.push({ kind: 'inchesAsTenths', value: meant });
    }
  }
  return found.filter((slip) => slip.value >= 0);
}
