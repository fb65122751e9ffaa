import { foot, inch } from './units.ts';

export const lengthUnits = { ft: foot, in: inch, m: 1, cm: 0.01, mm: 0.001 } as const;
export type LengthUnit = keyof typeof lengthUnits;

/** One reading of a length that could mean several. */
export interface LengthOption {
  readonly unit: LengthUnit;
  readonly metres: number;
}

export type LengthResult =
  | { readonly ok: true; readonly metres: number }
  | { readonly ok: false; readonly code: 'length.ambiguous'; readonly options: readonly LengthOption[] }
  | { readonly ok: false; readonly code: 'length.unreadable'; readonly options: readonly [] };

export interface LengthField {
  /** Unit of a bare number; without it a bare number is asked back. */
  readonly unit?: LengthUnit;
  /** Units offered when a bare number is asked back. */
  readonly offered?: readonly LengthUnit[];
}

const unreadable: LengthResult = { ok: false, code: 'length.unreadable', options: [] };

const number = String.raw`\d+(?:\.\d+)?|\.\d+`;
const fraction = String.raw`(\d+)\s*\/\s*(\d+)`;
const mixed = String.raw`(?:(\d+)(?:\s+|\s*-\s*))?${fraction}`;
const feetSign = String.raw`(?:'|ft\.?|feet|foot|pies?)`;
const inchSign = String.raw`(?:"|''|in\.?|inch(?:es)?|pulg\.?|pulgadas?)`;

const bare = new RegExp(`^(${number})$`);
const bareFraction = new RegExp(`^${mixed}$`);
const feetOnly = new RegExp(`^(${number})\\s*${feetSign}$`);
const inchesOnly = new RegExp(`^(${number})\\s*${inchSign}$`);
const inchesFraction = new RegExp(`^${mixed}\\s*${inchSign}$`);
const feetAndInches = new RegExp(`^(\\d+)\\s*${feetSign}\\s*-?\\s*(${number})\\s*${inchSign}$`);
const feetAndFraction = new RegExp(`^(\\d+)\\s*${feetSign}\\s*-?\\s*${mixed}\\s*${inchSign}$`);
const metric = new RegExp(`^(${number})\\s*(mm|cm|m)$`);

/**
 * A length typed the way the trade writes it, in metres: `3 1/4"`, `0.27'`, `3' 3"`, `3'-3 1/4"`, `12 ft`, `1.2 m`, `35 mm`.
 * A bare number takes the field's unit; without one it is asked back. Nothing is guessed: a tenth of a foot taken for an
 * inch is the commonest level mistake on a site.
 */
export function parseLength(typed: string, field: LengthField = {}): LengthResult {
  const tidy = typed
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, ' $&') // a one-character fraction must not run into the inches before it
    .normalize('NFKC')
    .replace(/[\u2018\u2019\u2032\u00b4`]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2012-\u2015\u2212\u2010\u2011]/g, '-')
    .replace(/\u2044/g, '/')
    .trim()
    .toLowerCase();
  const sign = tidy.startsWith('-') ? -1 : 1;
  const body = tidy.replace(/^[+-]\s*/, '');
  const value = marked(body);
  if (value !== null) return Number.isFinite(value) ? { ok: true, metres: sign * value } : unreadable;
  return unmarked(body, sign, field);
}

/** A length whose unit is written; null when none is. */
function marked(body: string): number | null {
  const m = body.match(metric);
  if (m) return Number(m[1]) * lengthUnits[m[2] as 'mm' | 'cm' | 'm'];
  const f = body.match(feetOnly);
  if (f) return Number(f[1]) * foot;
  const i = body.match(inchesOnly);
  if (i) return Number(i[1]) * inch;
  const n = body.match(inchesFraction);
  if (n) return withFraction(n[1], n[2], n[3]) * inch;
  return feetThenInches(body);
}

function feetThenInches(body: string): number | null {
  const whole = body.match(feetAndInches);
  if (whole) return carried(Number(whole[1]), Number(whole[2]));
  const part = body.match(feetAndFraction);
  return part ? carried(Number(part[1]), withFraction(part[2], part[3], part[4])) : null;
}

/** `3' 14"` is more likely a slip than a length, so it is not read. */
function carried(feet: number, inches: number): number {
  return inches < 12 ? feet * foot + inches * inch : Number.NaN;
}

function withFraction(whole: string | undefined, top: string | undefined, bottom: string | undefined): number {
  const denominator = Number(bottom);
  const numerator = Number(top);
  const power = denominator > 0 && (denominator & (denominator - 1)) === 0;
  return power && denominator <= 64 && numerator < denominator ? Number(whole ?? 0) + numerator / denominator : Number.NaN;
}

function unmarked(body: string, sign: number, field: LengthField): LengthResult {
  const plain = body.match(bare);
  const parts = plain ? null : body.match(bareFraction);
  const figure = plain ? Number(plain[1]) : parts ? withFraction(parts[1], parts[2], parts[3]) : Number.NaN;
  if (!Number.isFinite(figure)) return unreadable;
  // A fraction without a mark is only ever read off a tape, in inches, unless the field is in feet: then it is asked back.
  if (parts && field.unit !== undefined && field.unit !== 'in') return ambiguous(figure, sign, ['in', field.unit]);
  if (plain && isTenth(body) && offersBoth(field)) return ambiguous(figure, sign, ['ft', 'in']);
  if (field.unit !== undefined) return { ok: true, metres: sign * figure * lengthUnits[field.unit] };
  return ambiguous(figure, sign, field.offered ?? ['ft', 'in']);
}

function offersBoth({ unit, offered = [] }: LengthField): boolean {
  return (unit === 'ft' || unit === 'in') && offered.includes('ft') && offered.includes('in');
}

/** `.1` written without a leading figure: a tenth of a foot off a rod, or a part of an inch off a tape. */
function isTenth(body: string): boolean {
  return /^\.\d{1,2}$/.test(body);
}

function ambiguous(figure: number, sign: number, units: readonly LengthUnit[]): LengthResult {
  return { ok: false, code: 'length.ambiguous', options: units.map((unit) => ({ unit, metres: sign * figure * lengthUnits[unit] })) };
}
