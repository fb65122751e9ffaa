/* oxlint-disable max-lines -- the examples of one file of the router, small and many, stand together */
import { describe, expect, it } from 'vitest';
import { DAY } from '../common/constants.ts';
import type { Catchment, DesignDocument, Underdrain } from '../document/document.ts';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import { scsFraction } from '../rain/scsDistribution.ts';
import { curveNumberExcess } from '../runoff/curveNumber.ts';
import { greenAmptExcess } from '../runoff/greenAmpt.ts';
import { hortonExcess } from '../runoff/horton.ts';
import { kinematicPlane } from '../runoff/kinematicPlane.ts';
import { shallowFlowVelocity } from '../runoff/shallowFlow.ts';
import { sheetFlowTime } from '../runoff/sheetFlow.ts';
import { unitHydrographStorm } from '../runoff/unitHydrograph.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import { catchmentRunoff, rainExcess, type RainGrid } from './catchmentRunoff.ts';
import { groundWaterOf, underdrainFlow, underdrainInflow } from './groundWater.ts';
import { buildInflow, gutterCapacity, gutterLeaderCapacity, inflowTargets, routesOf, stormInflow, storeBelow, type Route } from './inflow.ts';
import { designBlocks, recordedRunoff, routingStep, runoffOfBlocks, stormRunoff, type StormRunoff } from './storm.ts';

const site = demoSite('tern-hollow');
const [patio] = site.site.catchments as [Catchment];
const mm = (depth: number, seconds: number): number => depth / 1000 / seconds;
const close = (values: readonly number[], digits = 12): number[] => values.map((value) => expect.closeTo(value, digits) as number);

describe('the rain of a storm', () => {
  it('is nested from the table, with its allowance for a warmer climate', () => {
    const warmer = changed(site, (copy) => { copy.rain.allowance = 0.1; });
    expect(designBlocks(site, 25)).toEqual(alternatingBlock(site.rain.table, 25, DAY, 300, 0));
    expect(designBlocks(warmer, 25)).toEqual(alternatingBlock(site.rain.table, 25, DAY, 300, 0.1));
  });
  it.each([['nrcsI', 'I'], ['nrcsIA', 'IA'], ['nrcsII', 'II'], ['nrcsIII', 'III']] as const)('is a day of %s', (method, type) => {
    const document = changed(site, (copy) => {
      copy.rain.allowance = 0.2;
      copy.rain.storm = { method, duration: DAY, block: 600 };
    });
    const blocks = designBlocks(document, 25);
    // 208.28 mm in a day of 25 years, and a fifth more.
    expect(blocks).toHaveLength(144);
    expect(blocks.reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(208.28 * 1.2, 9);
    // Up to noon and a bit.
    expect(blocks.slice(0, 73).reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(208.28 * 1.2 * scsFraction(type, 73 * 600), 9);
    expect(blocks[72]).toBeCloseTo(208.28 * 1.2 * (scsFraction(type, 73 * 600) - scsFraction(type, 72 * 600)), 9);
  });
  it('of blocks that do not divide a day ends with the day', () => {
    const document = changed(site, (copy) => { copy.rain.storm = { method: 'nrcsII', duration: DAY, block: 7000 }; });
    const blocks = designBlocks(document, 2);
    expect(blocks).toHaveLength(12);
    expect(blocks[11]).toBeCloseTo(96.52 * (scsFraction('II', 84_000) - scsFraction('II', 77_000)), 9);
    const longer = changed(site, (copy) => { copy.rain.storm = { method: 'nrcsII', duration: DAY, block: 9000 }; });
    expect(designBlocks(longer, 2)).toHaveLength(10);
    expect(designBlocks(longer, 2)[9]).toBeCloseTo(96.52 * (1 - scsFraction('II', 81_000)), 9);
  });
  it('stays averaged over its blocks on a grid of minutes', () => {
    const storm = runoffOfBlocks(site, 7, [3, 6], 180);
    expect([storm.returnPeriod, storm.step, storm.steps, routingStep]).toEqual([7, 60, 6, 60]);
    expect([...storm.intensity]).toEqual(close([3, 3, 3, 6, 6, 6].map((depth) => mm(depth, 180))));
    expect(storm.runoff).toHaveLength(4);
    expect(runoffOfBlocks(site, 7, [3], 20)).toMatchObject({ step: 20, steps: 1 });
    // Blocks of 100 s are two steps of 50 s, of 80 s one.
    expect([runoffOfBlocks(site, 7, [3], 100).step, runoffOfBlocks(site, 7, [3], 80).step]).toEqual([50, 80]);
  });
  it('of a long record has no more than 50,000 steps', () => {
    const bare = changed(site, (copy) => { copy.site.catchments = []; });
    expect(runoffOfBlocks(bare, 0, Array<number>(9_000).fill(0), 3600)).toMatchObject({ step: 720, steps: 45_000 });
    expect(runoffOfBlocks(bare, 0, Array<number>(60_000).fill(0), 3600)).toMatchObject({ step: 3600, steps: 60_000 });
  });
  it('may be a recorded one', () => {
    expect(recordedRunoff(site)).toBeNull();
    const recorded = changed(site, (copy) => { copy.rain.recorded = { depths: [1, 2, 0], step: 300, name: 'gauge', note: '' } as never; });
    const storm = recordedRunoff(recorded)!;
    expect([storm.returnPeriod, storm.steps]).toEqual([0, 15]);
    expect(storm.intensity[7]).toBeCloseTo(mm(2, 300), 15);
    expect(stormRunoff(site, 25).intensity).toHaveLength(1440);
  });
  it('runs off alike from two halves of one roof, and by what each surface is', () => {
    const storm = stormRunoff(site, 25);
    expect(storm.runoff[1]).toBe(storm.runoff[2]);
    expect(storm.runoff[0]).not.toBe(storm.runoff[1]);
    const steeper = changed(site, (copy) => { copy.site.catchments[2]!.slope = 0.01; copy.site.catchments[1]!.area *= 2; });
    const other = stormRunoff(steeper, 25, { instantaneous: true });
    expect(other.runoff[1]).not.toBe(other.runoff[2]);
    expect(other.runoff[1]![720]).toBeCloseTo(2 * other.runoff[2]![720]!, 12);
  });
});

describe('rain that runs off', () => {
  // Blocks of 10 minutes; all methods are checked against published values where they stand.
  const grid: RainGrid = { blocks: [1, 5, 20, 3], block: 600, perBlock: 10 };
  const surface = (fields: Partial<Catchment>): Catchment => ({ ...patio, area: 100, coefficient: 0.8, depressionStorage: 2, ...fields });
  const rates = (depths: readonly number[]): number[] => close(depths.map((depth) => mm(depth, 600)));

  it('is what the coefficient leaves once hollows are filled', () => {
    expect(rainExcess(surface({}), grid, {})).toEqual(rates([0, 3.2, 16, 2.4]));
    expect(rainExcess(surface({}), grid, { instantaneous: true })).toEqual(rates([0.8, 4, 16, 2.4]));
    expect(rainExcess(surface({}), grid, { instantaneous: false })).toEqual(rates([0, 3.2, 16, 2.4]));
  });
  it('is what the soil does not take, hollows first and without any coefficient', () => {
    const wet = [0, 4, 20, 3];
    const intensities = wet.map((depth) => mm(depth, 600));
    expect(rainExcess(surface({ loss: { method: 'curveNumber', curveNumber: 85 } }), grid, {})).toEqual(rates(curveNumberExcess(wet, 85)));
    expect(rainExcess(surface({ loss: { method: 'greenAmpt', conductivity: 3e-6, suctionHead: 0.1, moistureDeficit: 0.3 } }), grid, {}))
      .toEqual(close(greenAmptExcess({ conductivity: 3e-6, suctionDeficit: 0.03 }, intensities, 600)));
    expect(rainExcess(surface({ loss: { method: 'horton', initial: 2e-5, final: 2e-6, decay: 1e-3 } }), grid, {}))
      .toEqual(close(hortonExcess({ initialRate: 2e-5, finalRate: 2e-6, decay: 1e-3 }, intensities, 600)));
  });
  it('comes at once from a surface that answers at once, from none, and where all is asked at once', () => {
    const flows = (fields: Partial<Catchment>, options = {}): number[] => [...catchmentRunoff(site, surface(fields), grid, options)];
    const excess = rainExcess(surface({}), grid, {});
    const atOnce = Array.from({ length: 40 }, (_, i) => excess[Math.floor(i / 10)]! * 100);
    expect(flows({ response: 'instantaneous', surface: 'lawn' })).toEqual(close(atOnce));
    expect(flows({ surface: 'lawn' }, { instantaneous: true })).toEqual(close(Array.from({ length: 40 }, (_, i) => mm([0.8, 4, 16, 2.4][Math.floor(i / 10)]!, 600) * 100)));
    expect(flows({ area: 0 })).toEqual(Array(40).fill(0));
    // A short steep roof answers within a minute; a lawn never does at once.
    expect(flows({ flowLength: 0.5, slope: 0.5 })).toEqual(close(atOnce));
    expect(flows({ flowLength: 0.5, slope: 0.5, surface: 'lawn' })).not.toEqual(close(atOnce));
  });
  it('moves over a plane as a kinematic wave on the grid of the routing', () => {
    const lawn = surface({ surface: 'lawn', flowLength: 20, slope: 0.02, roughness: 0.2 });
    const excess = rainExcess(lawn, grid, {});
    const { outflow } = kinematicPlane({ length: 20, slope: 0.02, roughness: 0.2 }, Array.from({ length: 40 }, (_, i) => excess[Math.floor(i / 10)]!), 60, 8);
    expect([...catchmentRunoff(site, lawn, grid, {})]).toEqual(close(Array.from(outflow).slice(0, 40).map((flow) => flow * 5)));
    // The first minute counts as well.
    const wet = surface({ surface: 'lawn', flowLength: 20, slope: 0.02, roughness: 0.2, depressionStorage: 0 });
    expect(catchmentRunoff(site, wet, grid, {})[0]).toBeGreaterThan(0);
    // Dry weather moves nothing.
    expect([...catchmentRunoff(site, lawn, { ...grid, blocks: [0, 0] }, {})]).toEqual(Array(20).fill(0));
    expect([...catchmentRunoff(site, surface({}), { ...grid, blocks: [0, 0] }, {})]).toEqual(Array(20).fill(0));
  });
});

describe('blocks and steps are whole', () => {
  it('to the nearest: of 10.47 blocks in a day ten, of 1.45 minutes one, and fifty thousand steps at most', () => {
    const odd = changed(site, (copy) => { copy.rain.storm = { method: 'nrcsII', duration: DAY, block: DAY / 10.47 }; });
    expect(designBlocks(odd, 25)).toHaveLength(10);
    expect(runoffOfBlocks(site, 0, [1], 87).step).toBe(87);
    // Three steps of 100 s in each block would be 50,001.
    const long = runoffOfBlocks(site, 0, Array<number>(16_667).fill(0), 300, { instantaneous: true });
    expect([long.steps, long.step]).toEqual([33_334, 150]);
  });
});

describe('runoff of a large surface by the unit hydrograph', () => {
  const grid: RainGrid = { blocks: [5, 30, 10, 0, 0, 0, 0, 0], block: 600, perBlock: 10 };
  const field = (fields: Partial<Catchment> = {}): Catchment =>
    ({ ...patio, surface: 'lawn', area: 5000, depressionStorage: 0, coefficient: 0.5, response: 'unitHydrograph', flowLength: 200, slope: 0.02, roughness: 0.24, ...fields });
  const expected = (catchment: Catchment, time: number, step = 60): number[] => {
    const excess = rainExcess(catchment, grid, {});
    const depths = Array.from({ length: 80 }, (_, i) => excess[Math.floor(i / 10)]! * step);
    return close(unitHydrographStorm({ area: catchment.area, timeOfConcentration: time, duration: step, shape: 'curvilinear' }, depths).slice(0, 80) as number[]);
  };

  it('concentrates by sheet flow over 300 ft and by shallow flow beyond: TR-55 with the 2-year day', () => {
    // 91.44 m of sheet flow under 96.52 mm, 108.56 m unpaved.
    const time = sheetFlowTime(0.24, 91.44, 96.52, 0.02) + 108.56 / shallowFlowVelocity('unpaved', 0.02);
    expect([...catchmentRunoff(site, field(), grid, {})]).toEqual(expected(field(), time));
    const paved = field({ surface: 'paving', roughness: 0.05 });
    expect([...catchmentRunoff(site, paved, grid, {})]).toEqual(expected(paved, sheetFlowTime(0.05, 91.44, 96.52, 0.02) + 108.56 / shallowFlowVelocity('paved', 0.02)));
    const short = field({ flowLength: 80 });
    expect([...catchmentRunoff(site, short, grid, {})]).toEqual(expected(short, sheetFlowTime(0.24, 80, 96.52, 0.02)));
    // No flatter than a thousandth.
    const flat = field({ slope: 0, flowLength: 60 });
    expect([...catchmentRunoff(site, flat, grid, {})]).toEqual(expected(flat, sheetFlowTime(0.24, 60, 96.52, 0.001)));
  });
  it('takes the longest duration and the rarest rain that the table has, up to a day and down to two years', () => {
    const longer = changed(site, (copy) => {
      copy.rain.table.durations.push(2 * DAY);
      copy.rain.table.depths.push([120, 200, 250, 330]);
    });
    const short = field({ flowLength: 80 });
    expect([...catchmentRunoff(longer, short, grid, {})]).toEqual(expected(short, sheetFlowTime(0.24, 80, 96.52, 0.02)));
    const hours = changed(site, (copy) => {
      copy.rain.table.durations.splice(8);
      copy.rain.table.depths.splice(8);
    });
    expect([...catchmentRunoff(hours, short, grid, {})]).toEqual(expected(short, sheetFlowTime(0.24, 80, 68.58, 0.02)));
    const rare = changed(site, (copy) => {
      copy.rain.table.returnPeriods.shift();
      for (const row of copy.rain.table.depths) row.shift();
    });
    expect([...catchmentRunoff(rare, short, grid, {})]).toEqual(expected(short, sheetFlowTime(0.24, 80, 165.1, 0.02)));
  });
  it('is left to the plane under an acre, where it answers too quickly, and where the grid is too coarse', () => {
    const plane = (catchment: Catchment, rain = grid): boolean => {
      const answer = (response: Catchment['response']): number[] => [...catchmentRunoff(site, { ...catchment, response }, rain, {})];
      return answer('unitHydrograph').every((flow, i) => flow === answer('kinematic')[i]);
    };
    expect([plane(field()), plane(field({ area: 4000 })), plane(field({ area: 4046.8564224 })), plane(field({ flowLength: 3, slope: 0.3, roughness: 0.011 }))]).toEqual([false, true, false, true]);
    expect(plane(field({ flowLength: 20 }), { blocks: [5, 30, 10], block: 3600, perBlock: 1 })).toBe(true);
  });
});

describe('ground water of an underdrain', () => {
  const drain = (fields: Partial<Underdrain> = {}): Underdrain => ({ kind: 'underdrain', id: 'U1', drainsTo: 'B1', length: 30, seepage: null, inflowPerLength: 2e-5, ...fields }) as Underdrain;
  const interceptor = { method: 'interceptor', conductivity: 1e-5, fromTexture: false, gradient: 0.05, depth: 1.2 } as const;

  it('is what was typed, for each meter of drain', () => {
    expect([underdrainInflow(drain()), underdrainFlow(drain())]).toEqual([2e-5, expect.closeTo(6e-4, 15)]);
  });
  it('is what an interceptor cuts, a fifth of it where only the texture is known', () => {
    expect(underdrainInflow(drain({ seepage: interceptor as never }))).toBeCloseTo(1e-5 * 0.05 * 1.2, 15);
    expect(underdrainInflow(drain({ seepage: { ...interceptor, fromTexture: true } as never }))).toBeCloseTo(2e-6 * 0.05 * 1.2, 15);
    expect(underdrainInflow(drain({ seepage: { ...interceptor, gradient: 0 } as never }))).toBe(0);
  });
  it('comes from one side or both by Dupuit: K (H2 - h2) / 2L', () => {
    const seepage = { method: 'drawdown', conductivity: 1e-5, fromTexture: false, barrierBelow: 0.5, waterAbove: 1, reach: 10, sides: 2 };
    expect(underdrainInflow(drain({ seepage: seepage as never }))).toBeCloseTo(2 * ((1e-5 * (1.5 ** 2 - 0.5 ** 2)) / 20), 15);
  });
  it('adds up in the store at its end', () => {
    const document = changed(site, (copy) => { copy.system.parts.push(drain() as Changeable<Underdrain>, drain({ id: 'U2', length: 10 }) as Changeable<Underdrain>); });
    const ends = (id: string) => (id === 'U1' ? { kind: 'basin', index: 0 } as const : { kind: 'basin', index: 1 } as const);
    expect([groundWaterOf(document, ends, 'basin', 0), groundWaterOf(document, ends, 'basin', 1), groundWaterOf(document, ends, 'well', 0), groundWaterOf(document, () => null, 'basin', 0)])
      .toEqual(close([6e-4, 2e-4, 0, 0], 15));
    expect(inflowTargets(document, 'system')).toEqual({ ponds: 1, junctions: [], wells: [], basins: close([8e-4], 15) });
    expect(inflowTargets(document, 'bare')).toEqual({ ponds: 1, junctions: [], wells: [], basins: [] });
    expect(stormInflow(document, stormRunoff(document, 25), 'system').basins[0]![3]).toBeCloseTo(8e-4, 12);
  });
});

describe('where the water of each surface goes', () => {
  const dryWell = { area: 4, perimeter: 8, depth: 0.8, voids: 0.4, bottomLevel: 29, infiltrationRate: 2e-5, overflow: true, overflowsTo: null };
  const routes = (change: (copy: Changeable<DesignDocument>) => void, inflowCase: 'bare' | 'system' | 'gutterOverflowing' = 'system'): Route[] => routesOf(changed(site, change), inflowCase);
  const [one] = [(copy: Changeable<DesignDocument>, drainsTo: unknown): void => { copy.site.catchments[0]!.drainsTo = drainsTo as never; }];
  const plain = { capacity: Infinity, excessPond: -1, gutter: null };

  it('is a low spot, the street, or a part', () => {
    expect(routes((copy) => { one(copy, { kind: 'lowSpot', id: 'L1' }); })[0]).toEqual({ to: { kind: 'pond', index: 0 }, pond: 0, basin: -1, ...plain });
    expect(routes((copy) => { one(copy, { kind: 'offSite' }); })[0]).toEqual({ to: null, pond: -1, basin: -1, ...plain });
    expect(routes((copy) => { one(copy, { kind: 'part', id: 'gone' }); })[0]).toEqual({ to: null, pond: -1, basin: -1, ...plain });
    expect(routes((copy) => { one(copy, { kind: 'part', id: 'CH1' }); })[0]).toMatchObject({ pond: 0, basin: -1 });
    expect(routes((copy) => { one(copy, { kind: 'part', id: 'P1' }); })[0]).toEqual({ to: { kind: 'basin', index: 0 }, pond: -1, basin: 0, ...plain });
    expect(routes((copy) => { one(copy, { kind: 'part', id: 'P1' }); }, 'bare')[0]!.to).toBeNull();
    expect(routes((copy) => { one(copy, { kind: 'part', id: 'P1' }); }, 'gutterOverflowing')[0]!.basin).toBe(0);
  });
  it('is a gutter up to what it and its leaders carry, and the ground under its eave beyond', () => {
    const [, east] = routesOf(site, 'system');
    const [gutter] = site.system.parts as [Parameters<typeof gutterCapacity>[0]];
    expect(gutterCapacity(gutter)).toBeGreaterThan(1e-3);
    expect(east).toMatchObject({ to: null, excessPond: 0, gutter: 'G1', capacity: Math.min(gutterCapacity(gutter), gutterLeaderCapacity(site, gutter)) });
    for (const inflowCase of ['bare', 'gutterOverflowing'] as const) expect(routesOf(site, inflowCase)[1]).toEqual({ to: { kind: 'pond', index: 0 }, pond: 0, basin: -1, ...plain });
    const two = changed(site, (copy) => { Object.assign(copy.system.parts.find(({ id }) => id === 'D1')!, { count: 2 }); });
    expect(gutterLeaderCapacity(two, gutter)).toBeCloseTo(2 * gutterLeaderCapacity(site, gutter), 12);
    expect(gutterLeaderCapacity(site, { ...gutter, drainsTo: 'O2' })).toBe(Infinity);
    const wide = { ...gutter, width: 2 * gutter.width, depth: 2 * gutter.depth };
    expect(gutterCapacity(wide)).toBeGreaterThan(gutterCapacity(gutter));
    // With a gutter that carries far more than its leader the leader counts.
    const narrow = changed(site, (copy) => { Object.assign(copy.system.parts.find(({ id }) => id === 'D1')!, { diameter: 0.02 }); });
    expect(routesOf(narrow, 'system')[1]!.capacity).toBe(gutterLeaderCapacity(narrow, gutter));
  });
  it('is the first junction, basin or dry well on the way down', () => {
    const below = storeBelow(changed(site, (copy) => {
      Object.assign(copy.system.parts.find(({ id }) => id === 'O2')!, { dryWell });
      copy.system.parts.push({ ...structuredClone(copy.system.parts.find(({ id }) => id === 'P1')!), id: 'P2', drainsTo: 'P1' } as never);
    }));
    // Two pipes meet at the head of P1: what is in P2 comes to that joint.
    expect([below('P2'), below('CH1'), below('P1'), below('R1'), below('gone')]).toEqual([{ kind: 'junction', index: 0 }, { kind: 'junction', index: 0 }, { kind: 'junction', index: 0 }, { kind: 'well', index: 0 }, null]);
    expect([storeBelow(site)('P1'), storeBelow(site)('R1')]).toEqual([{ kind: 'basin', index: 0 }, null]);
  });
});

describe('inflow of every store', () => {
  const route = (fields: Partial<Route>): Route => ({ to: null, pond: -1, basin: -1, capacity: Infinity, excessPond: -1, gutter: null, ...fields });
  const storm = (...runoff: number[][]): StormRunoff => ({ returnPeriod: 2, step: 60, steps: 3, intensity: new Float64Array(3), runoff: runoff.map((flows) => Float64Array.from(flows)) });
  const targets = { ponds: 2, junctions: [0.1], wells: [0.2], basins: [0.3, 0.4] };
  const lists = (inflow: ReturnType<typeof buildInflow>): number[][] => [...inflow.ponds, ...inflow.junctions, ...inflow.wells, ...inflow.basins].map((flows) => [...flows]);

  it('is what runs to it, on top of its ground water', () => {
    const routes = [route({ to: { kind: 'pond', index: 1 } }), route({ to: { kind: 'junction', index: 0 } }), route({ to: { kind: 'well', index: 0 } }), route({ to: { kind: 'basin', index: 1 } }), route({})];
    const inflow = buildInflow(routes, targets, storm([1, 2, 3], [4, 0, 0], [0, 5, 0], [0, 0, 6], [9, 9, 9]), null);
    expect([inflow.step, inflow.steps]).toEqual([60, 3]);
    expect(lists(inflow)).toEqual([[0, 0, 0], [1, 2, 3], close([4.1, 0.1, 0.1]), close([0.2, 5.2, 0.2]), close([0.3, 0.3, 0.3]), close([0.4, 0.4, 6.4])]);
  });
  it('of two roofs on one gutter is what it carries of both, the rest on the ground', () => {
    const half = route({ to: { kind: 'basin', index: 0 }, capacity: 5, excessPond: 0, gutter: 'G1' });
    const inflow = buildInflow([half, half], { ...targets, basins: [0, 0] }, storm([1, 3, 4], [2, 3, 1]), null);
    expect([lists(inflow)[0], lists(inflow)[4]]).toEqual([[0, 1, 0], [3, 5, 5]]);
    const apart = buildInflow([half, { ...half, gutter: 'G2' }], { ...targets, basins: [0, 0] }, storm([1, 3, 4], [2, 3, 1]), null);
    expect(lists(apart)[4]).toEqual([3, 6, 5]);
    // A gutter that leads off the site still spills on it.
    expect(lists(buildInflow([{ ...half, to: null }], { ...targets, basins: [0, 0] }, storm([1, 7, 4]), null))[0]).toEqual([0, 2, 0]);
  });
  it('may be more or less of each surface, and filled again in a window only', () => {
    const routes = [route({ to: { kind: 'pond', index: 0 } }), route({ to: { kind: 'pond', index: 0 } })];
    const rain = storm([1, 2, 3], [10, 20, 30]);
    const inflow = buildInflow(routes, targets, rain, [2, 0.5]);
    expect(lists(inflow)[0]).toEqual([7, 14, 21]);
    const again = buildInflow(routes, { ...targets, junctions: [0.7] }, rain, [1, 1], [1, 2], inflow);
    expect(again).toBe(inflow);
    expect([lists(again)[0], lists(again)[2]]).toEqual([[7, 22, 21], [0.1, 0.7, 0.1]]);
  });
});
