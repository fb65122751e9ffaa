import { describe, expect, test } from 'vitest';
import { levelBookOf, pointsOf, standingOf, type FieldBook, type PointRole, type Shot, type ShotKind } from './fieldBook.ts';
import { freeName, nextShot, otherShot } from './nextShot.ts';

const FOOT = 0.3048;
const head = { mode: 'heightOfInstrument', benchMark: { name: 'Floor', level: 100 * FOOT }, rod: 13 * FOOT } as const;
const shot = (id: string, kind: ShotKind, point: string, role: PointRole, feet: number, more: Partial<Shot> = {}): Shot =>
  ({ id, entry: `reading:${id}`, kind, point, role, value: feet * FOOT, struck: false, distance: null, tailwater: null, photoIds: [], pin: null, inOffice: false, ...more });
const book = (...shots: readonly Shot[]): FieldBook => ({ ...head, shots });
const feet = (metres: number | null | undefined) => (metres === null || metres === undefined ? null : Number((metres / FOOT).toFixed(6)));

/** Two set-ups, worked by hand: instrument 104.52, gate 99.82, instrument 104.13, back on the floor at 100.00. */
const whole: readonly Shot[] = [
  shot('1', 'backsight', 'Floor', 'floor', 4.52), shot('2', 'intermediate', 'Sill', 'sill', 4.59), shot('3', 'intermediate', 'Low spot', 'lowSpot', 4.9),
  shot('4', 'intermediate', 'Channel', 'collectorInvert', 5.37), shot('5', 'foresight', 'Gate', 'other', 4.7), shot('6', 'backsight', 'Gate', 'other', 4.31),
  shot('7', 'intermediate', 'Gutter', 'outlet', 4.78, { distance: 140 * FOOT, tailwater: 0 }), shot('8', 'foresight', 'Floor', 'floor', 4.13),
];

describe('the book as it stands', () => {
  test('levels, instrument and closing, by hand', () => {
    const { reduced, levels, closed } = standingOf(book(...whole));
    expect(Object.fromEntries([...levels].map(([point, level]) => [point, feet(level)]))).toEqual({ Floor: 100, Sill: 99.93, 'Low spot': 99.62, Channel: 99.15, Gate: 99.82, Gutter: 99.35 });
    expect([reduced.verdict, reduced.setUps, closed]).toEqual(['pass', 2, true]);
    expect([1, 4, 5, 6, 8].map((n) => feet(standingOf(book(...whole.slice(0, n))).instrument))).toEqual([104.52, 104.52, null, 104.13, null]);
  });
  test('gravity is answered as soon as collector and outlet are there, best outlet first', () => {
    expect(standingOf(book(...whole.slice(0, 6))).gravity).toEqual([]);
    const early = standingOf(book(...whole.slice(0, 7))).gravity;
    expect(early.map(({ name, margin, uncertainty, verdict }) => [name, feet(margin), feet(uncertainty), verdict])).toEqual([['Gutter', -0.9, 0.02, 'short']]);
    const swale = shot('9', 'intermediate', 'Swale', 'outlet', 7.2, { distance: 150 * FOOT });
    expect(standingOf(book(...whole.slice(0, 7), swale)).gravity.map(({ name, verdict }) => [name, verdict])).toEqual([['Swale', 'works'], ['Gutter', 'short']]);
  });
  test('a struck shot counts for nothing and stays in the book', () => {
    const struck = book(...whole.map((one) => (one.id === '2' ? { ...one, struck: true } : one)));
    expect(struck.shots).toHaveLength(8);
    expect(levelBookOf(struck).readings.map(({ id }) => id)).toEqual(['1', '3', '4', '5', '6', '7', '8']);
    expect(standingOf(struck).levels.has('Sill')).toBe(false);
  });
  test('a point counts once', () => {
    expect(pointsOf(book(...whole)).map(({ point, role }) => [point, role])).toEqual([['Floor', 'floor'], ['Sill', 'sill'], ['Low spot', 'lowSpot'], ['Channel', 'collectorInvert'], ['Gate', 'other'], ['Gutter', 'outlet']]);
  });
  test('a shot after the closing one opens the book again', () => {
    expect(standingOf(book(...whole, shot('9', 'backsight', 'Floor', 'floor', 4.1))).closed).toBe(false);
  });
});

describe('what is shot next', () => {
  const next = (...shots: readonly Shot[]) => { const one = nextShot(book(...shots)); return one === null ? null : [one.kind, one.role, one.point, one.why]; };
  test('walks away from the house and comes back to the mark', () => {
    expect(Array.from({ length: 9 }, (_, n) => next(...whole.slice(0, n)))).toEqual([
      ['backsight', 'floor', 'Floor', 'start'], ['intermediate', 'sill', null, 'needed'], ['intermediate', 'lowSpot', null, 'needed'], ['intermediate', 'collectorInvert', null, 'needed'],
      ['intermediate', 'outlet', null, 'needed'], ['backsight', 'other', 'Gate', 'onTurn'], ['intermediate', 'outlet', null, 'needed'], ['foresight', 'floor', 'Floor', 'close'], null,
    ]);
  });
  test('asks again for what was struck', () => {
    expect(next(...whole.slice(0, 7).map((one) => (one.id === '3' ? { ...one, struck: true } : one)))).toEqual(['intermediate', 'lowSpot', null, 'needed']);
  });
  test('a rod that is read directly has no set-ups', () => {
    const direct = (...shots: readonly Shot[]) => nextShot({ ...head, mode: 'direct', shots });
    const zero = shot('1', 'direct', 'Floor', 'floor', 0);
    expect(direct()).toMatchObject({ kind: 'direct', point: 'Floor', why: 'start' });
    expect(direct(zero)).toMatchObject({ kind: 'direct', role: 'sill', why: 'needed' });
    expect(direct(zero, shot('2', 'direct', 'Floor', 'floor', 0.01))).toBeNull();
    expect(otherShot({ ...head, mode: 'direct', shots: [zero] }, 'close')).toMatchObject({ kind: 'direct', point: 'Floor' });
    expect(otherShot({ ...head, mode: 'direct', shots: [zero] }, 'rim')).toMatchObject({ kind: 'direct', role: 'rim' });
  });
  test('something else may be shot; after a foresight the instrument is set up first', () => {
    const other = (asked: Parameters<typeof otherShot>[1], n: number) => { const { kind, role, point } = otherShot(book(...whole.slice(0, n)), asked); return [kind, role, point]; };
    expect(other('rim', 2)).toEqual(['intermediate', 'rim', null]);
    expect(other('turn', 2)).toEqual(['foresight', 'other', null]);
    expect(other('close', 2)).toEqual(['foresight', 'floor', 'Floor']);
    expect(other('rim', 5)).toEqual(['backsight', 'other', 'Gate']);
    expect(other('outlet', 8)).toEqual(['backsight', 'floor', 'Floor']);
  });
  test('names are not given twice, whatever their case', () => {
    expect([freeName(book(...whole), 'Rim'), freeName(book(...whole), 'gutter'), freeName(book(), 'Floor')]).toEqual(['Rim', 'gutter 2', 'Floor 2']);
  });
});

describe('the levels that are shown', () => {
  test('take their share of a small misclosure, and none of a blunder', () => {
    const closedBy = (rod: number) => standingOf(book(...whole.map((one) => (one.id === '8' ? { ...one, value: rod * FOOT } : one))));
    // 0.01 ft over two set-ups: the sill of the first takes half of it.
    expect(feet(closedBy(4.12).levelOf('2'))).toBe(99.925);
    expect(feet(closedBy(3.13).levelOf('2'))).toBe(99.93);
    expect(closedBy(4.12).levelOf('6')).toBeNull();
  });
});
