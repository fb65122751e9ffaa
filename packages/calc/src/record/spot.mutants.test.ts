import { describe, expect, it } from 'vitest';
import { SHARP_RIM_WEIR } from '../inlet/weir.ts';
import type { Link, RoutingModel } from '../routing/model.ts';
import { basinStore, junctionStore, linkOf, pondStore, prism, pumpUnit, stores } from '../testing/prisms.ts';
import { FlowTable } from '../routing/levelTable.ts';
import { NetworkRoute } from './networkRoute.ts';
import { PondSolver } from './pondSolver.ts';
import type { Route, RouteInflow } from './route.ts';
import { recordRoute } from './routesOf.ts';
import { SpotRoute } from './spotRoute.ts';
import { Watch } from './watch.ts';

/** A grate that lies deep under the low spot: 0.01 m3/s run through it into the open, or into a low basin, before any water stands over it. */
const deep = (fields: Partial<Link> = {}): Link => linkOf({ grateLevel: -1, ...fields });
const toBasin = (index = 0): Partial<Link> => ({ basin: index, to: { kind: 'basin', index } });
const pumped = (most: number, fields: Parameters<typeof basinStore>[0] = {}) => {
  const flow = FlowTable.tabulate(-2, 10, 1, () => most);
  return basinStore({ pump: { id: 'M1', flow, lineVolume: 0, runBack: 0 }, ...fields, lines: basinStore().lines.map((line) => ({ ...line, flow: () => FlowTable.tabulate(-100, 100, 1, () => most) })) });
};
const watchesOf = (model: RoutingModel): Watch[] => model.ponds.map(({ storage }) => new Watch(storage, [0.001]));
/** Five minutes of steady inflow [m3/s] at the five minutes that are named. */
const into = (index: readonly number[], ponds: readonly number[], basins: readonly number[] = []): RouteInflow => {
  const of = (flow: number): Float64Array => new Float64Array(5 * index.length).fill(flow);
  return { count: index.length, index: Int32Array.from(index), ponds: ponds.map(of), junctions: [], wells: [], basins: basins.map(of) };
};

describe('one low spot for a minute', () => {
  const both = [deep(), deep(toBasin())];
  const solved = (links: readonly Link[], loss: number, goals: readonly number[], tail: number): PondSolver => {
    const solver = new PondSolver(pondStore({ loss, rimLevel: 0.2, spillWidth: 2 }), links);
    for (const goal of goals) {
      solver.goal = goal;
      solver.solve(tail);
    }
    return solver;
  };
  const spill = SHARP_RIM_WEIR * 2 * 0.05 ** 1.5;
  it('stands where what leaves and what stays add up: a quarter of a meter, over both grates and the rim', () => {
    // 1.25 m of head drive 0.01 sqrt(1.25) m3/s through each of them.
    const each = 0.01 * Math.sqrt(1.25);
    expect(solved(both, 1e-4, [25 + 60 * (1e-4 + 2 * each + spill)], -2)).toMatchObject({ level: expect.closeTo(0.25, 9), lost: 1e-4, toOutlets: expect.closeTo(each, 9), toBasin: expect.closeTo(each, 9), spilled: expect.closeTo(spill, 9) });
  });
  it('that runs dry shares out what there was by what could have gone', () => {
    // 0.1 l/s and twice 10 l/s could go; a tenth of that is there, after a minute in which it stood.
    expect(solved(both, 1e-4, [30, 60 * 0.00201], -2)).toMatchObject({ level: 0, lost: expect.closeTo(1e-5, 15), toOutlets: expect.closeTo(1e-3, 12), toBasin: expect.closeTo(1e-3, 12), spilled: 0 });
    expect(solved([], 0, [0], -2)).toMatchObject({ level: 0, lost: 0, toOutlets: 0, toBasin: 0, spilled: 0 });
  });
  it('is filled by a basin that stands higher', () => {
    // 0.25 m push 5 l/s back; 0.05 l/s come, and half of the 10.1 l/s that could go.
    expect(solved(both, 1e-4, [60 * 5e-5], 0.25)).toMatchObject({ level: 0, lost: expect.closeTo(5e-5, 12), toOutlets: expect.closeTo(5e-3, 12), toBasin: expect.closeTo(-5e-3, 12) });
  });
});

describe('one low spot through a record, in closed form', () => {
  const route = (fields: Partial<RoutingModel>, ground = 0): SpotRoute => {
    const model = stores({ ponds: [pondStore()], ...fields });
    return new SpotRoute(model, watchesOf(model)[0]!, ground);
  };
  it('under its grates and its rim it fills and loses evenly', () => {
    const one = route({ ponds: [pondStore({ loss: 1e-4 })] });
    one.run(into([0], [0.0011]), 1 + 6);
    expect([one.standing(), one.books]).toEqual([expect.closeTo(0.12, 12), { inflow: expect.closeTo(0.33, 12), outflow: expect.closeTo(0.21, 12), solved: 0, closed: 5 }]);
    one.run(into([8], [5e-5]), 9);
    // 0.03 m3 more are gone, and 0.05 l/s less than what is lost for five minutes.
    expect([one.standing(), one.books.closed]).toEqual([expect.closeTo(0.12 - 0.03 - 0.015, 12), 10]);
    one.run(into([], [0]), 5000);
    expect([one.standing(), one.massError()]).toEqual([0, expect.closeTo(0, 12)]);
    // 0.1 m3 is the sill: from the second minute with 120 l on; 0.1 l/s bring 300 l back to it in 2000 s.
    const { maxLevel, events, minutesOver } = one.watches[0]!.close(0);
    expect([maxLevel, events, minutesOver]).toEqual([expect.closeTo(0.003, 12), [1], [expect.closeTo(4 + 2000 / 60, 9)]]);
  });
  it('over its rim alone it falls by the weir, h0 / (1 + C L sqrt(h0) t/(2 A))^2', () => {
    const one = route({ ponds: [pondStore({ rimLevel: 0.001 })] });
    one.run(into([0], [0.01]), 1);
    const head = one.standing() / 100 - 0.001;
    expect(head).toBeGreaterThan(0.01);
    one.run(into([], [0]), 1 + 20);
    expect(one.standing()).toBeCloseTo(0.1 + (100 * head) / (1 + (SHARP_RIM_WEIR * Math.sqrt(head) * 6000) / 200) ** 2, 9);
    expect([one.books.solved, one.massError()]).toEqual([5, expect.closeTo(0, 12)]);
    const lossy = route({ ponds: [pondStore({ rimLevel: 0.001, loss: 1e-5 })] });
    lossy.run(into([0], [0.01]), 1 + 20);
    expect(lossy.books.solved).toBeGreaterThan(50);
    const grated = route({ ponds: [pondStore({ rimLevel: 0.001 })], links: [linkOf({ grateLevel: 0.002 })] });
    grated.run(into([0], [0.01]), 1 + 20);
    expect(grated.books.solved).toBeGreaterThan(50);
  });
  it('dry it passes on what its ways out take: 10 l/s, a share of it to the basin, as long as its pump keeps up', () => {
    const open = route({ links: [deep()] });
    open.run(into([1], [0.01]), 3);
    expect([open.standing(), open.books]).toEqual([0, { inflow: expect.closeTo(3, 12), outflow: expect.closeTo(3, 12), solved: 0, closed: 5 }]);
    open.run(into([4], [0.0101]), 5);
    expect(open.books.solved).toBe(5);
    // Half of the inflow goes to the basin: 2 l/s of 4, with 1.5 l/s of its own too much for 3 l/s.
    // It stands half a meter under the free end of the pipe.
    const basin = { basins: [pumped(0.003, { onLevel: -1.5 })], links: [deep(), deep(toBasin())] };
    const calm = route(basin);
    calm.run(into([0], [0.004], [0.001]), 1);
    expect(calm.books).toEqual({ inflow: expect.closeTo(1.5, 12), outflow: expect.closeTo(1.5, 12), solved: 0, closed: 5 });
    const full = route(basin);
    full.run(into([0], [0.004], [0.0015]), 1);
    expect(full.books.solved).toBe(5);
    // 0.5 l/s are left for five minutes over the on level.
    expect([full.books.outflow, full.massError()]).toEqual([expect.closeTo(1.65 - 0.15, 9), expect.closeTo(0, 12)]);
  });
  it('is stepped while water stands over a grate, and told for every minute that is left', () => {
    const under = route({ links: [linkOf({ grateLevel: 0.002 })] });
    under.run(into([0], [1e-4]), 1);
    expect([under.standing(), under.books]).toEqual([expect.closeTo(0.03, 12), { inflow: expect.closeTo(0.03, 12), outflow: 0, solved: 0, closed: 5 }]);
    const beside = route({ basins: [pumped(0.003)], links: [linkOf({ ...toBasin(), grateLevel: 0.002 })] });
    beside.run(into([0], [1e-4], [0.001]), 1);
    expect([beside.books.outflow, beside.massError()]).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0, 12)]);
    // 3 l lose 0.05 l/s more than comes: dry after a minute, within the rain.
    const drying = route({ ponds: [pondStore({ loss: 1e-4 })] });
    drying.run(into([0], [1.1e-4]), 1);
    drying.run(into([1], [5e-5]), 2);
    expect([drying.standing(), drying.books.outflow]).toEqual([0, expect.closeTo(0.048, 12)]);
    // A flush grate has nothing under it: the minute in which it runs dry is solved as well.
    const flush = route({ ponds: [pondStore({ loss: 0.01 })], links: [linkOf()] });
    flush.run(into([0], [0.011]), 3);
    expect([flush.standing(), flush.books.solved, flush.books.closed]).toEqual([0, 6, 0]);
    // 0.31 m3 lose 0.06 a minute: under the rim at 0.1 after four minutes, and one is left.
    const last = route({ ponds: [pondStore({ rimLevel: 0.001, spillWidth: 1e-9, loss: 1e-3 })] });
    last.run(into([0], [0.31 / 300 + 1e-3]), 2);
    expect(last.standing()).toBeCloseTo(0.01, 6);
  });
  it('asks only the ways into the basin how high that stands, and passes nothing on of nothing', () => {
    // Into the open 10 l/s run over 1 m; into the basin, whose pipe ends 0.8 m down, 8.9. Its on level lies between the two ends.
    const one = route({ basins: [pumped(0.02, { onLevel: -0.9 })], links: [deep(), deep({ ...toBasin(), freeLevel: -0.8 })] });
    one.run(into([0], [0.0185], [0]), 1);
    expect(one.books).toMatchObject({ solved: 0, closed: 5 });
    const flush = route({ links: [linkOf()] });
    flush.run(into([0], [0]), 1);
    expect(flush.books).toMatchObject({ solved: 0, closed: 5 });
  });
  it('books ground water in dry time, which needs a pump', () => {
    const one = route({ basins: [pumped(0.003)], links: [deep(toBasin())] }, 0.001);
    one.run(into([2], [0], [0.001]), 12);
    expect(one.books).toEqual({ inflow: expect.closeTo(3.6, 12), outflow: expect.closeTo(3.6, 12), solved: 0, closed: 5 });
    const none = route({ links: [deep()] }, 0.001);
    none.run(into([], [0]), 12);
    expect(none.books.inflow).toBe(0);
    expect(() => route({ basins: [pumped(0.0005)] }, 0.001)).toThrow('record.neverRests');
    expect(route({ basins: [pumped(0.001)] }, 0.001).massError()).toBe(0);
    expect(() => route({ basins: [pumped(0.003, { onLevel: 0.5 })], links: [deep(toBasin())] })).toThrow('record.neverRests');
    expect(route({ basins: [pumped(0.003)], links: [linkOf(toBasin())] }).massError()).toBe(0);
  });
  it('tells water that is missing as a share of what came', () => {
    const one = route({ basins: [pumped(0.001)], links: [deep(toBasin())] });
    one.books.outflow = 3;
    expect(one.massError()).toBe(0);
    one.books.outflow = 0;
    one.run(into([0], [0.01], [0.002]), 1);
    expect(one.massError()).toBeCloseTo(0, 12);
    one.books.outflow += 0.36;
    expect(one.massError()).toBeCloseTo(0.1, 9);
    one.books.outflow -= 0.72;
    expect(one.massError()).toBeCloseTo(0.1, 9);
  });
});

describe('one low spot beside the network of the storm routing, another program for the same steps', () => {
  const spot = pondStore({ rimLevel: 0.05, spillWidth: 2, loss: 2e-5 });
  const low = prism(-2, 1, 0.5);
  const cases: readonly (readonly [string, Partial<RoutingModel>])[] = [
    ['over its rim', { ponds: [spot] }],
    ['through a grate into the open', { ponds: [spot], links: [linkOf({ grateLevel: 0.002 })] }],
    ['through a deep grate', { ponds: [spot], links: [deep()] }],
    ['into a basin whose pump is too weak', { ponds: [spot], links: [deep(toBasin())], basins: [pumped(0.001, { storage: low })] }],
    ['both ways, and back from a basin that fills over its lid', { ponds: [spot], links: [deep({ resistance: 4e4 }), deep(toBasin())], basins: [pumped(0.0005, { storage: low, lidLevel: 0.2, lidEdge: 1 })] }],
  ];
  it.each(cases)('%s', (_name, fields) => {
    const model = stores(fields);
    const ground = { ponds: 1, junctions: [], wells: [], basins: model.basins.map(() => 1e-4) };
    const [watch, other] = [watchesOf(model)[0]!, watchesOf(model)[0]!];
    const routes: Route[] = [new SpotRoute(model, watch, 1e-4), new NetworkRoute(model, [other], ground)];
    const parts: readonly (readonly [number, number, number])[] = [[0, 0.03, 0.001], [1, 0.004, 1e-4], [2, 0.06, 1e-4], [3, 0, 0.002], [12, 0.0004, 1e-4], [13, 0.012, 1e-4], [40, 0.025, 1e-4]];
    for (const [index, pond, basin] of parts) {
      for (const route of routes) route.run(into([index], [pond], model.basins.map(() => basin)), index + 1);
      const [one, any] = routes.map((route) => route.standing(0));
      expect(Math.abs(one! - any!)).toBeLessThan(2e-4);
      expect(routes[0]!.books.inflow).toBeCloseTo(routes[1]!.books.inflow, 9);
      expect(Math.abs(routes[0]!.books.outflow - routes[1]!.books.outflow)).toBeLessThan(5e-3);
      for (const route of routes) expect(route.massError()).toBeLessThan(1e-9);
    }
    const [one, any] = [watch.close(0), other.close(0)];
    expect(one.maxLevel).toBeCloseTo(any.maxLevel, 5);
    expect(one.events).toEqual(any.events);
  });
});

describe('low spots that have nothing to do with each other', () => {
  // The first one runs into the second basin, and the other way round.
  const model = stores({
    ponds: [pondStore({ loss: 1e-4 }), pondStore({ id: 'L2' })], basins: [pumped(0.002, { id: 'B1', storage: prism(-2, 1, 200), onLevel: -1.5, units: [pumpUnit({ startLevel: -1.5 })] }), pumped(0.004, { id: 'B2' })],
    links: [deep({ ...toBasin(1), pond: 0 }), deep({ ...toBasin(0), id: 'CH2', pond: 1 }), deep({ id: 'CH3', pond: 1 })],
  });
  const ground = { ponds: 2, junctions: [], wells: [], basins: [1e-4, 3e-4] };
  it('are each carried alone, with their own basin and its ground water', () => {
    const route = recordRoute(model, watchesOf(model), ground);
    // The first: 3.5 l/s and 0.4 of its basin's own for a pump of 4; the second: 30 l/s, of which 20 pass, half of them to a pump of 2.
    route.run(into([0], [0.0035, 0.03], [0.0001, 0.0004]), 1);
    expect(route.books).toMatchObject({ inflow: expect.closeTo(300 * 0.034, 9), closed: 5, solved: 5 });
    expect([route.standing(0), route.standing(1)]).toEqual([0, expect.closeTo(2.97, 1)]);
    // 3.9 l/s of the first and its basin, 10 into the open and 2 by the pump of the second.
    expect(route.books.outflow).toBeCloseTo(0.3 * 15.9, 1);
    expect(route.massError()).toBeLessThan(1e-9);
    route.run(into([], [0, 0], [0, 0]), 24);
    expect(route.books.inflow).toBeCloseTo(300 * 0.034 + 23 * 300 * 4e-4, 9);
    expect(route.books.inflow - route.books.outflow).toBeCloseTo(0, 9);
    expect(route.watches.map((watch) => watch.close(0).events)).toEqual([[0], [1]]);
  });
  it('lose the most that any of them loses', () => {
    const route = recordRoute(model, watchesOf(model), ground);
    route.run(into([0], [0.001, 0.001], [0.0001, 0.0003]), 1);
    const { routes } = route as unknown as { routes: readonly { route: SpotRoute }[] };
    routes[0]!.route.books.outflow += 0.039;
    routes[1]!.route.books.outflow -= 0.165;
    expect(route.massError()).toBeCloseTo(0.5, 9);
  });
  const closed = (fields: Partial<RoutingModel>): number => {
    const other = { ...model, ...fields };
    const route = recordRoute(other, watchesOf(other), { ...ground, basins: other.basins.map(() => 0), junctions: other.junctions.map(() => 0) });
    route.run({ ...into([0], other.ponds.map(() => 0.0001), other.basins.map(() => 0)), junctions: other.junctions.map(() => new Float64Array(5)) }, 1);
    return route.books.closed;
  };
  it('are a network where they meet in a basin or over a rim, or where a store belongs to none', () => {
    expect(closed({})).toBe(10);
    expect(closed({ links: model.links.map((link) => ({ ...link, ...toBasin() })), basins: [model.basins[0]!] })).toBe(0);
    expect(closed({ basins: [...model.basins, pumped(0.001, { id: 'B3' })] })).toBe(0);
    expect(closed({ ponds: [model.ponds[0]!, { ...model.ponds[1]!, spillsTo: 0 }] })).toBe(0);
    expect(closed({ junctions: [junctionStore()] })).toBe(0);
    const one = stores({ ponds: [pondStore()], links: [deep()] });
    expect(recordRoute(one, watchesOf(one), { ponds: 1, junctions: [], wells: [], basins: [] })).toBeInstanceOf(SpotRoute);
  });
});
