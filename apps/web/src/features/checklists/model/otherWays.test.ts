import { isMessageCode } from '@yardfall/text';
import { expect, test } from 'vitest';
import { readyReasons, reasonOf, shortest } from './otherWays.ts';

test('a reason is what was chosen, what was written, or both', () => {
  expect([reasonOf('It leaks', ''), reasonOf('', ' by the fence '), reasonOf('It leaks', 'at the tee')]).toEqual(['It leaks', 'by the fence', 'It leaks. at the tee']);
});

test('every ready reason has its words, and none is ready for a waiver', () => {
  for (const [way, names] of Object.entries(readyReasons)) for (const name of names) expect(isMessageCode(`checklists.ready.${way}.${name}`), `${way} ${name}`).toBe(true);
  expect(readyReasons.waived).toEqual([]);
  expect(shortest.waived).toBe(10);
});
