import { describe, expect, test } from 'vitest';
import { pitOverWater, systemChoice, type SystemFacts, type SystemKind } from './system.ts';

const perHour = 0.0254 / 3600;

describe('from cause to kit', () => {
  const facts: SystemFacts = { causes: ['lowSlab'], gravity: 'short', infiltration: null, aboveWaterTable: null, roofDrainsHere: false, legalOutlet: true, power: true };
  const choice = (part: Partial<SystemFacts>): readonly SystemKind[] => systemChoice({ ...facts, ...part });
  test('roof water first, then the surface, then a collector by its water', () => {
    expect(choice({ roofDrainsHere: true })).toEqual(['divertRoof', 'reshape', 'channel', 'pump']);
    expect(choice({ causes: ['roofWater'] })).toEqual(['divertRoof']);
    expect(choice({ causes: ['blockedPath'] })).toEqual(['clearPath']);
    expect(choice({ causes: ['runOn'] })).toEqual(['interceptor']);
    expect(choice({ causes: ['surfaceUnnamed'] })).toEqual(['catchBasin', 'pump']);
    expect(choice({ causes: ['highWaterTable'] })).toEqual(['underDrain', 'pump']);
    expect(choice({ causes: ['flatSlab', 'perchedOnClay'] })).toEqual(['reshape', 'channel', 'underDrain', 'pump']);
  });
  test('gravity where it works, shoot again where the levels cannot tell, else soil, pump, floodproofing', () => {
    expect([choice({ gravity: 'works' }), choice({ gravity: 'tight' })].map((list) => list.at(-1))).toEqual(['toDaylight', 'toDaylight']);
    expect([choice({ gravity: 'cannotTell' }), choice({ gravity: null })].map((list) => list.at(-1))).toEqual(['shootAgain', 'shootAgain']);
    const soil = { infiltration: 0.5 * perHour, aboveWaterTable: 2 * 0.3048 };
    expect(choice(soil).at(-1)).toBe('dryWell');
    expect(choice({ ...soil, infiltration: 0.49 * perHour }).at(-1)).toBe('pump');
    expect(choice({ ...soil, infiltration: 10.1 * perHour }).at(-1)).toBe('pump');
    expect(choice({ ...soil, aboveWaterTable: 0.6 }).at(-1)).toBe('pump');
    expect(choice({ power: false }).at(-1)).toBe('testSoil');
    expect(choice({ power: false, infiltration: 0.1 * perHour, aboveWaterTable: 1 }).at(-1)).toBe('floodproof');
    expect(choice({ legalOutlet: false, gravity: 'works' }).at(-1)).toBe('testSoil');
  });
});

describe('the bottom of a pit over the water', () => {
  const hole = (pick: string, figures: Record<string, number>) => pitOverWater({ picks: [pick], figures });
  test('is counted from the water that stands in the hole, or at least from the bottom of a dry one', () => {
    expect(hole('water', { holeDepth: 2, waterDepth: 1.5, pitBottom: 0.6 })).toBeCloseTo(0.9, 12);
    expect(hole('dry', { holeDepth: 2, pitBottom: 1.2 })).toBeCloseTo(0.8, 12);
    expect(hole('water', { holeDepth: 2, waterDepth: 0.5, pitBottom: 0.9 })).toBeCloseTo(-0.4, 12);
  });
  test('is not known before somebody says how deep the pit goes, and what the hole showed', () => {
    expect(hole('dry', { holeDepth: 2 })).toBeNull();
    expect(hole('water', { holeDepth: 2, pitBottom: 1 })).toBeNull();
    expect(pitOverWater(undefined)).toBeNull();
  });
});
