import { describe, expect, test } from 'vitest';
import { evaluate } from '../evaluate/evaluate.ts';
import { generatedDocument } from '../testing/generate/document.ts';
import { fuller, routed, routedCase } from '../testing/routedCases.ts';
import { LevelTable } from './levelTable.ts';
import type { BasinStore, LineStore } from './model.ts';
import { restLevel } from './pumpModes.ts';
import { runStorm } from './run.ts';

const pumped = (seed: number) => generatedDocument(seed, { schemes: ['pumped'], recirculation: false });

describe('the twin above its start levels', () => {
  // Worked by hand: 1 m2, off at 0, on at 0.2 m; lines that hold 0.1 and 0.4 m3.
  const basin = (...backs: readonly number[]): BasinStore => {
    const storage = LevelTable.tabulate(0, 2, 200, (level) => level);
    return { storage, offLevel: 0, onLevel: 0.2, lines: backs.map((runBack) => ({ runBack }) as LineStore) } as unknown as BasinStore;
  };

  test('lets a basin fill to its on level, and as far as its lines run back', () => {
    expect(restLevel(basin())).toBe(0.2);
    expect(restLevel(basin(0, 0))).toBe(0.2);
    expect(restLevel(basin(0.1))).toBe(0.2);
    expect(restLevel(basin(0.4))).toBeCloseTo(0.4, 9);
    expect(restLevel(basin(0.1, 0.4))).toBeCloseTo(0.5, 9);
  });

  // The line of the first yard holds twice the working volume and has no check valve; the second has two pumps of two kinds on one line.
  test.each([1_000_216, 454])('bounds the real pump of generated yard %i', (seed) => {
    const item = routedCase(pumped(seed));
    const [off, real, on] = (['offTwin', 'real', 'onTwin'] as const).map((mode) => routed(item, mode).maxPond[0]!);
    expect(off).toBeLessThanOrEqual(real! + 3e-4);
    expect(real).toBeLessThanOrEqual(on! + 3e-4);
    // Under the strongest rain the pump runs all the time, and an open line is full: the bounds are not far apart.
    expect(on! - off!).toBeLessThan(0.05);
  });
});

describe('a step of a twin', () => {
  test('stays whole where its levels are not found at once, so that more inflow lowers no level', () => {
    const item = routedCase(generatedDocument(103_693));
    const less = routed(item, 'onTwin', true);
    const more = routed({ ...item, inflow: fuller(item.inflow, 103_693) }, 'onTwin', true);
    expect(more.effort.failed).toBeGreaterThan(0);
    expect([less.effort.steps, more.effort.steps]).toEqual([item.inflow.steps, item.inflow.steps]);
    less.samples!.pond.forEach((levels, pond) => levels.forEach((level, i) => { expect(level - more.samples!.pond[pond]![i]!).toBeLessThan(1e-7); }));
  });
});

describe('a pump that never rests', () => {
  // Its two pumps share a line that holds nearly three times the working volume and runs back at every stop: a start every nine seconds of the day.
  const document = pumped(204_054);
  const item = routedCase(document);
  const storm = { ...item, inflow: fuller(item.inflow, 204_054) };

  test('is followed start by start for so many of them, then by what it pumps in the mean', () => {
    const real = runStorm(storm.model, storm.inflow, { mode: 'real' });
    expect(real.events.length).toBeGreaterThan(20_000);
    expect(real.events.length).toBeLessThan(20_010);
    expect(real.massError).toBeLessThan(1e-9);
    // It is cut off in the last hour of the storm, not at its start.
    expect(real.events[real.events.length - 1]!.time).toBeGreaterThan(23 * 3600);
    const [off, on] = [routed(storm, 'offTwin'), routed(storm, 'onTwin')];
    real.maxPond.forEach((level, pond) => {
      expect(off.maxPond[pond]!).toBeLessThanOrEqual(level + 3e-4);
      expect(level).toBeLessThanOrEqual(on.maxPond[pond]! + 3e-4);
    });
    expect(real.volumes.pumped).toBeGreaterThan(0.99 * off.volumes.pumped);
  });

  test('is stopped by its findings', () => {
    const codes = evaluate(document, { band: false }).findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['B1.tooManyStarts', 'N1.runBackLarge']));
  });
});
