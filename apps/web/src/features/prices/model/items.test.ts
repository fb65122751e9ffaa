import { quantityCodes } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { emptyItem, unpriced } from './items.ts';

test('a new price is counted in the unit that its quantity can be turned into', () => {
  expect(emptyItem('pipe.4').unit).toBe('ft');
  expect(emptyItem('sawCut').unit).toBe('inchFoot');
  expect(emptyItem('spoilHaul').unit).toBe('yd3');
  expect(emptyItem('surroundBag').unit).toBe('bag');
  expect(emptyItem('sod').unit).toBe('ft2');
  expect(emptyItem('pump').unit).toBe('each');
});

test('what the list prices is not offered again', () => {
  const free = unpriced(Object.keys(quantityCodes), [{ code: 'pump' }]);
  expect(free).not.toContain('pump');
  expect(free).toHaveLength(Object.keys(quantityCodes).length - 1);
});
