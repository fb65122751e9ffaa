import { describe, expect, test } from 'vitest';
import { limitsInForce } from '../overrides.ts';
import { patched, type Step } from '../patch.ts';
import { baseDocuments } from '../../testing/cases/case.ts';
import { changed, withPart } from '../../testing/sites.ts';
import { followDown } from './follow.ts';
import { roundDown, roundUp } from './round.ts';

const { tern, ridge, lawn } = baseDocuments;
const limits = limitsInForce([]);
const partOf = (document: typeof tern, id: string) => document.system.parts.find((part) => part.id === id)!;
const after = (document: typeof tern, patch: readonly Step[], id: string) => partOf(patched(document, patch), id);

describe('what follows downstream of a lower level', () => {
  test('nothing, where the water still falls in', () => {
    expect(followDown(tern, partOf(tern, 'B1'), 30.2, limits)).toEqual([]);
    expect(followDown(tern, undefined, 30, limits)).toEqual([]);
  });

  test('only the inlet of a basin, while start and alarm stay below it', () => {
    const steps = followDown(tern, partOf(tern, 'B1'), 30, limits)!;
    expect(after(tern, steps, 'B1')).toEqual({ ...partOf(tern, 'B1'), inletInvert: 30 });
  });

  test('a whole basin, its collar with it, where the start would come too near', () => {
    const steps = followDown(tern, partOf(tern, 'B1'), 29.4, limits)!;
    const drop = 29.7942 - 29.4;
    const basin = after(tern, steps, 'B1');
    if (basin.kind !== 'basin') throw new Error(basin.kind);
    expect(basin.inletInvert).toBe(29.4);
    expect(basin.onLevel).toBeCloseTo(29.68752 - drop, 4);
    expect(basin.floorLevel).toBeCloseTo(29.2608 - drop, 4);
    expect(basin.alarmLevel).toBeLessThanOrEqual(29.4);
    expect(basin.rimLevel).toBe(30.48);
    expect(basin.collarVolume).toBeGreaterThan(0.475723);
  });

  test('no basin with calibrated marks', () => {
    const marked = withPart<'basin'>(tern, 'B1', { marks: [{ level: 29.2608, volume: 0 }, { level: 30.48, volume: 0.55 }] });
    expect(followDown(marked, partOf(marked, 'B1'), 29.7, limits)).toBeNull();
  });

  test('the head of a pipe that keeps fall enough, both ends of one that does not', () => {
    const steep = followDown(ridge, partOf(ridge, 'P1'), 30, limits)!;
    expect(after(ridge, steep, 'P1')).toEqual({ ...partOf(ridge, 'P1'), invertUp: 30 });
    const flat = followDown(tern, partOf(tern, 'P1'), 30.2, limits)!;
    expect(after(tern, flat, 'P1')).toMatchObject({ invertUp: 30.2, invertDown: roundDown(30.1752 - (30.21965 - 30.2)) });
    expect(after(tern, flat, 'B1')).toMatchObject({ inletInvert: roundDown(30.1752 - (30.21965 - 30.2)) });
  });

  test('a box and its pipe; nothing when the outlet stays above', () => {
    const chained = changed(lawn, (copy) => { copy.system.parts.unshift({ ...copy.system.parts[0]!, id: 'CB0', name: 'Upper box', drainsTo: 'CB1' } as never); });
    const steps = followDown(chained, partOf(chained, 'CB1'), 30.2, limits)!;
    expect(after(chained, steps, 'CB1')).toMatchObject({ invertOut: 30.2 });
    expect(after(chained, steps, 'P1')).toMatchObject({ invertUp: 30.2, invertDown: 29.59608 });
    expect(followDown(chained, partOf(chained, 'CB1'), 29.7, limits)).toBeNull();
    expect(followDown(ridge, partOf(ridge, 'O1'), 29.5, limits)).toBeNull();
    expect(followDown(ridge, partOf(ridge, 'O1'), 29.59608, limits)).toEqual([]);
  });
});

test('levels are told to a hundredth of a millimeter', () => {
  expect([roundDown(1.234567), roundUp(1.234561), roundDown(30.1752), roundUp(30.1752)]).toEqual([1.23456, 1.23457, 30.1752, 30.1752]);
});
