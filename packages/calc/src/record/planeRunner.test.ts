import { describe, expect, it } from 'vitest';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import { kinematicPlane } from '../runoff/kinematicPlane.ts';
import { demoSite } from '../testing/sites.ts';
import { LAST_FILM, PlaneRunner } from './planeRunner.ts';

const { table } = demoSite('tern-hollow').rain;
const planes = [
  { name: 'lawn', length: 9.144, slope: 0.01, roughness: 0.24, share: 0.3 },
  { name: 'paving', length: 4.9, slope: 0.02, roughness: 0.012, share: 0.95 },
  { name: 'long bed', length: 25, slope: 0.03, roughness: 0.3, share: 0.4 },
];

describe('a plane carried on through years', () => {
  it.each(planes)('gives the minutes of the storm plane within 0.5 % of its peak, and loses no water: $name', ({ length, slope, roughness, share }) => {
    for (const returnPeriod of [2, 25, 100]) {
      const excess = alternatingBlock(table, returnPeriod, 86400, 300).map((depth) => (depth / 1000 / 300) * share);
      const minutes = excess.flatMap((rate) => [rate, rate, rate, rate, rate]);
      const wanted = kinematicPlane({ length, slope, roughness }, minutes, 60, 8).outflow;
      const runner = new PlaneRunner({ length, slope, roughness, area: length });
      const found = new Float64Array(minutes.length);
      excess.forEach((rate, i) => { runner.advance(rate, found, 5 * i); });
      const peak = Math.max(...wanted);
      wanted.forEach((flow, i) => { expect(Math.abs(found[i]! - flow)).toBeLessThan(0.005 * peak); });
      const fallen = excess.reduce((sum, rate) => sum + rate * 300 * length, 0);
      const gone = found.reduce((sum, flow) => sum + flow * 60, 0);
      expect(Math.abs(fallen - gone - runner.stored) / fallen).toBeLessThan(1e-12);
    }
  });

  it('lets the last film run off and is dry, with nothing lost', () => {
    const area = 100;
    const runner = new PlaneRunner({ length: 9, slope: 0.01, roughness: 0.24, area });
    const flows = new Float64Array(5);
    runner.advance(2e-6, flows, 0);
    let gone = flows.reduce((sum, flow) => sum + flow * 60, 0);
    let steps = 0;
    let last = 0;
    while (runner.stored > 0) {
      last = runner.stored;
      runner.advance(0, flows, 0);
      gone += flows.reduce((sum, flow) => sum + flow * 60, 0);
      steps += 1;
    }
    expect(last).toBeLessThanOrEqual(LAST_FILM * area * (1 + 1e-9));
    expect(steps).toBeGreaterThan(5);
    expect(gone).toBeCloseTo(2e-6 * 300 * area, 12);
    runner.advance(0, flows, 0);
    expect(Array.from(flows)).toEqual([0, 0, 0, 0, 0]);
  });
});
