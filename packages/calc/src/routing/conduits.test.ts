import { describe, expect, it } from 'vitest';
import type { CatchBasin, Channel, Part, Pipe } from '../document/document.ts';
import { conduitOf as conduit } from '../testing/prisms.ts';
import { demoSite } from '../testing/sites.ts';
import { conduitFlowAt } from './conduitFlow.ts';
import { FlowAt } from './flowAt.ts';
import { bendLoss, conduitOf, entranceLoss, exitLoss, linkOf, pathResistance, pipeResistance } from './linkOf.ts';
import type { Conduit } from './model.ts';

const g = 9.80665;
const site = demoSite('tern-hollow');
const partOf = <K extends Part['kind']>(kind: K): Extract<Part, { readonly kind: K }> => site.system.parts.find((part) => part.kind === kind) as Extract<Part, { readonly kind: K }>;
const pipe: Pipe = { ...partOf('pipe'), diameter: 0.1, roughness: 0.01, length: 20, bends90: 0, bends45: 0, longSweep: false };
const area = Math.PI * 0.0025;
const open = { to: null, returns: null, standing: -Infinity };

describe('head that a full path loses', () => {
  it('is Manning friction of its pipe', () => {
    // hf = n2 L Q2 / (A2 R^(4/3)), R = D/4.
    expect(pipeResistance(pipe)).toBeCloseTo((1e-4 * 20) / (area * area * 0.025 ** (4 / 3)), 3);
  });
  it('and of its bends, in velocity heads', () => {
    expect([bendLoss.long90, bendLoss.hard90, bendLoss.bend45, entranceLoss, exitLoss]).toEqual([0.3, 0.9, 0.2, 0.5, 1]);
    const head = 1 / (2 * g * area * area);
    const plain = pipeResistance(pipe);
    expect(pipeResistance({ ...pipe, bends90: 2 }) - plain).toBeCloseTo(1.8 * head, 6);
    expect(pipeResistance({ ...pipe, bends90: 2, longSweep: true }) - plain).toBeCloseTo(0.6 * head, 6);
    expect(pipeResistance({ ...pipe, bends45: 3 }) - plain).toBeCloseTo(0.6 * head, 6);
  });
  it('and where it enters the first and comes to rest behind the last', () => {
    const wide = { ...pipe, diameter: 0.2 };
    const head = (diameter: number): number => 1 / (2 * g * (Math.PI * diameter * diameter * 0.25) ** 2);
    expect(pathResistance([pipe, wide], 9)).toBeCloseTo(0.5 * head(0.1) + pipeResistance(pipe) + pipeResistance(wide) + head(0.2), 5);
    expect(pathResistance([partOf('basin')], 0.2)).toBeCloseTo(1.5 * head(0.2), 6);
  });
});

describe('an inlet as a way for water', () => {
  // Sag grate of FHWA HEC-22, US 3.0 as a weir; 0.67 as an orifice.
  const weir = 3 * Math.sqrt(0.3048);
  const channel: Channel = {
    ...partOf('channel'), id: 'CH1', length: 4, width: 0.1, depth: 0.2, grateLevel: 31, invertDown: 30.6, outletDiameter: 0.08,
    grate: { ...partOf('channel').grate, openAreaRatio: 0.5, clogging: 0.8 },
  };
  const box: CatchBasin = {
    kind: 'catchBasin', id: 'CB1', name: 'Box', drainsTo: 'P1', lowSpot: 'L1', grateLevel: 31, gratePerimeter: 1.2, grateOpenArea: 0.05, clogging: 0.5, invertOut: 30.5, sumpDepth: 0.1,
  };
  const down = { ...pipe, invertDown: 30 };

  it('takes water over the edge and through the holes of its grate, clogging counted', () => {
    const link = linkOf(site, channel, [channel, down], 0, open);
    expect(link).toMatchObject({ id: 'CH1', pond: 0, basin: -1, to: null, returns: null, grateLevel: 31 });
    expect(link.grateWeir).toBeCloseTo(0.8 * weir * 8.2, 9);
    expect(link.grateOrifice).toBeCloseTo(0.8 * 0.67 * 0.4 * 0.5 * Math.sqrt(2 * g), 9);
    const grate = linkOf(site, box, [box, down], 0, open);
    expect(grate.grateWeir).toBeCloseTo(0.5 * weir * 1.2, 9);
    expect(grate.grateOrifice).toBeCloseTo(0.5 * 0.67 * 0.05 * Math.sqrt(2 * g), 9);
  });
  it('goes on through its mouth, an orifice of 0.62 about its middle', () => {
    const link = linkOf(site, channel, [channel, down], 0, open);
    expect(link.mouthLevel).toBeCloseTo(30.64, 12);
    expect(link.mouthOrifice).toBeCloseTo(0.62 * Math.PI * 0.0016 * Math.sqrt(2 * g), 12);
    expect(link.resistance).toBe(pathResistance([down], 0.08));
    // The mouth of a box is its pipe.
    const grate = linkOf(site, box, [box, down], 0, open);
    expect(grate.mouthLevel).toBeCloseTo(30.55, 12);
    expect(grate.mouthOrifice).toBeCloseTo(0.62 * area * Math.sqrt(2 * g), 12);
  });
  it('ends at the crown of its last pipe, or at the water that stands there', () => {
    expect(linkOf(site, channel, [channel, down, { ...down, diameter: 0.2 }], 0, open).freeLevel).toBeCloseTo(30.2, 12);
    expect(linkOf(site, channel, [channel, down], 0, { ...open, standing: 30.4 }).freeLevel).toBe(30.4);
    expect(linkOf(site, channel, [channel, down], 0, { ...open, standing: 29 }).freeLevel).toBeCloseTo(30.1, 12);
  });
  it('falls free from a channel without a pipe: from its mouth, or from half of its depth where it is open', () => {
    const mouth = linkOf(site, channel, [channel], 0, open);
    expect([mouth.freeLevel, mouth.resistance]).toEqual([expect.closeTo(30.68, 12), expect.closeTo(pathResistance([], 0.08), 6)]);
    const end = linkOf(site, { ...channel, outletDiameter: null }, [channel], 0, open);
    expect([end.freeLevel, end.mouthOrifice, end.mouthLevel]).toEqual([expect.closeTo(30.7, 12), null, 30.6]);
    expect(end.resistance).toBeCloseTo(pathResistance([], 0.1), 6);
  });
  it('of a box that drains through nothing but parts without bore ends at its own invert', () => {
    const bare = linkOf(site, box, [box], 0, open);
    expect([bare.freeLevel, bare.mouthOrifice, bare.mouthLevel]).toEqual([30.5, null, 30.5]);
  });
  it('is the grate alone where the box is a store of its own', () => {
    const end = { to: { kind: 'junction', index: 3 } as const, returns: null, standing: -Infinity };
    const grate = linkOf(site, box, [], 0, end);
    expect(grate).toMatchObject({ to: end.to, basin: -1, mouthLevel: 30.5, mouthOrifice: null, freeLevel: 30.5 });
    expect(grate.resistance).toBeCloseTo(1 / grate.grateOrifice ** 2, 6);
    // Wholly clogged it is as good as shut: a bore of 10 mm.
    expect(linkOf(site, { ...box, clogging: 0 }, [], 0, end).resistance).toBeCloseTo(1 / (2 * g * (Math.PI * 0.000025) ** 2), 0);
  });
  it('knows the basin at its end, and what comes back of an open end', () => {
    const returns = { pond: 0, share: 0.2 };
    expect(linkOf(site, box, [box], 0, { to: { kind: 'basin', index: 2 }, returns, standing: 0 })).toMatchObject({ basin: 2, to: { kind: 'basin', index: 2 }, returns });
    expect(linkOf(site, box, [box], 0, { to: { kind: 'well', index: 2 }, returns: null, standing: 0 }).basin).toBe(-1);
  });
  it('begins no lower than 5 cm under the ground of its low spot', () => {
    const lowest = site.site.lowSpots[0]!.stageArea[0]!.level;
    expect(linkOf(site, { ...box, grateLevel: lowest - 0.2 }, [box], 0, open).grateLevel).toBeCloseTo(lowest - 0.05, 12);
    expect(linkOf(site, { ...box, grateLevel: lowest - 0.02 }, [box], 0, open).grateLevel).toBe(lowest - 0.02);
  });
});

describe('the pipes from a junction on', () => {
  it('are one conduit from the floor of the junction to the last invert', () => {
    const first = { ...pipe, diameter: 0.15 };
    const last = { ...pipe, diameter: 0.2, invertDown: 28 };
    const made = conduitOf({ ...partOf('basin'), id: 'J7' }, 3, [partOf('channel'), first, last], 29.5, { to: { kind: 'well', index: 1 }, returns: { pond: 0, share: 1 }, standing: 27 });
    expect(made).toEqual({
      id: 'J7', junction: 3, entrance: 'joint', to: { kind: 'well', index: 1 }, returns: { pond: 0, share: 1 }, diameterUp: 0.15, invertUp: 29.5, diameterDown: 0.2, invertDown: 28,
      resistance: pathResistance([first, last], 0.1), standing: 27,
    });
  });
  it('of a box begin with a mouth; without a pipe they are an opening of 100 mm', () => {
    const box = { kind: 'catchBasin', id: 'CB1' } as Part;
    expect(conduitOf(box, 0, [], 29.5, open)).toMatchObject({ entrance: 'box', diameterUp: 0.1, diameterDown: 0.1, invertDown: 29.5, resistance: pathResistance([], 0.1) });
  });
});

/** Flow at critical depth in a circle for an energy over its invert, by bisection: E = y + A/2T, Q = A sqrt(g A/T), Chow 1959 chapter 4. */
function criticalFlow(diameter: number, energy: number): number {
  let [low, high, flow] = [0, diameter, 0];
  for (let i = 0; i < 60; i += 1) {
    const depth = (low + high) / 2;
    const theta = 2 * Math.acos(1 - (2 * depth) / diameter);
    const section = (diameter * diameter * (theta - Math.sin(theta))) / 8;
    const width = diameter * Math.sin(theta / 2);
    flow = section * Math.sqrt((g * section) / width);
    if (depth + section / (2 * width) < energy) low = depth;
    else high = depth;
  }
  return flow;
}

describe('flow from a junction through its pipe', () => {
  // Invert 0, falling 0.5 m over its length; 1 m of head drives 0.01 m3/s through it full, so its friction is far more than its entrance.
  const made = (fields: Partial<Conduit> = {}): Conduit => conduit({ diameterUp: 0.2, invertUp: 0, diameterDown: 0.2, invertDown: -0.5, resistance: 1e4, ...fields });
  const flow = (item: Conduit, from: number, to = 0): number => {
    const out = new FlowAt();
    out.set(9, 9, 9);
    conduitFlowAt(item, from, to, out);
    return out.flow;
  };
  const smooth = made({ resistance: 1e-6 });

  it('is what friction lets through a full pipe', () => {
    expect(flow(made(), 0.5)).toBeCloseTo(0.01 * Math.sqrt(0.5 + 0.3), 9);
    // The surface at the end is as deep as that at the head, up to the crown.
    expect(flow(made({ invertDown: -3 }), 0.25)).toBeCloseTo(0.01 * Math.sqrt(0.25 + 2.8), 9);
    expect(flow(made(), 0.25)).toBeCloseTo(0.01 * Math.sqrt(0.25 + 0.3), 9);
  });
  it('is a share of it part full: half the conveyance at half depth, 0.195 at 0.3, 0.837 at 0.7', () => {
    // Hydraulic elements of the circle, Chow 1959 figure 6-5 and table 2-1: A R^(2/3) over that of the full circle.
    [[0.5, 0.5], [0.3, 0.1958], [0.7, 0.8372]].forEach(([ratio, share]) => {
      const depth = 0.2 * ratio!;
      expect(Math.abs(flow(made(), depth) / (0.01 * Math.sqrt(0.5)) - share!)).toBeLessThan(1e-3);
    });
    // A trickle of 3 mm: theta = 2 acos(1 - 2/64), A R^(2/3) over pi/4 (1/4)^(2/3).
    const theta = 2 * Math.acos(1 - 2 / 64);
    const trickle = ((theta - Math.sin(theta)) / 8 / (Math.PI / 4)) * (1 - Math.sin(theta) / theta) ** (2 / 3);
    expect(flow(made(), 0.2 / 64)).toBeCloseTo(trickle * 0.01 * Math.sqrt(0.5), 9);
  });
  it('never falls on the way from its fullest flow, at 0.94 of the depth, to the crown', () => {
    for (let k = 0; k < 40; k += 1) expect(flow(made(), 0.18 + k * 0.001)).toBeGreaterThanOrEqual(flow(made(), 0.179 + k * 0.001));
    expect(flow(made(), 0.2 * 0.94)).toBeCloseTo(0.01 * Math.sqrt(0.5), 9);
  });
  it('enters at critical depth while its mouth is not drowned', () => {
    [0.2 * (1.5 / 64), 0.05, 0.1, 0.1713, 0.22, 0.3].forEach((energy) => { expect(Math.abs(flow(smooth, energy) / criticalFlow(0.2, energy) - 1)).toBeLessThan(2e-3); });
    expect(flow(made({ resistance: 1e-6, entrance: 'box' }), 0.15)).toBe(flow(smooth, 0.15));
  });
  it('enters a box as through an orifice of 0.62 from a drowned mouth on', () => {
    const drowned = (head: number): number => 0.62 * Math.PI * 0.01 * Math.sqrt(2 * g * head);
    const box = made({ resistance: 1e-6, entrance: 'box' });
    expect(Math.abs(flow(box, 0.29) / drowned(0.19) - 1)).toBeLessThan(1e-3);
    expect(Math.abs(flow(box, 0.3) / drowned(0.2) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(flow(box, 0.9) / drowned(0.8) - 1)).toBeLessThan(1e-9);
    // Just over the crown the drowned mouth takes less than critical depth would; the flow never falls as the water rises.
    for (let k = 0; k < 60; k += 1) expect(flow(box, 0.005 * k + 0.005)).toBeGreaterThanOrEqual(flow(box, 0.005 * k));
    // Pipes that meet have no mouth: their flow goes on with the root of the head over the middle.
    expect(flow(smooth, 0.9)).toBeCloseTo(2 * flow(smooth, 0.3), 9);
  });
  it('falls as a store stands up behind it; at an outlet the water that stands there counts', () => {
    const into = made({ to: { kind: 'basin', index: 0 } });
    expect(flow(into, 0.5, 0.1)).toBeCloseTo(0.01 * Math.sqrt(0.4), 12);
    expect(flow(into, 0.5, -9)).toBeCloseTo(0.01 * Math.sqrt(0.8), 12);
    expect(flow(into, 0.5, 0.5)).toBe(0);
    expect(flow(made({ standing: 0.1 }), 0.5, 0.4)).toBeCloseTo(0.01 * Math.sqrt(0.4), 12);
    expect(flow(made({ standing: 0.6 }), 0.5, 0)).toBe(0);
  });
  it('runs back from a store that stands over both of its ends, by what the far end is filled to', () => {
    const into = made({ to: { kind: 'basin', index: 0 } });
    expect(flow(into, 0.1, 0.5)).toBeCloseTo(-0.01 * Math.sqrt(0.4), 12);
    expect(flow(into, -1, 0.5)).toBeCloseTo(-0.01 * Math.sqrt(0.5), 12);
    expect([flow(into, -1, -0.1), flow(into, -1, 0), flow(into, 0, 0)]).toEqual([0, 0, 0]);
    // An adverse pipe, half full at its far end.
    const adverse = made({ to: { kind: 'basin', index: 0 }, invertDown: 0.3 });
    expect(flow(adverse, 0.2, 0.4)).toBeCloseTo(-0.5 * 0.01 * Math.sqrt(0.2), 5);
    expect([flow(adverse, 0.2, 0.3), flow(adverse, 0.2, 0.25), flow(adverse, 0, -1)]).toEqual([0, 0, 0]);
    expect(flow(made({ invertDown: 0.3 }), 0.2)).toBe(0);
  });
  it('answers to both levels as its slopes say', () => {
    const into = made({ to: { kind: 'basin', index: 0 } });
    const smoothInto = made({ to: { kind: 'basin', index: 0 }, resistance: 1e-6 });
    const box = made({ resistance: 1e-6, entrance: 'box' });
    const asked: readonly (readonly [Conduit, number, number])[] = [
      [made(), 0.5, 0], [made(), 0.0711, 0], [made(), 0.19, 0], [smooth, 0.1513, 0], [smooth, 0.7, 0], [box, 0.2913, 0], [box, 0.7, 0], [into, 0.5, 0.1], [into, 0.0911, 0.02], [into, 0.1, 0.5],
      [into, -1, 0.5], [into, 0.5, 0.49995], [into, 0.3, 0.30004], [smoothInto, 0.5, 0.4999], [made({ to: { kind: 'basin', index: 0 }, invertDown: 0.3 }), 0.2, 0.3911], [into, -1, -0.1],
    ];
    const [at, more, less] = [new FlowAt(), new FlowAt(), new FlowAt()];
    for (const [item, from, to] of asked) {
      conduitFlowAt(item, from, to, at);
      conduitFlowAt(item, from + 1e-7, to, more);
      conduitFlowAt(item, from - 1e-7, to, less);
      const byFrom = (more.flow - less.flow) / 2e-7;
      conduitFlowAt(item, from, to + 1e-7, more);
      conduitFlowAt(item, from, to - 1e-7, less);
      const byTo = (more.flow - less.flow) / 2e-7;
      expect(Math.abs(at.from - byFrom), `${from}, ${to}`).toBeLessThanOrEqual(1e-5 * Math.max(1e-4, Math.abs(byFrom)));
      expect(Math.abs(at.to - byTo), `${from}, ${to}`).toBeLessThanOrEqual(1e-5 * Math.max(1e-4, Math.abs(byTo)));
    }
  });
  it('stands at a level of its own, wherever that is counted from', () => {
    const raised = made({ invertUp: 30, invertDown: 29.5 });
    expect(flow(raised, 30.5)).toBeCloseTo(flow(made(), 0.5), 9);
    expect(flow(raised, 29.9)).toBe(0);
    // A film that is thinner than nothing runs nowhere.
    expect([flow(made(), 0), flow(made(), -0.1), flow(made(), -0.6)]).toEqual([0, 0, 0]);
  });
  it('may be told the conveyance of its pipe', () => {
    const out = new FlowAt();
    conduitFlowAt(made(), 0.5, 0, out, 0.02);
    expect(out.flow).toBeCloseTo(0.02 * Math.sqrt(0.8), 9);
  });
});
