import { describe, expect, test } from 'vitest';
import { catalogues, messages } from './messages.ts';
import { parseTemplate, type Piece } from './template.ts';
import { isNumericQuantity, isQuantity } from './format.ts';
import { render, type Params } from './render.ts';
import { languages, unitSystems } from './languages.ts';
import type { Message } from './catalogue.ts';

const files = Object.entries(catalogues as Record<string, Record<string, Message>>);
const all = files.flatMap(([file, entries]) => Object.entries(entries).map(([code, message]) => ({ file, code, message })));

const placeholders = (template: string) =>
  parseTemplate(template)
    .filter((piece) => typeof piece !== 'string')
    .map((piece) => `${piece.name}:${'forms' in piece ? 'plural' : piece.kind}`)
    .sort();

describe('every catalogue', () => {
  test('starts each key with the name of its file', () => {
    expect(all.filter(({ file, code }) => !code.startsWith(`${file}.`)).map(({ code }) => code)).toEqual([]);
  });

  test('shares no key with another', () => {
    expect(all.length).toBe(Object.keys(messages).length);
  });

  test('says something in both languages, without stray spaces', () => {
    const bad = all.filter(({ message }) => languages.some((l) => message[l] === '' || message[l] !== message[l].trim()));
    expect(bad.map(({ code }) => code)).toEqual([]);
  });

  test('uses the same placeholders in both languages', () => {
    const differing = all.filter(({ message }) => {
      const [en, es] = [new Set(placeholders(message.en)), new Set(placeholders(message.es))];
      return en.size !== es.size || [...en].some((name) => !es.has(name));
    });
    expect(differing.map(({ code }) => code)).toEqual([]);
  });

  test('names only quantities that exist', () => {
    const unknown = all.flatMap(({ code, message }) =>
      languages.flatMap((l) => parseTemplate(message[l]))
        .filter((piece) => typeof piece !== 'string' && !('forms' in piece) && piece.kind !== 'term' && !isQuantity(piece.kind))
        .map((piece) => `${code} ${JSON.stringify(piece)}`));
    expect(unknown).toEqual([]);
  });

  test('renders in both languages and both unit systems', () => {
    for (const { code, message } of all) {
      for (const language of languages) {
        for (const units of unitSystems) {
          const sentence = render(language, units, code, sample(parseTemplate(message[language])));
          expect(sentence, code).not.toMatch(/undefined|NaN|\{|\}/);
        }
      }
    }
  });

  test('keeps to US English and to the words of the trade', () => {
    const wrong = /\b(colou?red pill|colour|kerb|cheque|grey|centre|litres?|metres?|dashboards?|pipelines?|workflows?|leads)\b/i;
    expect(all.filter(({ message }) => wrong.test(message.en)).map(({ code, message }) => `${code}: ${message.en}`)).toEqual([]);
  });
});

function sample(pieces: readonly Piece[]): Params {
  const params: Record<string, number | string> = {};
  for (const piece of pieces) if (typeof piece !== 'string') params[piece.name] = sampleOf(piece);
  return params;
}

function sampleOf(piece: Exclude<Piece, string>): number | string {
  if ('forms' in piece) return 2;
  if (piece.kind === 'term') return 'ui.unit.ft';
  if (piece.kind === 'date') return '2031-03-04';
  if (piece.kind === 'dateTime') return '2031-03-04T15:30:00Z';
  return isNumericQuantity(piece.kind) ? 0.5 : 'Tern';
}
