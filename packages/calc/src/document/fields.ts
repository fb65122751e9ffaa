import { DocumentError } from './error.ts';

/** What a number field may hold. `count` is a whole number, `share` lies between 0 and 1, `flow` is what a yard can meet [m3/s]. */
export type NumberRule = 'any' | 'positive' | 'nonNegative' | 'share' | 'count' | 'level' | 'flow';
export type FieldRule = NumberRule | `${NumberRule}?` | 'text' | 'flag' | 'list' | 'object' | 'object?' | 'text?';
export type Rules = Readonly<Record<string, FieldRule>>;

/** Levels and lengths beyond this [m] are typing errors on any yard; flows and areas never come near it either. */
const largestNumber = 1e7;
/** Counts and seeds fit 32 bits. */
const largestCount = 4294967295;
/** A river [m3/s]; no yard, pump or hose comes near it, and beyond it volumes lose the digits that mass is kept by. */
const largestFlow = 100;

export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function checkNumber(value: unknown, rule: NumberRule, path: string): void {
  if (typeof value !== 'number') throw new DocumentError('document.wrongType', path, { expected: 'document.kind.number' });
  if (!(value - value === 0)) throw new DocumentError('document.notFinite', path);
  const most = rule === 'count' ? largestCount : rule === 'flow' ? largestFlow : largestNumber;
  if (value > most || value < -most) throw new DocumentError('document.outOfRange', path, { low: -most, high: most });
  if (rule === 'positive' && value <= 0) throw new DocumentError('document.notPositive', path, { value });
  if ((rule === 'nonNegative' || rule === 'count' || rule === 'flow') && value < 0) throw new DocumentError('document.negative', path, { value });
  if (rule === 'count' && Math.floor(value) !== value) throw new DocumentError('document.wrongType', path, { expected: 'document.kind.whole' });
  if (rule === 'share' && (value < 0 || value > 1)) throw new DocumentError('document.outOfRange', path, { low: 0, high: 1 });
}

function checkField(value: unknown, rule: FieldRule, path: string): void {
  const optional = rule.endsWith('?');
  const base = optional ? rule.slice(0, -1) : rule;
  if (value === undefined) throw new DocumentError('document.missing', path);
  if (value === null) {
    if (optional) return;
    throw new DocumentError('document.missing', path);
  }
  if (base === 'text') {
    if (typeof value !== 'string') throw new DocumentError('document.wrongType', path, { expected: 'document.kind.text' });
  } else if (base === 'flag') {
    if (typeof value !== 'boolean') throw new DocumentError('document.wrongType', path, { expected: 'document.kind.flag' });
  } else if (base === 'list') {
    if (!Array.isArray(value)) throw new DocumentError('document.wrongType', path, { expected: 'document.kind.list' });
  } else if (base === 'object') {
    if (!isObject(value)) throw new DocumentError('document.wrongType', path, { expected: 'document.kind.object' });
  } else checkNumber(value, base as NumberRule, path);
}

/** Holds every field of `value` against its rule; throws at the first that breaks it. */
export function checkFields(value: unknown, rules: Rules, path: string): void {
  if (value === undefined || value === null) throw new DocumentError('document.missing', path);
  if (!isObject(value)) throw new DocumentError('document.wrongType', path, { expected: 'document.kind.object' });
  for (const [key, rule] of Object.entries(rules)) checkField(value[key], rule, `${path}/${key}`);
}

export function checkEach(list: readonly unknown[], rules: Rules, path: string): void {
  list.forEach((item, index) => { checkFields(item, rules, `${path}/${index}`); });
}

/** One of a set of words; anything else is an unknown kind. */
export function checkWord(value: unknown, words: readonly string[], path: string): void {
  if (typeof value !== 'string') throw new DocumentError('document.missing', path);
  if (!words.includes(value)) throw new DocumentError('document.wrongKind', path, { kind: value });
}

export function checkUniqueIds(list: readonly { readonly id: string }[], path: string): void {
  const seen = new Set<string>();
  list.forEach((item, index) => {
    if (seen.has(item.id)) throw new DocumentError('document.duplicateId', `${path}/${index}/id`, { id: item.id });
    seen.add(item.id);
  });
}
