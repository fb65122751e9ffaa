import { PhotoMark } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { headOf, markOf, spotIn } from './marks.ts';

test('a stroke is kept as shares of the picture, also when the finger leaves it', () => {
  const box = { left: 10, top: 20, width: 200, height: 100 };
  const mark = markOf('arrow', spotIn(box, { clientX: 60, clientY: 45 }), spotIn(box, { clientX: 400, clientY: 0 }), '');
  expect(mark).toEqual({ kind: 'arrow', from: { x: 0.25, y: 0.25 }, to: { x: 1, y: 0 }, words: '' });
  expect(PhotoMark.safeParse(mark).success).toBe(true);
});

test('a slip leaves nothing, nor do words that are none', () => {
  expect(markOf('line', { x: 0.5, y: 0.5 }, { x: 0.505, y: 0.5 }, '')).toBeNull();
  expect(markOf('text', { x: 0.5, y: 0.5 }, { x: 0.5, y: 0.5 }, '  ')).toBeNull();
  expect(markOf('text', { x: 0.5, y: 0.5 }, { x: 0.9, y: 0.5 }, ' low ')).toMatchObject({ words: 'low', to: { x: 0.5, y: 0.5 } });
});

test('the head of an arrow lies behind its tip, on both sides alike', () => {
  const [a = '', tip = '', b = ''] = headOf({ x: 0, y: 0 }, { x: 100, y: 0 }, 10).split(' ');
  const [ax = 0, ay = 0] = a.split(',').map(Number);
  const [bx = 0, by = 0] = b.split(',').map(Number);
  expect(tip).toBe('100,0');
  expect(ax).toBeCloseTo(bx, 9);
  expect(ay).toBeCloseTo(-by, 9);
  expect(ax).toBeLessThan(100);
});
