import { describe, expect, test } from 'vitest';
import { bookOfList, roleOfWords } from './listBook.ts';

const point = (name: string, description: string, level: number, x = 0) => ({ point: name, description, x, y: 2 * x, level });

describe("a surveyor's list as a book", () => {
  test('reads what a point is from its words', () => {
    expect(['TOP OF SILL', 'FFE', 'gutter flow line', 'INV 8 IN PIPE', 'GROUND SHOT', 'maple', 'flat'].map(roleOfWords)).toEqual(['sill', 'floor', 'outlet', 'outlet', 'grade', 'other', 'other']);
  });
  test('measures from the floor of the list, wherever it stands in it', () => {
    const book = bookOfList([point('1', 'SILL', 30.4), point('2', 'FFE', 30.5, 4), point('3', 'GROUND', 30.2, 6)]);
    expect(book?.benchMark).toEqual({ name: 'FFE 2', level: 30.5 });
    expect(book?.shots.map(({ point: name, role, direct, pin }) => [name, role, Number(direct.toFixed(9)), pin])).toEqual([
      ['FFE 2', 'floor', 0, { x: 4, y: 8 }], ['SILL 1', 'sill', -0.1, { x: 0, y: 0 }], ['GROUND 3', 'grade', -0.3, { x: 6, y: 12 }],
    ]);
  });
  test('without a floor from the first point; equal names are told apart; nothing from nothing', () => {
    const book = bookOfList([point('', 'x', 1), point('', 'x', 2), point('', '', 3)]);
    expect(book?.benchMark).toEqual({ name: 'x', level: 1 });
    expect(book?.shots.map(({ point: name }) => name)).toEqual(['x', 'x 2', '3']);
    expect(bookOfList([])).toBeNull();
  });
});
