import { readdirSync, readFileSync } from 'node:fs';
import { languages, messageOf, render } from '@yardfall/text';
import { describe, expect, test } from 'vitest';

const src = new URL('../../packages/calc/src/', import.meta.url);
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => /(?<!\.test|\.test-d)\.ts$/.test(name) && !name.includes('testing'));
const codes = new Set(files.flatMap((name) => [...readFileSync(new URL(name.replaceAll('\\', '/'), src), 'utf8').matchAll(/new CalcProblem\(\s*'([\w.]+)'/g)].map(([, code]) => code ?? '')));

describe('whatever the engine refuses', () => {
  test('is said in both languages', () => {
    expect(codes.size).toBeGreaterThan(80);
    expect([...codes].filter((code) => messageOf(code) === null)).toEqual([]);
  });

  test('of its methods needs no figure to be said', () => {
    for (const code of codes) {
      const own = messageOf(code);
      if (own === null || !own.startsWith('problems.')) continue;
      for (const language of languages) expect(render(language, 'us', own).length, code).toBeGreaterThan(15);
    }
  });
});
