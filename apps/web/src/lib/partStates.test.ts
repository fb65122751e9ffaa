import { expect, test } from 'vitest';
import { withRest } from './partStates.ts';

const parts = [{ id: 'G1' }, { id: 'P1' }];

test('a part without steps stands as built only beside built ones', () => {
  expect(withRest(parts, { P1: 'next' })).toEqual({ G1: 'notYet', P1: 'next' });
  expect(withRest(parts, { P1: 'built' })).toEqual({ G1: 'built', P1: 'built' });
});
