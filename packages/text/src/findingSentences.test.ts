import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { findings } from './catalogues/findings.ts';
import { isNumericQuantity } from './format.ts';
import { languages } from './languages.ts';
import { parseTemplate } from './template.ts';

/** Names and kinds of the figures that the engine gives with each finding and remedy; written by packages/calc/bench/writeFindings.ts. */
const figures = JSON.parse(readFileSync(new URL('../../calc/fixtures/golden/findingFigures.json', import.meta.url), 'utf8')) as Record<string, Record<string, 'number' | 'string'>>;

describe('what is said of a finding', () => {
  test('is of one that the engine gives', () => {
    expect(Object.keys(findings).map((code) => code.slice('findings.'.length)).sort()).toEqual(Object.keys(figures).sort());
  });

  test.each(Object.entries(findings))('%s finds its figures in it', (key, message) => {
    const given = figures[key.slice('findings.'.length)] ?? {};
    const wanted = languages.flatMap((language) => parseTemplate(message[language])).filter((piece) => typeof piece !== 'string')
      .map((piece): [string, string] => [piece.name, 'forms' in piece || isNumericQuantity(piece.kind) ? 'number' : 'string']);
    for (const [name, kind] of wanted) expect([name, given[name]]).toEqual([name, kind]);
    expect(Object.keys(given).length).toBeGreaterThanOrEqual(new Set(wanted.map(([name]) => name)).size);
  });
});
