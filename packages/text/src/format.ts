import type { Language, Units } from './languages.ts';
import { localeOf } from './languages.ts';
import { fixed, graded, numberFormat, upTo, withUnit } from './number.ts';
import { formatFeetAndTape, formatTape } from './fractions.ts';
import * as unit from './units.ts';

export interface FormatOptions {
  /** IANA zone in which a `dateTime` is told; the reader's own when absent. */
  readonly timeZone?: string;
}

type Format = (value: number, language: Language, units: Units) => string;

const usOr = (us: (v: number, l: Language) => string, metric: (v: number, l: Language) => string): Format =>
  (value, language, units) => (units === 'us' ? us(value, language) : metric(value, language));

const scaled = (by: number, decimals: number, sign: string) => (v: number, l: Language) =>
  withUnit(fixed(l, v / by, decimals), sign);
const gradedIn = (by: number, fine: number, coarse: number, sign: string) => (v: number, l: Language) =>
  withUnit(graded(l, v / by, fine, coarse), sign);

const levelFormat = usOr(scaled(unit.foot, 2, 'ft'), scaled(1, 3, 'm'));

/** What each quantity is measured in inside (after the name) and how it is written. */
const numeric = {
  /** m above the datum */
  level: levelFormat,
  /** m, with its sign always shown: a level relative to another */
  relative: (v, l, u) => (v > 0 ? '+' : '') + levelFormat(v, l, u),
  /** m; level with the tape reading beside */
  levelAndTape: usOr((v, l) => formatFeetAndTape(l, v), scaled(1, 3, 'm')),
  /** m along the ground or of pipe */
  length: usOr(gradedIn(unit.foot, 10, 100, 'ft'), gradedIn(1, 10, 100, 'm')),
  /** m; a small height: water over a sill, freeboard, cover */
  height: usOr(scaled(unit.inch, 1, 'in'), scaled(0.001, 0, 'mm')),
  /** m; as a tape is read: inches and sixteenths */
  tape: usOr((v) => formatTape(v), scaled(0.001, 0, 'mm')),
  /** m; nominal pipe, riser or outlet size */
  diameter: usOr((v, l) => withUnit(upTo(l, v / unit.inch, 2), 'in'), (v, l) => withUnit(upTo(l, v * 1000, 0), 'mm')),
  /** m of water column */
  head: usOr(scaled(unit.foot, 1, 'ft'), scaled(1, 2, 'm')),
  /** m3/s */
  flow: usOr((v, l) => withUnit(graded(l, v / unit.gallonPerMinute, 0, 10), 'gpm'), scaled(unit.litre, 2, 'L/s')),
  /** m3/s; so fine that a difference of a few percent shows, as in a measured flow beside a computed one */
  fineFlow: usOr(scaled(unit.gallonPerMinute, 1, 'gpm'), scaled(unit.litre, 2, 'L/s')),
  /** m3 */
  volume: usOr((v, l) => withUnit(graded(l, v / unit.gallon, 0, 10), 'gal'), (v, l) => withUnit(graded(l, v / unit.litre, 0, 10), 'L')),
  /** m3 of soil, stone or concrete */
  bulk: usOr(scaled(unit.cubicYard, 2, 'cu yd'), scaled(1, 2, 'm³')),
  /** m/s */
  velocity: usOr(scaled(unit.foot, 1, 'ft/s'), scaled(1, 2, 'm/s')),
  /** m2 */
  area: usOr((v, l) => withUnit(graded(l, v / unit.squareFoot, 0, 10), 'sq ft'), gradedIn(1, 0, 100, 'm²')),
  /** mm of rain */
  rain: usOr(scaled(unit.millimetresPerInch, 2, 'in'), scaled(1, 1, 'mm')),
  /** m/s of rain or soakage */
  intensity: usOr(scaled(unit.inchPerHour, 2, 'in/h'), scaled(unit.millimetrePerHour, 1, 'mm/h')),
  /** Pa */
  stress: usOr(scaled(unit.poundForcePerSquareFoot, 3, 'lb/sq ft'), scaled(1, 2, 'Pa')),
  /** N */
  force: usOr((v, l) => withUnit(graded(l, v / unit.poundForce, 10, 100), 'lb'), (v, l) => withUnit(graded(l, v, 10, 100), 'N')),
  /** kg */
  mass: usOr((v, l) => withUnit(graded(l, v / unit.pound, 10, 100), 'lb'), (v, l) => withUnit(graded(l, v, 10, 100), 'kg')),
  /** m/s2 */
  acceleration: usOr(scaled(unit.foot, 2, 'ft/s²'), scaled(1, 3, 'm/s²')),
  /** ratio */
  percent: (v, l) => numberFormat(l, { style: 'percent', maximumFractionDigits: Math.abs(v) < 0.1 ? 1 : 0 }).format(v),
  /** m of fall per m of run; with inches a foot beside it in US units */
  slope: usOr(
    (v, l) => `${slopePercent(v, l)} (${withUnit(upTo(l, v * 12, 3), 'in/ft')})`,
    (v, l) => slopePercent(v, l),
  ),
  /** m of fall per m of run, as a crew says it: `1/8 in per ft` */
  fall: usOr((v, l) => inchesPerFoot(l, v), (v, l) => slopePercent(v, l)),
  /** plain number */
  number: (v, l) => upTo(l, v, 3),
  /** whole things */
  count: (v, l) => upTo(l, v, 0),
  /** s, told in minutes */
  minutes: (v, l) => withUnit(upTo(l, v / 60, Math.abs(v) < 600 ? 1 : 0), 'min'),
  /** s; how long water stands: minutes up to two hours, then hours */
  duration: (v, l) => lasting(l, v),
  /** min; how long something lasts: minutes up to two hours, then hours */
  clockMinutes: (v, l) => lasting(l, v * 60),
  /** s */
  seconds: (v, l) => withUnit(upTo(l, v, Math.abs(v) < 10 ? 1 : 0), 's'),
  /** s, told in hours */
  hours: (v, l) => withUnit(upTo(l, v / 3600, 1), 'h'),
  /** US cents */
  money: (v, l) => numberFormat(l, { style: 'currency', currency: 'USD' }).format(v / 100),
} satisfies Record<string, Format>;

function lasting(language: Language, seconds: number): string {
  if (Math.abs(seconds) >= 7200) return withUnit(upTo(language, seconds / 3600, 1), 'h');
  return withUnit(upTo(language, seconds / 60, Math.abs(seconds) < 600 ? 1 : 0), 'min');
}

/** In thirty-seconds of an inch where it is one of them, else in thousandths. */
function inchesPerFoot(language: Language, value: number): string {
  const inches = Math.abs(value) * 12;
  const count = Math.round(inches * 32);
  const whole = Math.floor(count / 32);
  let [top, bottom] = [count % 32, 32];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const fraction = top === 0 ? '' : `${String(top)}/${String(bottom)}`;
  const isOne = Math.abs(inches - count / 32) < 0.002 && count > 0;
  const figure = isOne ? [whole === 0 ? '' : String(whole), fraction].filter(Boolean).join('\u00a0') : upTo(language, inches, 3);
  return `${value < 0 ? '-' : ''}${withUnit(figure, language === 'es' ? 'pulg por pie' : 'in per ft')}`;
}

function slopePercent(value: number, language: Language): string {
  return numberFormat(language, { style: 'percent', maximumFractionDigits: 2 }).format(value);
}

const calendar = {
  /** 'YYYY-MM-DD', a day without a zone */
  date: (v: string, l: Language) => dateFormat(l, { dateStyle: 'medium', timeZone: 'UTC' }).format(calendarDay(v)),
  /** RFC 3339 instant */
  dateTime: (v: string, l: Language, { timeZone }: FormatOptions) =>
    dateFormat(l, { dateStyle: 'medium', timeStyle: 'short', ...(timeZone ? { timeZone } : {}) }).format(instant(v)),
};

export type NumericQuantity = keyof typeof numeric;
export type CalendarQuantity = keyof typeof calendar;
export type QuantityKind = NumericQuantity | CalendarQuantity | 'text';

export function isNumericQuantity(kind: string): kind is NumericQuantity {
  return Object.hasOwn(numeric, kind);
}

export function isQuantity(kind: string): kind is QuantityKind {
  return isNumericQuantity(kind) || Object.hasOwn(calendar, kind) || kind === 'text';
}

/** One figure with its unit, from SI, as this reader reads it. */
export function quantity(
  language: Language,
  units: Units,
  kind: QuantityKind,
  value: number | string,
  options: FormatOptions = {},
): string {
  if (kind === 'text') return String(value);
  if (isNumericQuantity(kind)) {
    if (typeof value !== 'number' || !Number.isFinite(value)) throw new RangeError(`${kind} needs a finite number, got ${value}`);
    return numeric[kind](value, language, units);
  }
  return calendar[kind](String(value), language, options);
}

const dateFormats = new Map<string, Intl.DateTimeFormat>();

function dateFormat(language: Language, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = language + JSON.stringify(options);
  const known = dateFormats.get(key);
  if (known) return known;
  const made = new Intl.DateTimeFormat(localeOf(language), options);
  dateFormats.set(key, made);
  return made;
}

function calendarDay(value: string): Date {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(value)) throw new RangeError(`not a calendar date: ${value}`);
  return instant(`${value}T00:00:00Z`);
}

function instant(value: string): Date {
  const date = new Date(value);
  if (Number.isNaN(date.getTime())) throw new RangeError(`not an instant: ${value}`);
  return date;
}
