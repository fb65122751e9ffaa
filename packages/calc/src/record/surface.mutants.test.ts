import { describe, expect, it } from 'vitest';
import type { Catchment, DesignDocument } from '../document/document.ts';
import { planeEquilibriumTime } from '../runoff/kinematicPlane.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { PlaneRunner, type RunnerPlane } from './planeRunner.ts';
import type { RainRecord } from './rainRecord.ts';
import { RecordInflow } from './recordInflow.ts';
import { SurfaceRunoff } from './surfaceRunoff.ts';
import { WayRain } from './wayRain.ts';

const [patio] = demoSite('tern-hollow').site.catchments as [Catchment];
const surface = (fields: Partial<Catchment>): Catchment => ({ ...patio, surface: 'paving', area: 100, coefficient: 1, depressionStorage: 0, response: 'instantaneous', ...fields });
const yard = (...catchments: readonly Catchment[]): DesignDocument => changed(demoSite('tern-hollow'), (copy) => { copy.site.catchments = catchments.map((catchment, i) => ({ ...catchment, id: `C${String(i)}` })); });

describe('a plane in eight cells, five minutes at a time', () => {
  /** What stands and what leaves by bisection: h + k h^(5/3) = h before, with rain and what the cell above passes on. */
  function reference(plane: RunnerPlane, excesses: readonly number[]): number[] {
    const alpha = Math.sqrt(plane.slope) / plane.roughness;
    const dx = plane.length / 8;
    const cells = new Array<number>(8).fill(0);
    const width = plane.area / plane.length;
    return excesses.flatMap((excess) => {
      const stands = cells.reduce((sum, depth) => sum + depth, 0);
      if (excess === 0 && stands <= 8 * 5e-5) {
        cells.fill(0);
        return new Array<number>(5).fill((stands * dx * width) / 300);
      }
      // Cells that the wave would run through in five minutes, at the depth to which the last one can fill.
      const crossing = ((5 / 3) * alpha * Math.cbrt(cells[7]! + excess * 300) ** 2 * 300) / dx;
      const parts = crossing <= 0.5 ? 1 : crossing <= 2.5 ? 5 : 15;
      const k = (alpha * 300) / parts / dx;
      const left = Array.from({ length: parts }, () => cells.reduce((inflow, depth, c) => {
        const all = depth + (excess * 300) / parts + inflow;
        let [low, high] = [0, all];
        for (let i = 0; i < 100; i += 1) {
          const middle = (low + high) / 2;
          if (middle + k * middle ** (5 / 3) < all) low = middle;
          else high = middle;
        }
        cells[c] = low;
        return all - low;
      }, 0));
      return Array.from({ length: 5 }, (_, m) => (parts === 1 ? left[0]! / 300 : left.slice((m * parts) / 5, ((m + 1) * parts) / 5).reduce((sum, depth) => sum + depth, 0) / 60) * dx * width);
    });
  }
  const rain = [1e-6, 0, 8e-6, 3e-5, 2e-6, 0, 0, 5e-7, 0, 0, 0, 0, 0, 0, 0, 0];
  it.each([
    ['a lawn that is slow', { length: 20, slope: 0.005, roughness: 0.4, area: 60 }], ['a bed', { length: 6, slope: 0.02, roughness: 0.24, area: 60 }], ['paving', { length: 5, slope: 0.02, roughness: 0.012, area: 60 }],
    ['a long lawn', { length: 60, slope: 0.003, roughness: 0.5, area: 300 }],
  ])('%s', (_name, plane) => {
    const runner = new PlaneRunner(plane);
    expect([runner.total, runner.stored]).toEqual([0, 0]);
    const found = new Float64Array(5 * rain.length + 1).fill(9);
    rain.forEach((excess, i) => {
      runner.advance(excess, found, 5 * i);
      expect(found[5 * (i + 1)]).toBe(9); // nothing is written beyond
    });
    const wanted = reference(plane, rain);
    const peak = Math.max(...wanted);
    wanted.forEach((flow, i) => { expect(Math.abs(found[i]! - flow), `minute ${String(i)}`).toBeLessThan(1e-6 * peak); });
  });
  it('is parted by the depth of its last cell, whatever rain comes next', () => {
    // A lawn near its equilibrium, 8 % deeper in each cell than in the one above; a wave of two and a half cells needs parts of 20 s.
    const plane: RunnerPlane = { length: 8, slope: 0.02, roughness: 0.4, area: 8 };
    const steady = new Array<number>(12).fill(6e-7);
    for (let next = 6e-7; next < 3e-6; next += 1.2e-7) {
      const runner = new PlaneRunner(plane);
      const found = new Float64Array(5 * 13);
      [...steady, next].forEach((excess, i) => { runner.advance(excess, found, 5 * i); });
      reference(plane, [...steady, next]).slice(60).forEach((flow, m) => { expect(found[60 + m]! / flow).toBeCloseTo(1, 6); });
    }
  });
  it('keeps a film of more than 0.05 mm, and lets a thinner one run off', () => {
    const film = (depth: number): number => {
      const runner = new PlaneRunner({ length: 60, slope: 0.001, roughness: 0.8, area: 60 });
      const into = new Float64Array(5);
      runner.advance(depth / 300, into, 0);
      runner.advance(0, into, 0);
      return runner.stored;
    };
    expect(film(4.9e-5)).toBe(0);
    expect(film(5.3e-5)).toBeGreaterThan(0);
  });
});

describe('the surfaces of a yard', () => {
  const wet = (...list: readonly (readonly [step: number, depth: number])[]) => ({ index: list.map(([step]) => step), depth: list.map(([, depth]) => depth) });
  const flows = (runoff: SurfaceRunoff, catchment = 0): number[] => Array.from(runoff.active.flows[catchment]!.slice(0, 5 * runoff.active.count));
  const steps = (runoff: SurfaceRunoff): number[] => Array.from(runoff.active.index.slice(0, runoff.active.count));

  it('at once, where they are said to or are hard and answer within a minute of the strongest rain', () => {
    // Length at which a hard plane is in equilibrium after just a minute of 12 mm in five minutes, nine tenths of it running off.
    const rate = (0.012 / 300) * 0.9;
    let [low, high] = [0.1, 50];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (planeEquilibriumTime({ length: middle, slope: 0.02, roughness: 0.012 }, rate) < 60) low = middle;
      else high = middle;
    }
    const hard = (length: number, fields: Partial<Catchment> = {}): Catchment => surface({ response: 'kinematic', flowLength: length, slope: 0.02, roughness: 0.012, coefficient: 0.9, ...fields });
    const atOnce = (catchment: Catchment, strongest = 12): boolean => {
      const runoff = new SurfaceRunoff(yard(catchment), strongest);
      runoff.advance(wet([0, 12]), 1);
      return runoff.stored === 0;
    };
    expect([hard(low * 0.9999), hard(low * 1.0001), hard(low * 0.9999, { surface: 'lawn' }), hard(50, { response: 'instantaneous' }), hard(50, { area: 0 })].map((one) => atOnce(one))).toEqual([true, false, false, true, true]);
    expect([atOnce(hard(low * 0.9999), 11.9), atOnce(hard(50), 0), atOnce(hard(50, { coefficient: 0 }))]).toEqual([false, true, true]);
    const none = new SurfaceRunoff(yard({ ...hard(50), surface: 'lawn', area: 0 }), 12);
    none.advance(wet([0, 12]), 300);
    expect(none.active.count).toBe(1);
    const quick = new SurfaceRunoff(yard(hard(low * 0.9999)), 12);
    quick.advance(wet([3, 12]), 9);
    // 100 m2 under nine tenths of 12 mm in 300 s.
    expect([steps(quick), flows(quick)]).toEqual([[3], new Array(5).fill(expect.closeTo((0.0108 / 300) * 100, 12))]);
    // Lists grow when they are full, and not before.
    expect(quick.active.index).toHaveLength(1024);
    expect(quick.books).toEqual({ excess: expect.closeTo(1.08, 12), runoff: expect.closeTo(1.08, 12) });
  });
  it('after depression storage, which frees itself in dry time: e^(-t/8 h), and whole after a day', () => {
    const excessAfter = (dry: number): number => {
      const runoff = new SurfaceRunoff(yard(surface({ depressionStorage: 1 })), 5);
      runoff.advance(wet([0, 2], [1 + dry, 2]), 2 + dry);
      return runoff.books.excess * 10; // mm of 100 m2
    };
    expect([0, 1, 96, 287, 288, 400].map(excessAfter)).toEqual([0, 300, 28_800, 86_100, Infinity, Infinity].map((time) => expect.closeTo(1 + 2 - (1 - Math.exp(-time / 28_800)), 9) as number));
    // The same in two parts, and with rain too little to run off in between.
    const runoff = new SurfaceRunoff(yard(surface({ depressionStorage: 1 })), 5);
    runoff.advance(wet([0, 2]), 50);
    runoff.advance(wet([97, 0.1]), 98);
    expect([runoff.active.count, runoff.books.excess]).toEqual([0, expect.closeTo(0.1, 12)]);
    runoff.advance(wet([98, 2]), 99);
    expect([steps(runoff), runoff.books.excess * 10]).toEqual([[98], expect.closeTo(1 + 2 - (1 - Math.exp(-1) - 0.1), 9)]);
  });
  const lawn = surface({ surface: 'lawn', response: 'kinematic', flowLength: 12, slope: 0.02, roughness: 0.24, area: 120 });
  it('run on by themselves until the last film is gone, each as its plane does alone', () => {
    const runoff = new SurfaceRunoff(yard(surface({}), lawn), 5);
    runoff.advance(wet([4, 3], [6, 1]), 200);
    const runner = new PlaneRunner({ length: 12, slope: 0.02, roughness: 0.24, area: 120 });
    const alone: number[] = [];
    for (let step = 4; step === 4 || runner.total > 0; step += 1) {
      const five = new Float64Array(5);
      runner.advance((step === 4 ? 0.003 : step === 6 ? 0.001 : 0) / 300, five, 0);
      alone.push(...five);
    }
    expect(flows(runoff, 1)).toEqual(alone);
    expect(steps(runoff)).toEqual(Array.from({ length: alone.length / 5 }, (_, i) => 4 + i));
    expect(flows(runoff).map((flow, i) => (i < 5 ? flow / 1e-3 : i >= 10 && i < 15 ? flow * 3000 : flow))).toEqual(alone.map((_, i) => (i < 5 || (i >= 10 && i < 15) ? expect.closeTo(1, 9) : 0)));
    expect(runoff.stored).toBe(0);
    expect(runoff.books.excess).toBeCloseTo(0.4 + 0.48, 12);
    expect(runoff.books.runoff).toBeCloseTo(runoff.books.excess, 12);
  });
  it('are cut where a part ends, and go on in the next', () => {
    const [whole, parted] = [new SurfaceRunoff(yard(lawn), 5), new SurfaceRunoff(yard(lawn), 5)];
    whole.advance(wet([4, 3]), 200);
    parted.advance(wet([4, 3]), 6);
    expect(steps(parted)).toEqual([4, 5]);
    expect(parted.stored).toBeCloseTo(parted.books.excess - parted.books.runoff, 12);
    expect(parted.stored).toBeGreaterThan(0.01);
    const first = flows(parted);
    parted.advance(wet(), 200);
    expect([...first, ...flows(parted)]).toEqual(flows(whole));
    expect(parted.books.runoff).toBeCloseTo(parted.books.excess, 12);
    // Dry surfaces have no entry, and a dry plane nothing in that of another surface.
    const both = new SurfaceRunoff(yard(lawn, surface({ depressionStorage: 2 }), surface({})), 5);
    both.advance(wet([0, 3]), 500);
    both.advance(wet([600, 1]), 601);
    expect([flows(both, 1), flows(both, 2)]).toEqual([[0, 0, 0, 0, 0], new Array(5).fill(expect.closeTo(1 / 3000, 12))]);
    const spared = new SurfaceRunoff(yard({ ...lawn, depressionStorage: 2 }, surface({})), 5);
    spared.advance(wet([0, 3]), 500);
    spared.advance(wet([600, 1], [601, 1]), 602);
    expect([spared.active.count, flows(spared)]).toEqual([2, new Array(10).fill(0)]);
    // Nor what stood at its place in the part before.
    spared.advance(wet([1200, 70], [1201, 70]), 1700);
    const before = spared.active.count;
    spared.advance(wet([1800, 3], [2200, 1]), 2201);
    expect(spared.active.count).toBeLessThan(before);
    expect(flows(spared).slice(-5)).toEqual([0, 0, 0, 0, 0]);
  });
  it('in as many five minutes as there are', () => {
    const runoff = new SurfaceRunoff(yard(surface({}), surface({ area: 200 })), 5);
    runoff.advance(wet(...Array.from({ length: 2500 }, (_, i) => [2 * i, 0.3 + (i % 7)] as const)), 5000);
    expect(runoff.active.count).toBe(2500);
    expect(steps(runoff)).toEqual(Array.from({ length: 2500 }, (_, i) => 2 * i));
    for (const i of [0, 1023, 1024, 2047, 2048, 2499]) expect([flows(runoff)[5 * i + 4]! * 3000, flows(runoff, 1)[5 * i]! * 1500]).toEqual([0.3 + (i % 7), 0.3 + (i % 7)].map((depth) => expect.closeTo(depth, 9)));
  });
});

describe('what arrives in a record', () => {
  it('is what runs off, minute by minute, in lists that grow with the record', () => {
    const inflow = new RecordInflow(yard(surface({ drainsTo: { kind: 'lowSpot', id: 'L1' } })), 'bare');
    const made = (count: number, room: number, flow: number) => inflow.of({ count, index: new Int32Array(room).fill(count), flows: [new Float64Array(5 * room).fill(flow)] });
    const first = made(3, 8, 0.002);
    expect([first.count, first.index[0], Array.from(first.ponds[0]!.slice(0, 15))]).toEqual([3, 3, new Array(15).fill(0.002)]);
    expect(Array.from(made(2, 8, 0.003).ponds[0]!.slice(0, 10))).toEqual(new Array(10).fill(0.003));
    const grown = made(16, 16, 0.004);
    expect(Array.from(grown.ponds[0]!.slice(0, 80))).toEqual(new Array(80).fill(0.004));
  });
  const record = (step: 300 | 3600, depths: readonly number[]): RainRecord => {
    const all = new Float64Array(86_400 / step);
    all.set(depths);
    return { gauge: { id: 'X', name: 'X', latitude: null, longitude: null, distance: null }, step, startDay: 0, depths: all, accumulations: [], rejected: 0 };
  };
  it('comes of the rain in its way, the strongest five minutes deciding what answers at once', () => {
    const hard = surface({ response: 'kinematic', flowLength: 5, slope: 0.02, roughness: 0.012, depressionStorage: 0 });
    // 24 mm in an hour: 2 mm in each five minutes are too slow for a minute, the table's burst is not.
    const way = (name: 'uniform' | 'alternatingBlock') => {
      const rain = new WayRain(yard(hard), record(3600, [0, 24]), name);
      const { count } = rain.part(0, 24);
      return { count, error: rain.error };
    };
    const [even, nested] = [way('uniform'), way('alternatingBlock')];
    expect(even.count).toBeGreaterThan(12);
    expect(nested.count).toBe(12);
    for (const { error } of [even, nested]) expect(error).toBeLessThan(1e-12);
    // Half a millimeter in five minutes is slow where one would be quick: 60 s of equilibrium at three quarters.
    let [low, high] = [0.01, 50];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (planeEquilibriumTime({ length: middle, slope: 0.02, roughness: 0.012 }, 0.00075 / 300) < 60) low = middle;
      else high = middle;
    }
    const weak = new WayRain(yard({ ...hard, flowLength: low }), record(300, [0.5]), 'recorded');
    expect(weak.part(0, 1).count).toBe(1);
    expect(weak['surface'].stored).toBeGreaterThan(0);
    expect(weak.error).toBeLessThan(1e-12);
    // Only the burst asks for five minutes of the table.
    const coarse = changed(yard(hard), (copy) => {
      copy.rain.table.durations.shift();
      copy.rain.table.depths.shift();
    });
    expect(new WayRain(coarse, record(3600, [1]), 'ormsbee').error).toBe(0);
    expect(() => new WayRain(coarse, record(3600, [1]), 'alternatingBlock')).toThrow('rain.outsideTable');
    const own = new WayRain(yard(surface({})), record(300, [0, 3, 0, 1]), 'recorded');
    expect([own.error, own.stepOf(7), new WayRain(yard(), record(3600, []), 'uniform').stepOf(7)]).toEqual([0, 7, 84]);
    const { count, index } = own.part(0, 288);
    expect([count, index[0], index[1], own.error]).toEqual([2, 1, 3, expect.closeTo(0, 12)]);
    const books = own['surface'].books;
    books.excess = 0.5;
    books.runoff = 0.4;
    expect(own.error).toBeCloseTo(0.2, 12);
    books.runoff = 0.6;
    expect(own.error).toBeCloseTo(0.2, 12);
  });
});
