import { describe, expect, it } from 'vitest';
import { dryWell, linkOf } from '../testing/prisms.ts';
import { FlowAt, chordHead, rootHead, rootSlope } from './flowAt.ts';
import { linkFlow, linkFlowAt } from './linkFlow.ts';
import type { Link } from './model.ts';
import { spillFlow } from './pondStorage.ts';
import { seepageAt } from './seepage.ts';
import { weirFlowAt } from './weirFlow.ts';

type Way = (from: number, to: number, out: FlowAt) => void;

/** Written in place over what was there. */
function flow(way: Way, from: number, to: number): number {
  const at = new FlowAt();
  at.set(9, 9, 9);
  way(from, to, at);
  return at.flow;
}

/** Slopes of a flow beside differences of the flow itself: what is said to answer to a level does. */
function expectSlopes(way: Way, from: number, to: number, reach = 1e-7): void {
  const at = new FlowAt();
  at.set(9, 9, 9);
  way(from, to, at);
  const byFrom = (flow(way, from + reach, to) - flow(way, from - reach, to)) / (2 * reach);
  const byTo = to === -Infinity ? 0 : (flow(way, from, to + reach) - flow(way, from, to - reach)) / (2 * reach);
  expect(Math.abs(at.from - byFrom)).toBeLessThanOrEqual(1e-5 * Math.max(1e-3, Math.abs(byFrom)));
  expect(Math.abs(at.to - byTo)).toBeLessThanOrEqual(1e-5 * Math.max(1e-3, Math.abs(byTo)));
}

describe('the root of a head', () => {
  it('is nothing before it is asked for', () => {
    expect(new FlowAt()).toMatchObject({ flow: 0, from: 0, to: 0 });
  });
  it('is the square root both ways, and straight within a tenth of a millimetre', () => {
    expect(chordHead).toBe(1e-4);
    expect([4, -4, 1e-4, -1e-4, 0].map(rootHead)).toEqual([2, -2, 0.01, -0.01, 0]);
    expect(rootHead(5e-5)).toBeCloseTo(0.005, 15);
    expect(rootHead(-5e-5)).toBeCloseTo(-0.005, 15);
  });
  it('is as steep as its derivative, and as its chord near rest', () => {
    expect([rootSlope(4, 2), rootSlope(-4, -2)]).toEqual([0.25, 0.25]);
    expect([rootSlope(1e-4, 0.01), rootSlope(-1e-4, -0.01)]).toEqual([50, 50]);
    [0, 5e-5, -5e-5].forEach((head) => { expect(rootSlope(head, rootHead(head))).toBeCloseTo(100, 9); });
  });
});

describe('flow over a crest', () => {
  // Coefficient 2, crest at 1 m.
  const crest: Way = (from, to, out) => { weirFlowAt(2, 1, from, to, out); };

  it('is free while the water behind it is under two thirds of that before it', () => {
    expect(flow(crest, 1.25, 0)).toBe(2 * 0.125);
    expect(flow(crest, 1.25, -Infinity)).toBe(0.25);
    expect(flow(crest, 1.25, 1.16)).toBe(0.25);
    expect([flow(crest, 1, 0), flow(crest, 0.9, 0.95), flow(crest, 1, 1)]).toEqual([0, 0, 0]);
  });
  it('is drowned beyond, by the root of the difference', () => {
    // sqrt(27)/2 * 2 * 0.2 * sqrt(0.05), the free form met at two thirds.
    expect(flow(crest, 1.25, 1.2)).toBeCloseTo(Math.sqrt(27) * 0.2 * Math.sqrt(0.05), 12);
    expect(flow(crest, 1.3, 1 + 0.3 * (2 / 3) + 1e-9)).toBeCloseTo(2 * 0.3 * Math.sqrt(0.3), 6);
    expect(flow(crest, 1.25, 1.25)).toBe(0);
  });
  it('runs back in the same way when the other side stands higher', () => {
    expect(flow(crest, 0, 1.25)).toBe(-0.25);
    expect(flow(crest, 1.2, 1.25)).toBeCloseTo(-flow(crest, 1.25, 1.2), 15);
  });
  it('answers to both levels as its slopes say', () => {
    ([[0.9, 0.8], [1.25, 0], [1.25, 1.1], [1.25, 1.24], [1.25, 1.24995], [1.24995, 1.25], [1.00009, 1.00008], [1.24, 1.25], [0, 1.25], [1.1, 1.25]] as const).forEach(([from, to]) => { expectSlopes(crest, from, to, 1e-8); });
  });
  it('never rises with the level behind it, however little falls over it', () => {
    const at = new FlowAt();
    for (const up of [0.00012, 0.003, 0.25]) {
      for (let k = 1; k <= 50; k += 1) {
        crest(1 + up, 1 + (up * k) / 50, at);
        expect(at.to).toBeLessThanOrEqual(0);
      }
    }
  });
});

describe('spill over a rim', () => {
  it('is a weir of 3.0 in feet and seconds', () => {
    // Q = 3.0 L h^1.5 in US units: a rim of 10 ft under 1 ft gives 30 cfs. 1 ft = 0.3048 m.
    expect(spillFlow(5.3048, 5, 3.048)).toBeCloseTo(30 * 0.3048 ** 3, 9);
    expect([spillFlow(5, 5, 3), spillFlow(4, 5, 3)]).toEqual([0, 0]);
  });
});

describe('seepage of a dry well', () => {
  // 1e-5 m/s through 10 m2 of base and 14 m of edge, stone from -2 to -1 m.
  const soaks: Way = (from, _, out) => { seepageAt(dryWell(), from, out); };

  it('grows with the wetted sides up to the top of the stone', () => {
    expect([-1.5, -1, 0, -2, -3].map((level) => flow(soaks, level, 0))).toEqual([1.7e-4, 2.4e-4, 2.4e-4, 1e-4, 1e-4].map((value) => expect.closeTo(value, 15)));
  });
  it('answers to its level only between base and top', () => {
    const slopes = [-3, -2, -1.5, -1, 0].map((level) => {
      const at = new FlowAt();
      soaks(level, 0, at);
      return [at.from, at.to];
    });
    expect(slopes).toEqual([[0, 0], [0, 0], [expect.closeTo(1.4e-4, 15), 0], [0, 0], [0, 0]]);
  });
});

describe('flow into an inlet', () => {
  // Worked by hand, with round coefficients: grate flush with 0 m, weir 2, orifice 0.3; mouth 0.4 m down with 0.1; 1 m lost at 0.1 m3/s; free end 0.8 m down.
  const inlet = linkOf({ grateWeir: 2, grateOrifice: 0.3, mouthLevel: -0.4, mouthOrifice: 0.1, resistance: 100, freeLevel: -0.8 });
  const way = (link: Link): Way => (from, to, out) => { linkFlowAt(link, from, to, out); };

  it('is that of the grate as a weir under little water', () => {
    expect(linkFlow(inlet, 0.01, -Infinity)).toBeCloseTo(0.002, 12);
    expect([linkFlow(inlet, 0, -Infinity), linkFlow(inlet, -0.1, -Infinity)]).toEqual([0, 0]);
  });
  it('is that of the grate as an orifice where that is less, h over 0.15', () => {
    const open = { ...inlet, mouthOrifice: null, resistance: 0.01 };
    expect(linkFlow(open, 0.16, -Infinity)).toBeCloseTo(0.12, 12);
    expect(linkFlow(open, 0.09, -Infinity)).toBeCloseTo(2 * 0.027, 12);
  });
  it('is that of the mouth or of the full pipe where those are less', () => {
    // Mouth: 0.1 sqrt(0.41 + 0.4); pipe: sqrt(0.41 + 0.8)/10; the grate would take 0.19.
    expect(linkFlow(inlet, 0.41, -Infinity)).toBeCloseTo(0.09, 12);
    expect(linkFlow({ ...inlet, mouthOrifice: 1 }, 0.41, -Infinity)).toBeCloseTo(0.11, 12);
    expect(linkFlow({ ...inlet, mouthOrifice: null }, 0.41, -Infinity)).toBeCloseTo(0.11, 12);
  });
  it('takes nothing by a mouth above the water', () => {
    expect(linkFlow({ ...inlet, mouthLevel: 0.5 }, 0.41, -Infinity)).toBe(0);
    expect(linkFlow({ ...inlet, mouthLevel: 0.41 }, 0.41, -Infinity)).toBe(0);
  });
  it('falls as a store stands up behind it, and runs back when that stands higher', () => {
    const open = { ...inlet, mouthOrifice: null };
    expect(linkFlow(open, 0.41, 0.05)).toBeCloseTo(0.06, 12);
    // The same yard, its levels counted from 30 m further down.
    const raised = { ...open, grateLevel: 30, mouthLevel: 29.6, freeLevel: 29.2 };
    [0.01, 0.41].forEach((level) => { expect(linkFlow(raised, 30 + level, -Infinity)).toBeCloseTo(linkFlow(open, level, -Infinity), 9); });
    expect(linkFlow(open, 0.41, -0.9)).toBeCloseTo(0.11, 12);
    expect(linkFlow(open, 0.41, 0.41)).toBe(0);
    expect(linkFlow(open, 0.16, 0.41)).toBeCloseTo(-0.05, 12);
    // From under the grate: the height over the grate drives it, not that over the water.
    expect(linkFlow(open, -0.3, 0.25)).toBeCloseTo(-0.05, 12);
    expect(linkFlow(open, -0.3, -0.1)).toBe(0);
  });
  it('gives nothing back over the free end of a pipe that rises, and back from a store only over that end', () => {
    const adverse = { ...inlet, freeLevel: 0.3 };
    expect([linkFlow(adverse, 0.2, -Infinity), linkFlow(adverse, 0.3, -Infinity), linkFlow(adverse, 0.2, 0.3)]).toEqual([0, 0, 0]);
    expect(linkFlow(adverse, 0.2, 0.34)).toBeCloseTo(-0.02, 12);
  });
  it('answers to both levels as its slopes say', () => {
    const open = { ...inlet, mouthOrifice: null };
    expectSlopes(way(inlet), 0.01, -Infinity);
    expectSlopes(way({ ...open, resistance: 0.01 }), 0.16, -Infinity);
    expectSlopes(way(inlet), 0.41, -Infinity);
    expectSlopes(way(open), 0.41, -Infinity);
    expectSlopes(way(open), 0.41, 0.05);
    expectSlopes(way(open), 0.16, 0.41);
    expectSlopes(way(open), -0.3, 0.25);
    expectSlopes(way({ ...open, freeLevel: 0.3 }), 0.2, 0.34);
    expectSlopes(way({ ...open, freeLevel: 0.3 }), 0.35, 0.5);
    expectSlopes(way({ ...inlet, mouthLevel: 0.5 }), 0.41, -Infinity);
    expectSlopes(way(inlet), -0.3, -Infinity);
    expectSlopes(way({ ...inlet, freeLevel: 0.3 }), 0.2, -Infinity);
  });
  it('may be told the conveyance of its path', () => {
    const at = new FlowAt();
    linkFlowAt({ ...inlet, mouthOrifice: null }, 0.41, -Infinity, at, 0.05);
    expect(at.flow).toBeCloseTo(0.055, 12);
  });
});
