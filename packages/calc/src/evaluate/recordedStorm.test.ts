import { describe, expect, test, vi } from 'vitest';
import { changed, demoSite } from '../testing/sites.ts';
import { evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

/** An invented afternoon: two hours of five-minute readings, the heaviest in the middle [mm]. */
const depths = Array.from({ length: 24 }, (_, i) => Math.max(0, 9 - Math.abs(i - 12)));

describe('a recorded storm', () => {
  const site = changed(demoSite('tern-hollow'), (copy) => { copy.rain.recorded = { name: 'An afternoon', source: 'invented', step: 300, depths }; });

  test('is routed beside the designed ones: levels, freeboards of every sill, pump events', () => {
    const { results, massError } = evaluate(site, { band: false });
    const run = results.recorded!;
    expect(run.name).toBe('An afternoon');
    expect(run.freeboards.map(({ sill }) => sill)).toEqual(['S1']);
    const [freeboard] = run.freeboards;
    expect(freeboard!.withoutSystem).toBeLessThan(freeboard!.onTwin);
    expect(freeboard!.onTwin).toBeLessThanOrEqual(freeboard!.withSystem + 3e-4);
    expect(freeboard!.withSystem).toBeLessThanOrEqual(freeboard!.offTwin + 3e-4);
    expect(run.starts).toBe(run.events.filter(({ kind }) => kind === 'pumpOn').length);
    expect(run.starts).toBeGreaterThan(0);
    expect(run.levels[0]!.levels.reduce((most, level) => Math.max(most, level), 0)).toBeCloseTo(run.levels[0]!.maxLevel, 3);
    expect(massError).toBeLessThan(1e-6);
  });

  test('leaves everything else as it was, and is null without one', () => {
    const plain = evaluate(demoSite('tern-hollow'), { band: false }).results;
    expect(plain.recorded).toBeNull();
    expect(evaluate(site, { band: false }).results.freeboards).toEqual(plain.freeboards);
  });
});
