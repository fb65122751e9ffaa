import { localeOf, type Language, type Units } from './languages.ts';
import { isQuantity, quantity, type FormatOptions } from './format.ts';
import { fixed, upTo } from './number.ts';
import { parseTemplate, type Piece } from './template.ts';
import { messages } from './messages.ts';
import type { Message } from './catalogue.ts';

export type MessageCode = keyof typeof messages;
export type Params = Readonly<Record<string, number | string | boolean>>;

const table: Readonly<Record<string, Message>> = messages;

export function isMessageCode(code: string): code is MessageCode {
  return Object.hasOwn(table, code);
}

/** The entry that says a code: its own, or what stands for a problem of the engine; null for a code that nobody knows. */
export function messageOf(code: string): MessageCode | null {
  const problem = `problems.${code}`;
  return isMessageCode(code) ? code : isMessageCode(problem) ? problem : null;
}

/** The sentence of a code with its SI parameters, in the reader's language and units. */
export function render(
  language: Language,
  units: Units,
  code: string,
  params: Params = {},
  options: FormatOptions = {},
): string {
  if (!isMessageCode(code)) throw new RangeError(`no message has the code ${code}`);
  const write = (piece: Piece): string => writePiece(piece, { language, units, code, params, options });
  return parseTemplate(messages[code][language]).map(write).join('');
}

interface Reader {
  readonly language: Language;
  readonly units: Units;
  readonly code: string;
  readonly params: Params;
  readonly options: FormatOptions;
}

function writePiece(piece: Piece, reader: Reader): string {
  if (typeof piece === 'string') return piece;
  const value = reader.params[piece.name];
  if (value === undefined) throw new RangeError(`${reader.code} needs the parameter ${piece.name}`);
  if ('forms' in piece) return plural(piece.forms, value, reader);
  if (piece.kind === 'term') return render(reader.language, reader.units, String(value), reader.params, reader.options);
  if (!isQuantity(piece.kind)) throw new RangeError(`${reader.code} names an unknown quantity ${piece.kind}`);
  return quantity(reader.language, reader.units, piece.kind, typeof value === 'boolean' ? String(value) : value, reader.options);
}

const rules = new Map<Language, Intl.PluralRules>();

function plural(forms: readonly [string, string], value: number | string | boolean, reader: Reader): string {
  if (typeof value !== 'number') throw new RangeError(`${reader.code} needs a number for its plural`);
  const rule = rules.get(reader.language) ?? new Intl.PluralRules(localeOf(reader.language));
  rules.set(reader.language, rule);
  const form = rule.select(value) === 'one' ? forms[0] : forms[1];
  const figure = Number.isInteger(value) ? fixed(reader.language, value, 0) : upTo(reader.language, value, 2);
  return form.replaceAll('#', figure);
}
