import type { RainTable } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { tableProblem } from './table.rules.ts';

const table: RainTable = {
  name: 'Typed', source: 'invented', illustrative: true, series: 'partialDuration', durations: [300, 600], returnPeriods: [2, 10], depths: [[10, 14], [16, 22]], lower: null, upper: null,
};

test('a table that rises in both ways is taken', () => {
  expect(tableProblem(table)).toBeNull();
  expect(tableProblem({ ...table, lower: [[9, 12], [14, 20]], upper: [[11, 16], [18, 25]] })).toBeNull();
});

test.each([
  ['a single duration', { durations: [300], depths: [[10, 14]] }, 'tooFew', 1, 1],
  ['durations out of order', { durations: [600, 300] }, 'notRising', 2, 1],
  ['a return period twice', { returnPeriods: [2, 2] }, 'notRising', 1, 2],
  ['a missing row', { depths: [[10, 14]] }, 'shape', 2, 1],
  ['a missing cell', { depths: [[10, 14], [16]] }, 'shape', 2, 2],
  ['no depth', { depths: [[10, 14], [16, 0]] }, 'notPositive', 2, 2],
  ['a longer rain that is shallower', { depths: [[10, 14], [9, 22]] }, 'longerIsShallower', 2, 1],
  ['a rarer rain that is shallower', { depths: [[10, 8], [16, 22]] }, 'rarerIsShallower', 1, 2],
  ['a lower limit above the depth', { lower: [[10, 15], [16, 22]] }, 'limitsCross', 1, 2],
] as const)('%s is refused with row and column', (_, change, reason, row, column) => {
  expect(tableProblem({ ...table, ...change })).toEqual({ reason, row, column });
});
