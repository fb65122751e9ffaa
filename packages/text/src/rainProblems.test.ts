import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { isMessageCode } from './render.ts';

/** Every problem that the reader of point files can throw has its sentence. */
test('each code of the rain reader has a text', () => {
  const folder = new URL('../../calc/src/rain/', import.meta.url);
  const source = readdirSync(folder).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts')).map((name) => readFileSync(new URL(name, folder), 'utf8')).join('\n');
  const codes = [...source.matchAll(/atlasProblem\('(\w+)'/g)].map((match) => `rain.atlas.${match[1] ?? ''}`);
  const thrown = [...source.matchAll(/CalcProblem\('(rain\.atlas\.\w+)'/g)].map((match) => match[1] ?? '');
  const chosen = [...source.matchAll(/atlasProblem\([^']*\? '(\w+)' : '(\w+)'/g)].flatMap((match) => [`rain.atlas.${match[1] ?? ''}`, `rain.atlas.${match[2] ?? ''}`]);
  const all = new Set([...codes, ...thrown, ...chosen]);
  expect(all.size).toBeGreaterThan(15);
  expect([...all].filter((code) => !isMessageCode(code))).toEqual([]);
});
