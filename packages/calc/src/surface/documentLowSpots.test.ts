import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { checkDocument } from '../document/check.ts';
import type { LowSpot } from '../document/document.ts';
import { demoSite } from '../testing/sites.ts';
import { anySurvey, spots } from '../testing/surveys.ts';
import { documentLowSpots } from './documentLowSpots.ts';
import { findLowSpots } from './lowSpots.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

describe('low spots for a document', () => {
  test('two bowls that spill into each other are one; a third below them receives what they spill', () => {
    const ground = triangulateSurface({ points: spots([
      [0, 0, 3], [5, 0, 3], [10, 0, 3], [0, 4, 3], [5, 4, 3], [10, 4, 3], [0, 2, 3], [5, 2, 1.6], [10, 2, 1.8], [2.5, 2, 1], [7.5, 2, 1.2],
      [13, 2, 0.5], [16, 0, 3], [16, 4, 3], [16, 2, 1.7],
    ]) });
    const drainage = findLowSpots(ground);
    const [upper, lower, ...others] = documentLowSpots(ground, drainage).sort((p, q) => p.bottom.x - q.bottom.x);
    expect(others).toEqual([]);
    expect(upper).toMatchObject({ bottom: { x: 2.5 }, rimLevel: 1.8, spillPoint: { x: 10, y: 2 }, spillsTo: lower!.index });
    expect(upper!.within.map((index) => drainage.lowSpots[index]!.bottom.x)).toEqual([2.5, 7.5]);
    expect(lower).toMatchObject({ bottom: { x: 13 }, rimLevel: 1.7, spillsTo: null });
  });

  test('any ground: a document takes them', () => {
    const demo = demoSite('tern-hollow');
    const [model] = demo.site.lowSpots;
    let taken = 0;
    fc.assert(fc.property(anySurvey, (input) => {
      const ground = triangulateSurface(input);
      const found = documentLowSpots(ground, findLowSpots(ground));
      const lowSpots = found.map((spot): LowSpot => ({
        ...model!, id: `G${spot.index}`, stageArea: spot.stageArea, rimLevel: spot.rimLevel, spillsTo: spot.spillsTo === null ? null : `G${spot.spillsTo}`,
      }));
      expect(() => { checkDocument({ ...demo, site: { ...demo.site, lowSpots: [...demo.site.lowSpots, ...lowSpots] } }); }).not.toThrow();
      taken += lowSpots.length;
    }), { numRuns: 60 });
    expect(taken).toBeGreaterThan(10);
  });
});
