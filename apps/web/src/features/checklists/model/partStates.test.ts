import type { ItemState } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { partStates } from './partStates.ts';
import type { ItemView } from './view.ts';

/** A step of a part (ours), with what stands for the rest of a view. */
function step(key: string, state: ItemState, more: { readonly held?: boolean; readonly stopped?: boolean } = {}): ItemView {
  const part = key.split(':')[1] ?? null;
  return {
    item: { key, part }, state, facts: state === 'open' ? [] : [{}], heldBy: more.held ? [{ holdPoint: 'HP-6', items: [] }] : [], stops: more.stopped ? [{ kind: 'water', part }] : [],
  } as unknown as ItemView;
}

test('a part is built when all its steps are settled, next with the next step, and not yet before', () => {
  const items = [step('A1', 'open'), step('C4:P1', 'proven'), step('E1:P1', 'waived'), step('C4:P2', 'open'), step('G5:O1', 'open', { held: true })];
  expect(partStates(items, 'C4:P2')).toEqual({ P1: 'built', P2: 'next', O1: 'notYet' });
});

test('a part is held by a failed or disputed step, by what was found, and by a hold point once it was begun', () => {
  expect(partStates([step('E1:P1', 'failed'), step('E1:P2', 'disputed'), step('E1:P3', 'open', { stopped: true })], 'E1:P1')).toEqual({ P1: 'held', P2: 'held', P3: 'held' });
  expect(partStates([step('C4:P1', 'proven'), step('E5:P1', 'open', { held: true })], null)).toEqual({ P1: 'held' });
  expect(partStates([step('C4:P1', 'proven'), step('E1:P1', 'open'), step('E5:P1', 'open', { held: true })], 'A1')).toEqual({ P1: 'notYet' });
});
