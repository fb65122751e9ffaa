import type { DraftOperation } from '@yardfall/contracts';
import { expect, it } from 'vitest';
import { atEachPlace } from './atEachPlace.ts';

const named = (part: string, value: string): DraftOperation => ({ kind: 'replace', path: ['system', 'parts', `@${part}`, 'name'], value });
const shape = (id: string): DraftOperation => ({ kind: 'add', path: ['site', 'plan', 'shapes', '-'], value: { id } });

it('keeps the last edit of each place and says how many there were', () => {
  const edits = [named('CH1', 'P'), named('P1', 'Line'), named('CH1', 'Pa'), named('CH1', 'Pat')];
  expect(atEachPlace(edits)).toEqual([{ last: named('CH1', 'Pat'), count: 3 }, { last: named('P1', 'Line'), count: 1 }]);
});

it('counts every addition by itself and a removal apart from what was typed there', () => {
  const gone: DraftOperation = { kind: 'remove', path: ['system', 'parts', '@CH1', 'name'] };
  const joined: DraftOperation = { kind: 'connect', part: 'CH1', drainsTo: 'P1' };
  expect(atEachPlace([shape('a'), shape('b'), named('CH1', 'x'), gone, joined]).map(({ count }) => count)).toEqual([1, 1, 1, 1, 1]);
});
