import type { DesignDocument } from '@yardfall/calc';
import type { Checklist } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { quantity } from '@yardfall/text';
import { differenceShown, levelsAsked } from './levels.ts';

const document = { system: { parts: [
  { kind: 'pipe', id: 'P2', name: 'Pipe to the basin', invertUp: 29.6, invertDown: 29.5 },
  { kind: 'checkValve', id: 'V1', name: 'Check valve' },
  { kind: 'outlet', id: 'O1', name: 'Emitter', level: 30.1 },
] } } as unknown as DesignDocument;

const fact = (id: string, name: string, value: number, verdict: 'kept' | 'refused', seen: readonly string[] = []) => ({ verdict, fact: { id, seen, kind: 'measured', name, value } });
const requirement = { measures: [], params: {} };
const checklist = { items: [
  { part: 'P2', requirement, facts: [fact('b', 'invertUp', 29.58, 'kept'), fact('a', 'invertUp', 29.61, 'kept', ['b']), fact('c', 'invertUp', 31, 'refused', ['a'])] },
  { part: 'O1', requirement, facts: [fact('d', 'lidLevel', 30.12, 'kept')] },
] } as unknown as Checklist;

test('levels come from what the crew measured and counts, the newest; what nobody measured stays empty', () => {
  expect(levelsAsked(document, checklist).map(({ part, field, measured }) => [part, field, measured])).toEqual([['P2', 'invertUp', 29.61], ['P2', 'invertDown', null], ['O1', 'level', 30.12]]);
});

test('the difference is that of the two figures shown, in both units, whatever the rounding', () => {
  const pairs = [[30.2224, 30.2196], [30.22, 30.22], [30.1752, 30.1767], [30.2194, 30.2209], [29.9999, 30.0001], [30.219957, 30.219955]] as const;
  for (const units of ['us', 'metric'] as const) {
    for (const [built, designed] of pairs) {
      const figure = (text: string) => Number(text.replace(/[^\d.+-]/g, ''));
      const [a = 0, b = 0] = [built, designed].map((level) => figure(quantity('en', units, 'level', level)));
      expect(figure(quantity('en', units, 'relative', differenceShown(built, designed, units)))).toBeCloseTo(a - b, 9);
    }
  }
  // 99.1549 and 99.1451 ft are both shown as 99.15 ft, though they lie 0.01 ft apart.
  expect(quantity('en', 'us', 'relative', differenceShown(99.1549 * 0.3048, 99.1451 * 0.3048, 'us'))).toBe('0.00\u00a0ft');
});
