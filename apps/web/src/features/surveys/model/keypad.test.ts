import { describe, expect, test } from 'vitest';
import { emptyEntry, entryOf, fractionOf, isEmpty, keyOf, metresOf, pressed, shownOf, switched, type Digit, type Entry, type EntryUnit, type Key } from './keypad.ts';

const keys: Readonly<Record<string, Key>> = { '.': { key: 'point' }, "'": { key: 'feet' }, '-': { key: 'minus' }, '<': { key: 'back' }, x: { key: 'clear' }, h: { key: 'sixteenths', count: 8 }, s: { key: 'sixteenth' } };
const typed = (unit: EntryUnit, text: string, from: Entry = emptyEntry(unit)): Entry => text.split('').reduce((entry, sign) => pressed(entry, keys[sign] ?? { key: sign as Digit }), from);
const figure = (unit: EntryUnit, text: string) => Number((metresOf(typed(unit, text)) ?? NaN).toFixed(9));

describe('the keys of the level book', () => {
  test.each<[EntryUnit, string, string, number]>([
    ['foot', '4.52', '4.52', 4.52 * 0.3048], ['foot', '.07', '0.07', 0.07 * 0.3048], ['foot', '-0.38', '-0.38', -0.38 * 0.3048], ['foot', '4', '4', 1.2192],
    ['inch', "4'6h", '4\' 6 1/2"', 54.5 * 0.0254], ['inch', '54h', '54 1/2"', 54.5 * 0.0254], ['inch', "4'", "4'", 1.2192], ['inch', "4's", '4\' 1/16"', 48.0625 * 0.0254],
    ['metre', '1.375', '1.375', 1.375],
  ])('in %s, %s reads %s', (unit, text, shown, metres) => {
    expect(shownOf(typed(unit, text))).toBe(shown);
    expect(figure(unit, text)).toBeCloseTo(metres, 9);
  });
  test('a key that cannot follow changes nothing', () => {
    expect(shownOf(typed('foot', '4..5'))).toBe('4.5');
    expect(shownOf(typed('foot', '123'))).toBe('12');
    expect(shownOf(typed('foot', '4.1234'))).toBe('4.123');
    expect(shownOf(typed('foot', "4'h"))).toBe('4');
    expect(shownOf(typed('inch', "4'12"))).toBe('4\' 1"');
    expect(shownOf(typed('inch', "4'6'."))).toBe('4\' 6"');
    expect(shownOf(typed('inch', 'h5'))).toBe('1/2"');
    expect(shownOf(typed('inch', 'sssssssssssssssss'))).toBe('15/16"');
    expect(shownOf(typed('metre', '05'))).toBe('5');
  });
  test('a length on the ground has four figures before the point, also after the unit was changed', () => {
    expect(shownOf(typed('foot', '140.5', emptyEntry('foot', true)))).toBe('140.5');
    expect(shownOf(typed('metre', '12345', emptyEntry('metre', true)))).toBe('1234');
    expect(shownOf(typed('inch', "140'6", emptyEntry('inch', true)))).toBe('140\' 6"');
    const there = switched(typed('foot', '140', emptyEntry('foot', true)), 'metre');
    expect(metresOf(there)).toBeCloseTo(42.672, 9);
    expect(shownOf(typed('metre', '<<150', there))).toBe('150');
  });
  test('back takes the last thing away, down to nothing', () => {
    const steps = ['', '<', '<<', '<<<', '<<<<'].map((back) => shownOf(typed('inch', `4'6h${back}`)));
    expect(steps).toEqual(['4\' 6 1/2"', '4\' 6"', "4'", '4"', '']);
    expect(isEmpty(typed('inch', "4'6h<<<<"))).toBe(true);
    expect(isEmpty(typed('foot', '.'))).toBe(false);
    expect(metresOf(typed('foot', '-<'))).toBeNull();
    expect(isEmpty(typed('foot', '4.5x'))).toBe(true);
  });
  test('the keys may be changed in the middle: the figure stays to the last bit, until a key is pressed', () => {
    const feet = typed('foot', '4.52');
    const inches = switched(feet, 'inch');
    expect(metresOf(inches)).toBe(metresOf(feet));
    expect(metresOf(switched(switched(inches, 'metre'), 'foot'))).toBe(metresOf(feet));
    expect(switched(feet, 'foot')).toBe(feet);
    expect(switched(emptyEntry('foot'), 'inch')).toEqual(emptyEntry('inch'));
    expect(shownOf(typed('inch', '6', inches))).toBe('6"');
    expect(isEmpty(typed('inch', '<', inches))).toBe(true);
  });
  test('a known reading can be turned round', () => expect(metresOf(pressed(entryOf(0.5, 'metre'), { key: 'minus' }))).toBe(-0.5));
  test('a real keyboard writes the same', () => {
    expect(['7', '.', ',', "'", 'Backspace', 'Delete', '-', 'a', '12'].map((name) => keyOf(name, 'foot')?.key ?? null)).toEqual(['7', 'point', 'point', 'feet', 'back', 'clear', 'minus', null, null]);
    expect(keyOf('-', 'inch')).toBeNull();
  });
  test('fractions stand in lowest terms', () => expect([1, 2, 4, 6, 8, 12, 15].map(fractionOf)).toEqual(['1/16', '1/8', '1/4', '3/8', '1/2', '3/4', '15/16']));
});
