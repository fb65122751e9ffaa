import { readdirSync, readFileSync } from 'node:fs';
import { limits } from '@yardfall/calc';
import { sourceWords } from '@yardfall/text';
import { expect, test } from 'vitest';

const folder = new URL('../../packages/calc/src/findings/', import.meta.url);
/** What the checks name as a source beside the limits: `const source = '...'`, and the same given right away. */
const named = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.includes('.test') && !/(^|\/)(limits|table)\.ts$/.test(name))
  .flatMap((name) => [...readFileSync(new URL(name, folder), 'utf8').matchAll(/(?:source = |'(?:stop|caution|note)', )'((?:[^'\\]|\\.){12,})'/g)].map((match) => (match[1] ?? '').replaceAll("\\'", "'")));
const sources = [...new Set([...Object.values(limits).map(({ source }) => source), ...named])];

test('the engine names many sources', () => expect(sources.length).toBeGreaterThan(55));

test.each(sources)('%s has Spanish words', (source) => {
  expect(sourceWords('en', source)).toBe(source);
  expect(sourceWords('es', source)).not.toBe(source);
});

test('a source that nobody knows stands as it is', () => expect(sourceWords('es', 'Smith 2019')).toBe('Smith 2019'));
