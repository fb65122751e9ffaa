const INCH = 0.0254;
const FOOT = 12 * INCH;

/** How a rod is read: feet and hundredths, feet, inches and sixteenths, or meters. */
export const entryUnits = ['foot', 'inch', 'metre'] as const;
export type EntryUnit = (typeof entryUnits)[number];

export type Digit = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9';
/** `feet` ends the feet of a tape reading; `sixteenths` sets its fraction, `sixteenth` adds one more. */
export type Key = { readonly key: Digit | 'point' | 'feet' | 'sixteenth' | 'minus' | 'back' | 'clear' } | { readonly key: 'sixteenths'; readonly count: number };

/** What the keys have written so far. Nothing of it is stored: what is stored is meters. */
export interface Entry {
  readonly unit: EntryUnit;
  readonly minus: boolean;
  /** Whole feet of a tape reading, once they are ended. */
  readonly feet: string;
  readonly digits: string;
  readonly sixteenths: number;
  /** A length on the ground and no rod: it may have more figures before the point. */
  readonly long: boolean;
  /** A figure that was written in another unit [m]: it stays exactly what it is until a key is pressed. */
  readonly held: number | null;
}

export function emptyEntry(unit: EntryUnit, long = false): Entry {
  return { unit, minus: false, feet: '', digits: '', sixteenths: 0, long, held: null };
}

export function isEmpty(entry: Entry): boolean {
  return entry.held === null && entry.feet === '' && entry.digits.replace('.', '') === '' && entry.sixteenths === 0;
}

/** A reading that is already known, to be written over. */
export function entryOf(metres: number, unit: EntryUnit, long = false): Entry {
  return { ...emptyEntry(unit, long), held: metres };
}

const decimals: Record<EntryUnit, number> = { foot: 3, inch: 0, metre: 4 };
const wholeDigits: Record<EntryUnit, number> = { foot: 2, inch: 3, metre: 2 };
const longDigits = 4;

/** A key that cannot follow changes nothing. */
export function pressed(entry: Entry, press: Key): Entry {
  if (press.key === 'clear') return emptyEntry(entry.unit, entry.long);
  if (press.key === 'minus') return entry.held === null ? { ...entry, minus: !entry.minus } : { ...entry, held: -entry.held };
  if (press.key === 'back') return entry.held === null ? stepBack(entry) : emptyEntry(entry.unit, entry.long);
  const now = entry.held === null ? entry : emptyEntry(entry.unit, entry.long);
  if (press.key === 'sixteenths') return now.unit === 'inch' ? { ...now, sixteenths: press.count } : now;
  if (press.key === 'sixteenth') return now.unit === 'inch' ? { ...now, sixteenths: Math.min(now.sixteenths + 1, 15) } : now;
  if (press.key === 'feet') return now.unit === 'inch' && now.feet === '' && now.digits !== '' && now.sixteenths === 0 ? { ...now, feet: now.digits, digits: '' } : now;
  if (press.key === 'point') return now.unit === 'inch' || now.digits.includes('.') ? now : { ...now, digits: `${now.digits === '' ? '0' : now.digits}.` };
  return digit(now, press.key);
}

function digit(entry: Entry, key: Digit): Entry {
  const digits = (entry.digits === '0' ? '' : entry.digits) + key;
  const [whole = '', part = ''] = digits.split('.');
  if (part.length > decimals[entry.unit] || whole.length > (entry.long ? longDigits : wholeDigits[entry.unit])) return entry;
  // Twelve inches are a foot: behind feet they are a slip of the thumb.
  if (entry.unit === 'inch' && (entry.sixteenths > 0 || (entry.feet !== '' && Number(digits) >= 12))) return entry;
  return { ...entry, digits };
}

function stepBack(entry: Entry): Entry {
  if (entry.sixteenths > 0) return { ...entry, sixteenths: 0 };
  if (entry.digits !== '') return { ...entry, digits: entry.digits.slice(0, -1) };
  if (entry.feet !== '') return { ...entry, feet: '', digits: entry.feet };
  return { ...entry, minus: false };
}

/** Meters of what was written; null while nothing is. */
export function metresOf(entry: Entry): number | null {
  if (entry.held !== null) return entry.held;
  if (isEmpty(entry)) return null;
  const sign = entry.minus ? -1 : 1;
  if (entry.unit === 'metre') return sign * Number(entry.digits);
  if (entry.unit === 'foot') return sign * Number(entry.digits) * FOOT;
  return sign * (Number(entry.feet) * FOOT + (Number(entry.digits) + entry.sixteenths / 16) * INCH);
}

/** The same reading on other keys: what was written stays what it is. */
export function switched(entry: Entry, unit: EntryUnit): Entry {
  if (unit === entry.unit) return entry;
  const metres = metresOf(entry);
  return metres === null ? emptyEntry(unit, entry.long) : entryOf(metres, unit, entry.long);
}

/** The figures as they stand on the display, without a unit: `4.52`, `4' 6 1/2"`. */
export function shownOf(entry: Entry): string {
  const minus = entry.minus ? '-' : '';
  if (entry.unit !== 'inch') return minus + entry.digits;
  const fraction = entry.sixteenths === 0 ? '' : fractionOf(entry.sixteenths);
  const inches = [entry.digits, fraction].filter(Boolean).join(' ');
  return minus + [entry.feet === '' ? '' : `${entry.feet}'`, inches === '' ? '' : `${inches}"`].filter(Boolean).join(' ');
}

/** In lowest terms: 8 sixteenths are a half. */
export function fractionOf(sixteenths: number): string {
  let [top, bottom] = [sixteenths, 16];
  while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2];
  return `${String(top)}/${String(bottom)}`;
}

/** What a real keyboard writes; null for a key that means nothing here. */
export function keyOf(name: string, unit: EntryUnit): Key | null {
  if (/^\d$/.test(name)) return { key: name as Digit };
  if (name === '.' || name === ',') return { key: 'point' };
  if (name === "'") return { key: 'feet' };
  if (name === 'Backspace') return { key: 'back' };
  if (name === 'Delete') return { key: 'clear' };
  return name === '-' && unit !== 'inch' ? { key: 'minus' } : null;
}
