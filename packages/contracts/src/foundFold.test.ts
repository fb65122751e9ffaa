import { expect, test } from 'vitest';
import { type FoundAdded, isHit, withAdded } from './foundFold.ts';

const stopped = { kind: 'utility', part: null, measure: null, note: '', photoIds: [], hit: null } as const;
const nothing: FoundAdded = { ...stopped, kind: null };

test('what is added later counts, and takes nothing away that was told before', () => {
  const all = withAdded({ ...stopped, note: 'At the gate' }, [
    { ...nothing, photoIds: ['a'], measure: 0.4 }, { ...nothing, part: 'P1', note: 'Yellow' }, { ...nothing, photoIds: ['a', 'b'] }, { ...nothing, kind: 'pipeInTheWay', measure: 0.5 },
  ]);
  expect(all).toEqual({ kind: 'pipeInTheWay', part: 'P1', measure: 0.5, note: 'At the gate\nYellow', photoIds: ['a', 'b'], hit: null });
});

test('a line that was hit stays hit, whatever is told after it', () => {
  const hits = (...said: FoundAdded['hit'][]) => withAdded(stopped, said.map((hit) => ({ ...nothing, hit }))).hit;
  expect(hits('no', 'line')).toBe('line');
  expect(hits('danger', 'line', 'no', null)).toBe('danger');
  expect(hits('no')).toBe('no');
  expect([null, undefined, 'no', 'line', 'danger'].map((hit) => isHit(hit as FoundAdded['hit']))).toEqual([false, false, false, true, true]);
});
