import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, GALLON_PER_MINUTE, GRAVITY, INCH } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { criticalDepthInPipe } from './criticalDepth.ts';
import { entranceHead, ENTRANCES } from './entranceControl.ts';
import { outletCapacity, outletDepth } from './outletDepth.ts';
import { pipeHead } from './pipeControl.ts';
import { criticalDepthIn } from './criticalDepthIn.ts';
import { specificEnergy } from './specificEnergy.ts';

const FILE = 'channel/entranceControl.json';

describe('entrance control', () => {
  it('row chart1: the example on chart 1 of HDS-5', () => {
    const row = fixtureRow(FILE, 'chart1');
    for (const [name, ratio] of Object.entries(row.expected)) {
      const diameter = given(row, 'inches') * INCH;
      const kind = ENTRANCES[name as keyof typeof ENTRANCES];
      expectNear(entranceHead(given(row, 'cfs') * CUBIC_FOOT, diameter, 0, kind) / diameter, ratio, row.tolerance);
    }
  });

  it('rows square.hand and mitered.hand: both forms worked in US units', () => {
    for (const [id, kind] of [['square.hand', ENTRANCES.squareEdge], ['mitered.hand', ENTRANCES.corrugatedMitered]] as const) {
      const row = fixtureRow(FILE, id);
      for (const form of ['submerged', 'unsubmerged']) {
        const head = entranceHead(given(row, `${form}Cfs`) * CUBIC_FOOT, given(row, 'inches') * INCH, given(row, 'slope'), kind);
        expectNear(head / FOOT, row.expected[form], row.tolerance);
      }
    }
  });

  it('goes straight from 3.5 to 4 of the discharge group', () => {
    const d = 0.1;
    const flow = (group: number): number => (group * (Math.PI / 4) * d * d * Math.sqrt(d)) / 1.811;
    const at = (group: number): number => entranceHead(flow(group), d);
    expectNear(at(3.75), (at(3.5) + at(4)) / 2, 1e-12);
    expectNear(at(3.6), at(3.5) + 0.2 * (at(4) - at(3.5)), 1e-12);
    expectNear(at(4), d * (0.0398 * 16 + 0.67), 1e-12);
    expectNear(at(4.2), d * (0.0398 * 4.2 * 4.2 + 0.67), 1e-12);
    // At 3.5 critical head, 0.0098*3.5^2 diameters more, and no slope.
    expectNear(at(3.5) - d * 0.0098 * 12.25, 0.10403, 2e-5);
    expect(() => entranceHead(0, d)).toThrow('value.notPositive at flow');
    expect(() => entranceHead(0.001, d, NaN)).toThrow('value.notFinite at slope');
  });
});

describe('pipe control', () => {
  const d = 4 * INCH;
  const flow = 58 * GALLON_PER_MINUTE;
  const velocity = flow / ((Math.PI / 4) * d * d);
  const friction = (n: number): number => (n * n * velocity * velocity) / Math.pow(d / 4, 4 / 3);

  it('a full pipe: tailwater or half of critical and crown, friction, entrance and velocity, less the fall', () => {
    const drowned = pipeHead(flow, d, { length: 20, slope: 0.005, roughness: 0.012, tailwater: 0.3 });
    expectNear(drowned, 0.3 + friction(0.012) * 20 - 0.1 + (1.5 * velocity * velocity) / (2 * GRAVITY), 1e-9);
    const free = pipeHead(flow, d, { length: 20, slope: 0.001, roughness: 0.012, tailwater: 0 });
    expectNear(free, (criticalDepthInPipe(flow, d) + d) / 2 + friction(0.012) * 20 - 0.02 + (1.5 * velocity * velocity) / (2 * GRAVITY), 1e-9);
    const sharp = pipeHead(flow, d, { length: 20, slope: 0.001, roughness: 0.012, tailwater: 0 }, 0.9);
    expectNear(sharp - free, (0.4 * velocity * velocity) / (2 * GRAVITY), 1e-9);
  });

  it('a slow open pipe stands at normal depth, a steep free one asks nothing', () => {
    const slow = pipeHead(0.002, 0.15, { length: 20, slope: 0.002, roughness: 0.013, tailwater: 0 });
    expect(slow).toBeGreaterThan(criticalDepthInPipe(0.002, 0.15));
    expect(slow).toBeLessThan(0.15);
    expect(pipeHead(0.002, 0.15, { length: 20, slope: 0.03, roughness: 0.01, tailwater: 0 })).toBe(0);
    // A tailwater under the entrance's own normal depth does not drown it; one over it does.
    expect(pipeHead(0.002, 0.15, { length: 20, slope: 0.03, roughness: 0.01, tailwater: 0.6 })).toBe(0);
    expect(pipeHead(0.002, 0.15, { length: 20, slope: 0.03, roughness: 0.01, tailwater: 0.7 })).toBeGreaterThan(0.1);
  });

  it('names what is wrong', () => {
    const pipe = { length: 20, slope: 0.005, roughness: 0.012, tailwater: 0 };
    expect(() => pipeHead(flow, d, { ...pipe, length: 0 })).toThrow('value.notPositive at length');
    expect(() => pipeHead(flow, d, { ...pipe, tailwater: -1 })).toThrow('value.negative at tailwater');
    expect(() => pipeHead(flow, d, { ...pipe, slope: 0 })).toThrow('value.notPositive at slope');
    expect(() => pipeHead(flow, d, pipe, -1)).toThrow('value.negative at entranceLoss');
  });
});

describe('outlet in channels of any shape', () => {
  it('has the head of the ruling control as its energy, in a ditch as in a box', () => {
    for (const shape of [{ kind: 'trapezoidal', width: 0.1, sideSlope: 0.5 }, { kind: 'roundBottom', width: 0.1 }] as const) {
      const answer = outletDepth(0.0065, shape, 0.1, null);
      expectNear(specificEnergy(shape, 0.0065, answer.depth), answer.head, 1e-9);
      expect(answer.head).toBe(entranceHead(0.0065, 0.1));
      expect(answer.control).toBe('entrance');
    }
    expect(outletDepth(0.004, 0.1, 0.1, null)).toEqual(outletDepth(0.004, { kind: 'rectangular', width: 0.1 }, 0.1, null));
    const free = outletDepth(0.004, { kind: 'roundBottom', width: 0.08 }, 0.4, null);
    expect([free.control, free.depth]).toEqual(['critical', criticalDepthIn({ kind: 'roundBottom', width: 0.08 }, 0.004)]);
    expectNear(free.head, specificEnergy({ kind: 'roundBottom', width: 0.08 }, 0.004, free.depth), 1e-12);
  });

  it('turns from weir to entrance at 1.2 diameters of head', () => {
    const heads = [0.0045, 0.005, 0.0054, 0.0056, 0.0058, 0.0062].map((flow) => outletDepth(flow, 0.2, 0.1, null));
    for (const { head, control } of heads) expect(control).toBe(head < 0.12 ? 'weir' : 'entrance');
    expect(new Set(heads.map(({ control }) => control)).size).toBe(2);
  });

  it('a groove end needs less than a square edge', () => {
    expect(outletDepth(0.006, 0.1, 0.1, null, 0.006, ENTRANCES.grooveEnd).head).toBeLessThan(outletDepth(0.006, 0.1, 0.1, null).head);
    expect(() => outletDepth(0.006, 0, 0.1, null)).toThrow('value.notPositive at width');
    expect(() => outletDepth(-1, 0.1, 0.1, null)).toThrow('value.negative at flow');
    expect(() => outletDepth(0.006, 0.1, 0, null)).toThrow('value.notPositive at diameter');
    expect(() => outletDepth(0, 0.1, 0.1, null, -1)).toThrow('value.negative at approachFlow');
  });

  it('under a pond it draws the flow whose head the pond gives', () => {
    const pipe = { length: 30, slope: 0.002, roughness: 0.012, tailwater: 0.05 };
    for (const head of [0.03, 0.1, 0.25, 0.6]) {
      expectRatio(entranceHead(outletCapacity(head, 0.1, null), 0.1), head, 1e-9);
      const ruled = outletCapacity(head, 0.1, pipe);
      expectRatio(Math.max(entranceHead(ruled, 0.1, 0.002), pipeHead(ruled, 0.1, pipe)), head, 1e-9);
      expect(ruled).toBeLessThan(outletCapacity(head, 0.1, null));
    }
    expect(outletCapacity(0, 0.1, null)).toBe(0);
    expect(outletCapacity(0.2, 0.1, { ...pipe, tailwater: 0.5 })).toBe(0);
    expect(() => outletCapacity(-1, 0.1, null)).toThrow('value.negative at head');
    expect(() => outletCapacity(1, 0, null)).toThrow('value.notPositive at diameter');
  });
});
