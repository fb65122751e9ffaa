import { describe, expect, test } from 'vitest';
import { systemChoice, type SystemFacts, type SystemKind } from './system.ts';

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
