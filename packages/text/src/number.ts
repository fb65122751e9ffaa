import { localeOf, type Language } from './languages.ts';

export const noBreakSpace = '\u00a0';

const formats = new Map<string, Intl.NumberFormat>();

export function numberFormat(language: Language, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = language + JSON.stringify(options);
  const known = formats.get(key);
  if (known) return known;
  // A rounded "-0.00" would read as below datum, so a zero never carries a sign.
  const made = new Intl.NumberFormat(localeOf(language), { signDisplay: 'negative', ...options });
  formats.set(key, made);
  return made;
}

/** Fixed number of decimals. */
export function fixed(language: Language, value: number, decimals: number): string {
  return numberFormat(language, { minimumFractionDigits: decimals, maximumFractionDigits: decimals }).format(value);
}

/** At most this many decimals, none that say nothing. */
export function upTo(language: Language, value: number, decimals: number): string {
  return numberFormat(language, { maximumFractionDigits: decimals }).format(value);
}

/** Fewer decimals as the value grows: two figures after the point below `fine`, one below `coarse`, none above. */
export function graded(language: Language, value: number, fine: number, coarse: number): string {
  const size = Math.abs(value);
  return upTo(language, value, size < fine ? 2 : size < coarse ? 1 : 0);
}

export function withUnit(figure: string, unit: string): string {
  return figure + noBreakSpace + unit;
}
