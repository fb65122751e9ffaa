import { describe, expect, it } from 'vitest';
import { SHARP_RIM_WEIR } from '../inlet/weir.ts';
import type { RoutingModel } from '../routing/model.ts';
import { backTo, basinStore, dryWell, junctionStore, linkOf, pondStore, prism, pumpUnit, stores } from '../testing/prisms.ts';
import { NetworkRoute } from './networkRoute.ts';
import type { RouteInflow } from './route.ts';
import { Watch } from './watch.ts';

const SPOT = prism(0, 1, 100);
const routeOf = (model: RoutingModel, sills: readonly number[] = [], ground: { wells?: number[]; basins?: number[]; junctions?: number[] } = {}): NetworkRoute =>
  new NetworkRoute(model, model.ponds.map(({ storage }) => new Watch(storage, sills)), { ponds: model.ponds.length, junctions: model.junctions.map(() => 0), wells: model.wells.map(() => 0), basins: model.basins.map(() => 0), ...ground });
/** Five minutes of steady inflow [m3/s] into each store that is named, at the five minutes that are named. */
const into = (index: readonly number[], flows: Partial<Record<'ponds' | 'junctions' | 'wells' | 'basins', readonly number[]>>): RouteInflow => {
  const of = (list: readonly number[] = []) => list.map((flow) => new Float64Array(5 * index.length).fill(flow));
  return { count: index.length, index: Int32Array.from(index), ponds: of(flows.ponds), junctions: of(flows.junctions), wells: of(flows.wells), basins: of(flows.basins) };
};
const nothing = into([], { ponds: [0] });

describe('a low spot that only loses', () => {
  const lossy = stores({ ponds: [pondStore({ loss: 1e-4 })] });
  it('falls evenly after the rain: 0.1 l/s from 297 l, told in one leap', () => {
    const route = routeOf(lossy, [0.002]);
    route.run(into([0], { ponds: [0.0011] }), 1 + 12);
    // 300 s of 1.1 - 0.1 l/s are 300 l; an hour takes 360 l, so that it is dry after fifty minutes.
    expect(route.standing(0)).toBe(0);
    expect(route.books).toEqual({ inflow: expect.closeTo(0.33, 12), outflow: expect.closeTo(0.33, 9), solved: 6, closed: 0 });
    // 0.2 m3 is the sill: reached in the fourth minute with 240 l; 100 l over it go in 16 2/3 minutes.
    const { maxLevel, events, minutesOver } = route.watches[0]!.close(0);
    expect([maxLevel, events, minutesOver]).toEqual([expect.closeTo(0.003, 9), [1], [expect.closeTo(2 + 100 / 6, 6)]]);
  });
  it('stands where half an hour has left it, carries that on, and leaps in dry years', () => {
    const route = routeOf(lossy);
    route.run(into([0], { ponds: [0.0011] }), 1 + 6);
    expect(route.standing(0)).toBeCloseTo(0.3 - 0.18, 9);
    route.run(into([8], { ponds: [0.0011] }), 9 + 6);
    expect(route.standing(0)).toBeCloseTo(0.12 - 0.03 + 0.3 - 0.18, 9);
    route.run(nothing, 100_000);
    expect([route.standing(0), route.books.solved]).toEqual([0, 12]);
    expect(route.massError()).toBeLessThan(1e-9);
  });
  it('is at rest with what it cannot lose, and before the first rain', () => {
    const route = routeOf(stores({ ponds: [pondStore()] }));
    route.run(nothing, 50);
    expect(route.books).toEqual({ inflow: 0, outflow: 0, solved: 0, closed: 0 });
    route.run(into([60], { ponds: [0.001] }), 1000);
    expect([route.standing(0), route.books.solved]).toEqual([expect.closeTo(0.3, 12), 6]);
  });
});

describe('what moves hardly at all', () => {
  it('loses its ten liters a day for years, though no minute shows it', () => {
    const route = routeOf(stores({ ponds: [pondStore({ loss: 1e-8 })] }));
    route.run(into([0], { ponds: [0.001] }), 1);
    route.run(nothing, 1 + 33_333);
    expect(route.standing(0)).toBeCloseTo(0.3 - 33_334 * 300e-8, 6);
    expect(route.books.solved).toBeLessThan(10);
  });
  it('is stepped until it moves by less than ten nanometers a minute; a low spot beside it that falls evenly asks for no step', () => {
    const model = stores({ ponds: [pondStore({ rimLevel: 0.001 }), pondStore({ id: 'L2', loss: 1e-5 })] });
    const route = routeOf(model);
    route.run(into([0], { ponds: [0.01, 0.04] }), 1);
    // Backward Euler over the rim: A (h - h') = C L h'^1.5 dt, by bisection.
    let head = route.standing(0) / 100 - 0.001;
    let steps = 0;
    for (let dry = 0; ; steps += 1) {
      const minutes = dry >= 60 ? 5 : 1;
      let [low, high] = [0, head];
      for (let i = 0; i < 60; i += 1) {
        const middle = (low + high) / 2;
        if (100 * middle + SHARP_RIM_WEIR * middle ** 1.5 * 60 * minutes < 100 * head) low = middle;
        else high = middle;
      }
      const fallen = head - low;
      head = low;
      dry += minutes;
      if (fallen <= 1e-8 * minutes) break;
    }
    route.run(into([], { ponds: [0, 0] }), 10_000);
    expect(Math.abs(route.books.solved - 5 - steps)).toBeLessThanOrEqual(2);
    expect(route.standing(1)).toBe(0);
    expect(route.massError()).toBeLessThan(1e-9);
  });
  it('is no even fall where ground water comes over from a dry well on the slope above', () => {
    const route = routeOf(stores({ ponds: [pondStore({ loss: 1e-4, storage: prism(-9, -8, 100) })], wells: [dryWell({ rate: 0, crestLevel: -2, overflowsTo: 0 })] }), [], { wells: [5e-5] });
    route.run(nothing, 24);
    route.run(into([24], { ponds: [0.001 + 5e-5], wells: [5e-5] }), 25 + 12);
    // 300 l, of which half of the loss of an hour, 180 l, is made up by the well.
    expect(route.standing(0)).toBeCloseTo(0.3 - 0.18, 3);
  });
});

describe('the books', () => {
  it('tell what is lost as a share of what came, and nothing before anything came', () => {
    const route = routeOf(stores({ ponds: [pondStore()] }));
    route.books.outflow = 5;
    expect(route.massError()).toBe(0);
    route.books.outflow = 0;
    route.run(into([0], { ponds: [0.001] }), 1);
    expect(route.massError()).toBeLessThan(1e-9);
    for (const wrong of [0.06, -0.06]) {
      route.books.outflow = wrong;
      expect(route.massError()).toBeCloseTo(0.2, 9);
    }
  });
  it('count water that leaves, but not what comes back or goes from store to store', () => {
    // One spot spills into the other, whose grate leads off the site; a quarter of that comes back. In either order.
    for (const [upper, lower] of [[0, 1], [1, 0]] as const) {
      const ponds = [pondStore({ id: 'L1' }), pondStore({ id: 'L2' })];
      ponds[upper] = pondStore({ rimLevel: 0.001, spillsTo: lower });
      const route = routeOf(stores({ ponds, links: [linkOf({ pond: lower, returns: backTo(lower, 0.25) })] }));
      route.run(into([0, 1, 2], { ponds: upper === 0 ? [0.02, 0] : [0, 0.02] }), 3);
      expect(route.books.inflow).toBeCloseTo(18, 9);
      expect(route.books.outflow).toBeCloseTo(18 - route.standing(0) - route.standing(1), 6);
      expect(route.standing(lower)).toBeGreaterThan(0);
      expect(route.books.outflow).toBeGreaterThan(3);
      expect(route.massError()).toBeLessThan(1e-9);
    }
  });
  it('take a minute in parts where it does not settle at once', () => {
    const route = routeOf(stores({ ponds: [pondStore()] }));
    const network = route['network'];
    const settle = network.settle.bind(network);
    network.settle = (dt) => settle(dt > 1 ? dt / 2 : dt);
    route.run(into([0], { ponds: [0.001] }), 1);
    expect([route.standing(0), route.books.inflow, route.books.solved]).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0.3, 12), 5]);
  });
});

describe('a system after rain', () => {
  it('starts with its pumps at rest, each basin at its own on level: what comes is pumped', () => {
    const second = basinStore({ id: 'B2', onLevel: -1.25, units: [pumpUnit({ startLevel: -1.25 })] });
    const model = stores({ ponds: [pondStore()], basins: [basinStore(), { ...second, pump: null }] });
    const route = routeOf(model);
    route.run(into([2], { ponds: [0], basins: [0.001, 0.0005] }), 4);
    expect(route.books.inflow).toBeCloseTo(0.45, 12);
    // The twin gives what comes above its on level, but for a film.
    expect(route.books.outflow).toBeCloseTo(0.45, 2);
    expect(route.massError()).toBeLessThan(1e-9);
  });
  it('whose pump runs on a battery fills: batteries do not last for years', () => {
    const model = stores({ ponds: [pondStore()], basins: [basinStore({ units: [pumpUnit({ battery: true, energy: 1e9, inputPower: 1 })] })] });
    const route = routeOf(model);
    route.run(into([0], { ponds: [0], basins: [0.001] }), 2);
    expect(route.books.outflow).toBe(0);
  });
  const rising = stores({ ponds: [pondStore()], wells: [dryWell({ rate: 0 })] });
  it('is stepped by the minute for an hour, then by five, as long as a level moves: here with ground water', () => {
    const route = routeOf(rising, [], { wells: [1e-6] });
    route.run(nothing, 24);
    expect(route.books.solved).toBe(60 + 12);
    expect(route.books.inflow).toBeCloseTo(7200 * 1e-6, 12);
    expect(route.books.outflow).toBe(0);
    // Rain begins the hour anew.
    route.run(into([24], { ponds: [0], wells: [0] }), 24 + 25);
    expect(route.books.solved).toBe(72 + 5 + 60 + 12);
    expect(route.massError()).toBeLessThan(1e-9);
  });
  it('that never comes to rest is named after thirty days', () => {
    const route = routeOf(rising, [], { wells: [1e-6] });
    route.run(nothing, 12 * 24 * 30);
    expect(() => { route.run(nothing, 12 * 24 * 30 + 1); }).toThrow('record.neverRests at /site/lowSpots');
  });
  it('rests under ground water that its pumps keep up with, and books both', () => {
    const model = stores({ ponds: [pondStore()], basins: [basinStore()] });
    const route = routeOf(model, [], { basins: [0.0005] });
    route.run(nothing, 12);
    const hour = { ...route.books };
    route.run(nothing, 24);
    expect(route.books.solved).toBe(hour.solved);
    expect(hour.solved).toBeLessThan(30);
    expect([route.books.inflow - hour.inflow, route.books.outflow - hour.outflow]).toEqual([expect.closeTo(1.8, 9), expect.closeTo(1.8, 9)]);
    expect(route.massError()).toBeLessThan(1e-6);
  });
  it('does not rest while another store moves: a junction that runs out, beside a low spot that falls evenly', () => {
    // The junction, 1 m2, stands 2 cm deep and passes on little by little; 0.1 l/s leave the low spot.
    const model = stores({ ponds: [pondStore({ loss: 1e-4 })], junctions: [junctionStore()], conduits: [] });
    const route = routeOf(model, [], { junctions: [1e-5] });
    route.run(into([0], { ponds: [0.0011], junctions: [1e-5] }), 1 + 2);
    expect(route.books.solved).toBe(5 + 10);
    expect(route.standing(0)).toBeCloseTo(0.3 - 0.06, 9);
  });
  it('carries every store of a minute by itself', () => {
    const model = stores({ ponds: [pondStore(), pondStore({ id: 'L2', storage: SPOT })], junctions: [junctionStore()], wells: [dryWell({ rate: 0 })], basins: [basinStore({ pump: null, units: [], lines: [] })] });
    const route = routeOf(model);
    route.run(into([1, 3], { ponds: [0.001, 0.002], junctions: [0.0001], wells: [0.0003], basins: [0.0004] }), 4);
    // The basin starts at its on level with 1 m3.
    expect([...route['network'].volume]).toEqual([0.6, 1.2, 0.06, 0.18, 1.24].map((volume) => expect.closeTo(volume, 9) as number));
    expect(route.books.inflow).toBeCloseTo(2.28, 12);
  });
});
