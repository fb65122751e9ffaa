import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { evaluate, type DesignDocument, type Evaluation } from '@yardfall/calc';
import { explain as words } from '../catalogues/explain.ts';
import { quantity } from '../format.ts';
import { languages, unitSystems } from '../languages.ts';
import { render } from '../render.ts';
import { parseTemplate } from '../template.ts';
import { explain, type ExplainOptions } from './explain.ts';
import { pointedAt, type Ground, type Paragraph } from './tell.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const folder = new URL('../../../../prisma/seed/sites/', import.meta.url);
const sites = readdirSync(folder).filter((file) => file.endsWith('.json'));

/** What is left of a paragraph once every figure and every name that it says is taken out, each as it is shown. */
function leftOver({ text, numbers, names }: Paragraph, { language, units }: ExplainOptions, ground: Ground): string {
  let rest = text;
  const taken = [
    ...names.map(({ text: name, path }) => (pointedAt(ground, path) === name ? name : `no such name at ${path}`)),
    ...numbers.map(({ unit, value, path }) => {
      const held = pointedAt(ground, path);
      return held === value && typeof held === 'number' ? quantity(language, units, unit, held) : `no such number at ${path}`;
    }),
  ].sort((a, b) => b.length - a.length);
  for (const one of taken) {
    if (!rest.includes(one)) return `"${one}" is not said: ${text}`;
    rest = rest.replace(one, ' ');
  }
  return rest;
}

/** Words of the catalogues that a sentence takes in whole: names of results and of symbols, which may hold a unit such as mm². */
function withoutTerms(rest: string, evaluation: Evaluation, { language, units }: ExplainOptions): string {
  const terms = evaluation.workings.flatMap(({ code, symbols, steps }) => [
    render(language, units, `workings.${code}`), ...[...symbols, ...steps].map(({ meaning }) => render(language, units, `workings.meaning.${meaning}`)),
  ]);
  return [...new Set(terms)].sort((a, b) => b.length - a.length).reduce((text, term) => text.replaceAll(term, ' '), rest);
}

const notice = { en: 'Not prepared, reviewed or sealed by a licensed engineer', es: 'No preparado, revisado ni sellado por un ingeniero con licencia' } as const;

describe.each(sites)('the explanation of %s', (file) => {
  const document = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as DesignDocument;
  const evaluation = evaluate(document);
  const ground: Ground = { ...document, ...evaluation };
  const readers = languages.flatMap((language) => unitSystems.map((units) => ({ language, units })));

  test.each(readers.flatMap((reader) => (['plain', 'trade'] as const).map((level) => ({ ...reader, level }))))('holds no figure that the engine does not hold: $language $units $level', (options) => {
    const told = explain(document, evaluation, options);
    const wrong = told.map((paragraph) => withoutTerms(leftOver(paragraph, options, ground), evaluation, options)).filter((rest) => /\d|is not said|no such/.test(rest));
    expect(wrong).toEqual([]);
    expect(told.at(-1)?.text).toContain(notice[options.language]);
    expect(told.map(({ text }) => text).join(' ')).not.toMatch(/undefined|NaN|\{|\}/);
  });

  test('says something of every sill, or why there is no design', () => {
    const plain = explain(document, evaluation, { language: 'en', units: 'us', level: 'plain' }).map(({ text }) => text).join('\n');
    for (const { name } of document.site.sills) expect(plain).toContain(name);
    expect(plain.includes('licensed engineer before anything is designed')).toBe(evaluation.results.referrals.length > 0);
  });

  test('works every number once more for the trade', () => {
    const of = (level: 'plain' | 'trade') => explain(document, evaluation, { language: 'en', units: 'us', level });
    expect(of('trade').length - of('plain').length).toBe(evaluation.workings.length);
  });
});

test('a measured storm is told too', () => {
  const plain = JSON.parse(readFileSync(new URL('ridgeback.json', folder), 'utf8')) as DesignDocument;
  const document: DesignDocument = { ...plain, rain: { ...plain.rain, recorded: { name: 'Shower of our own', source: 'Invented', step: 300, depths: [2, 8, 14, 6, 1] } } };
  const evaluation = evaluate(document, { band: false });
  const options = { language: 'en', units: 'us', level: 'plain' } as const;
  const told = explain(document, evaluation, options);
  expect(told.filter(({ text }) => text.includes('the measured storm "Shower of our own"'))).toHaveLength(document.site.sills.length);
  expect(told.map((paragraph) => leftOver(paragraph, options, { ...document, ...evaluation })).filter((rest) => /\d|is not said|no such/.test(rest))).toEqual([]);
});

test('no sentence of the explanation brings a figure of its own', () => {
  for (const [code, message] of Object.entries(words)) {
    for (const template of Object.values(message)) {
      expect(parseTemplate(template).filter((piece) => typeof piece === 'string').join(''), code).not.toMatch(/\d/);
    }
  }
});

test('a figure that is not where it is said to be is noticed', () => {
  const document = JSON.parse(readFileSync(new URL('ridgeback.json', folder), 'utf8')) as DesignDocument;
  const evaluation = evaluate(document, { band: false });
  const options = { language: 'en', units: 'us', level: 'plain' } as const;
  const [first] = explain(document, evaluation, options);
  if (first === undefined) throw new Error('nothing is said');
  const invented = { ...first, text: `${first.text} About 7 ft.` };
  expect(leftOver(first, options, { ...document, ...evaluation })).not.toMatch(/\d/);
  expect(leftOver(invented, options, { ...document, ...evaluation })).toMatch(/7/);
});
