import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { record } from './catalogues/record.ts';
import { isMessageCode } from './render.ts';

const folder = new URL('../../calc/src/record/', import.meta.url);
const source = readdirSync(folder).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts')).map((name) => readFileSync(new URL(name, folder), 'utf8')).join('\n');
const placed = [...source.matchAll(/recordProblem\('(\w+)'/g)].map((match) => `record.${match[1] ?? ''}`);
const thrown = [...source.matchAll(/CalcProblem\('(record\.\w+)'/g)].map((match) => match[1] ?? '');
const reasons = [...source.matchAll(/reason: '(record\.\w+\.\w+)'/g)].map((match) => match[1] ?? '');
const noted = [...(/recordNoteCodes = \[([^\]]*)\]/.exec(source)?.[1] ?? '').matchAll(/'(record\.\w+)'/g)].map((match) => match[1] ?? '');

test('every problem and every note of a long record has a text, and no text is left over', () => {
  const wanted = new Set<string>([...placed, ...thrown, ...noted, ...reasons]);
  expect(reasons.length).toBe(3);
  expect(noted.length).toBeGreaterThan(15);
  expect(wanted.size).toBeGreaterThan(45);
  expect([...wanted].filter((code) => !isMessageCode(code))).toEqual([]);
  expect(Object.keys(record).filter((code) => !wanted.has(code))).toEqual([]);
});

test('the parameters of a note are those of its text', () => {
  for (const match of source.matchAll(/code: (?:without\.estimate \? )?'(record\.\w+)'(?: : '(record\.\w+)')?, params: \{([^}]*)\}/g)) {
    const given = (match[3] ?? '').split(',').map((part) => part.trim().split(':')[0] ?? '').filter((name) => name !== '');
    for (const code of [match[1], match[2]]) {
      if (code === undefined || !isMessageCode(code)) continue;
      const text = record[code as keyof typeof record].en;
      const used = [...text.matchAll(/\{(\w+):/g)].map((found) => found[1] ?? '');
      expect(used.filter((name) => !given.includes(name)), code).toEqual([]);
    }
  }
});
