import { describe, expect, test } from 'vitest';
import { readTyped } from './typed.ts';

describe('a typed rain table', () => {
  test('reads one line a duration in the unit given', () => {
    const read = readTyped('.5 .7 .81 .95\n0.8, 1.12, 1.29, 1.52\n', 'Typed', 'letter', 25.4);
    expect('table' in read && read.table.durations).toEqual([300, 600]);
    expect('table' in read && read.table.depths[0]?.[1]).toBeCloseTo(17.78, 10);
  });
  test.each([['.5 .7 .81\n.8 1.1 1.3 1.5', 1], ['.5 .7 .81 .95\n.8 x 1.3 1.5', 2], ['.5 .7 .81 .95', 1]])('%j is asked back at line %i', (text, line) => {
    expect(readTyped(text, 'Typed', '', 25.4)).toEqual({ line });
  });
});
