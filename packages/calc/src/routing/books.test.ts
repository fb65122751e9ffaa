/* oxlint-disable max-lines -- the examples of one file of the router, small and many, stand together */
import { describe, expect, it } from 'vitest';
import { backTo, basinStore, conduitOf, dryWell, junctionStore, lineStore, linkOf, pondStore, prism, steady, stores } from '../testing/prisms.ts';
import { Accuracy } from './accuracy.ts';
import { Ledger } from './ledger.ts';
import type { RoutingModel } from './model.ts';
import { Network } from './network.ts';
import { Pace } from './pace.ts';
import { Recorder } from './recorder.ts';
import type { StormInflow } from './run.ts';

/** Every kind of store and way once; what flows is set by hand. */
const yard = (): Network => new Network(stores({
  ponds: [pondStore({ loss: 1e-4, spillsTo: 1 }), pondStore({ id: 'L2' })], junctions: [junctionStore()], wells: [dryWell({ overflowsTo: 0, returns: backTo(0, 0.2) }), dryWell({ id: 'O2', returns: backTo(0, 0.25) })],
  basins: [basinStore({ lines: [lineStore({ volume: 0.05, runBack: 0.03 }), lineStore({ id: 'D2', returns: backTo(0, 0.5) })] })], links: [linkOf({ to: { kind: 'basin', index: 0 } }), linkOf({ id: 'CH2', returns: backTo(0, 0.1) })],
  conduits: [conduitOf()],
}));

describe('the books of a run', () => {
  // loss, spill L1, spill L2, two inlets, conduit, seepage O1, overflow O1, seepage O2, overflow O2, lid, two lines of the basin.
  const flows = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3];
  const booked = (): Ledger => {
    const network = yard();
    const ledger = new Ledger(network, []);
    network.flows.set(flows);
    network.inflow.set([2, 3, 0, 0, 0, 1]);
    network.layout.pumps[0]![0]!.delivers = false;
    ledger.add(10);
    return ledger;
  };

  it('say by which way every liter went', () => {
    const { stored, ...went } = booked().volumes();
    expect(went).toEqual({
      inflow: 60, spilled: 3, spilledBetween: 2, lost: 1, soaked: 16, overflowed: 18, drained: 11, lid: 11, pumped: 13,
      // A tenth of the second inlet, nothing of what runs over into a low spot, a quarter of what runs over at O2, half of the second line.
      returned: expect.closeTo(0.5 + 2.5 + 6.5, 12),
    });
    // What filled the first line and went no further.
    expect(stored).toBeCloseTo(12, 12);
  });
  it('count what only fills a line as standing in it', () => {
    const ledger = booked();
    expect([...ledger.lineContent[0]!]).toEqual([expect.closeTo(12.02, 12), expect.closeTo(0.05, 12)]);
    expect([ledger.filled[11], ledger.moved[11], ledger.filled[12]]).toEqual([12, 12, 0]);
    expect(ledger.runTime).toBe(10);
    ledger.add(5);
    expect([ledger.runTime, ledger.inflow]).toEqual([15, 90]);
  });
  it('know the first of all stores from what lies off the site', () => {
    const network = new Network(stores({
      ponds: [pondStore(), pondStore({ id: 'L2', spillsTo: 0 })], wells: [dryWell({ overflowsTo: 0, returns: backTo(0, 0.2) })], links: [linkOf({ pond: 1, to: { kind: 'pond', index: 0 } })],
    }));
    const ledger = new Ledger(network, []);
    // spill L1, spill L2, inlet, seepage, overflow.
    network.flows.set([0, 0.1, 0.2, 0, 0.3]);
    ledger.add(10);
    expect(ledger.volumes()).toMatchObject({ spilled: 0, spilledBetween: 1, drained: 0, overflowed: 3, returned: 0 });
    expect(ledger.massError()).toBe(0);
  });
  it('keep each basin and each line by itself', () => {
    const two = [lineStore(), lineStore({ id: 'D2' })];
    const network = new Network(stores({ basins: [basinStore({ units: [], lines: [] }), basinStore({ lines: two })] }));
    const ledger = new Ledger(network, []);
    network.layout.pumps[1]![1]!.delivers = false;
    network.flows.set([0, 0, 0, 0.002]);
    ledger.add(10);
    expect([ledger.runTime, ledger.filled[3], ledger.lineContent[1]![1]]).toEqual([10, expect.closeTo(0.02, 12), expect.closeTo(0.07, 12)]);
  });
  it('count no time in which no pump runs', () => {
    const network = yard();
    const ledger = new Ledger(network, []);
    network.flows[1] = 3;
    ledger.add(10);
    expect([ledger.runTime, ledger.volumes().spilledBetween]).toEqual([0, 30]);
  });
  it('keep the highest level of each store', () => {
    const network = yard();
    network.setLevel(1, 0.3);
    const ledger = new Ledger(network, []);
    expect([...ledger.maxLevel]).toEqual([0, 0.3, -1, -2, -2, -2]);
    network.setLevel(0, 0.2);
    network.setLevel(5, -1.5);
    ledger.add(1);
    network.setLevel(0, 0.1);
    network.setLevel(1, 0.25);
    ledger.add(1);
    expect([...ledger.maxLevel]).toEqual([0.2, 0.3, -1, -2, -2, -1.5]);
  });
  it('close to nothing where all that came went or stands', () => {
    const network = yard();
    network.setLevel(0, 0.1);
    const ledger = new Ledger(network, []);
    network.inflow[0] = 2;
    // 20 m3 come; 1 is lost, 4 leave at the first line, half of 4 run back from the second, 10 stand, and 3 are missing.
    network.flows[0] = 0.1;
    network.flows[11] = 0.4;
    network.flows[12] = 0.4;
    ledger.add(10);
    network.setLevel(1, 0.1);
    expect(ledger.volumes().stored).toBeCloseTo(10, 10);
    expect(ledger.massError()).toBeCloseTo(3 / 20, 10);
    // 6 m3 more stand there: then 3 came of nothing.
    network.setLevel(0, 0.16);
    expect(ledger.massError()).toBeCloseTo(3 / 20, 10);
  });
  it('measure a storm of some drops against ten liters, or against what stood where that is more', () => {
    const errorOf = (level: number, came: number): number => {
      const network = new Network(stores({ ponds: [pondStore()] }));
      network.setLevel(0, level);
      const ledger = new Ledger(network, []);
      network.inflow[0] = came;
      ledger.add(1);
      return ledger.massError();
    };
    // The pond is 100 m2 wide: at 2 mm it holds 200 liters.
    expect([errorOf(0, 1e-4), errorOf(0.00005, 1e-4), errorOf(0.002, 1e-4)]).toEqual([expect.closeTo(0.01, 12), expect.closeTo(0.01, 9), expect.closeTo(1e-4 / 0.2, 9)]);
    // From ten liters on it is measured against what came.
    expect(errorOf(0.002, 0.02)).toBeCloseTo(1, 9);
  });
  it('count the time over each sill, in part where a step begins or ends under it', () => {
    const network = yard();
    const ledger = new Ledger(network, [{ pond: 0, level: 0.2 }, { pond: 1, level: 0.1 }]);
    const step = (first: number, second: number): void => {
      network.setLevel(0, first);
      network.setLevel(1, second);
      ledger.add(10);
    };
    step(0.1, 0.1);
    expect([...ledger.secondsOver]).toEqual([0, 0]);
    step(0.3, 0.5);
    expect([...ledger.secondsOver]).toEqual([expect.closeTo(5, 9), 10]);
    step(0.4, 0.3);
    expect([...ledger.secondsOver]).toEqual([expect.closeTo(15, 9), 20]);
    step(0.1, 0.1);
    expect([...ledger.secondsOver]).toEqual([expect.closeTo(15 + 20 / 3, 9), 30]);
    step(0, 0);
    expect([...ledger.secondsOver]).toEqual([expect.closeTo(15 + 20 / 3, 9), 30]);
  });
});

describe('a run on the grid of its storm', () => {
  function recorder(): { readonly network: Network; readonly record: Recorder; readonly to: (level: number, from: number, dt: number) => void } {
    const network = yard();
    network.setLevel(0, 0);
    const record = new Recorder(network.model, network, 60, 4);
    return { network, record, to: (level, from, dt) => { network.setLevel(0, level); network.setLevel(5, -level - 1); record.add(from, dt); } };
  }

  it('has a series for each low spot, dry well and basin, and none for junctions', () => {
    const { record } = recorder();
    expect(Object.entries(record.samples).map(([kind, list]) => [kind, (list as Float64Array[]).map(({ length }) => length)])).toEqual([['pond', [4, 4]], ['basin', [4]], ['well', [4, 4]], ['pump', [4]]]);
  });
  it('has the level at the end of each of its steps, straight within a longer one', () => {
    const { record, to } = recorder();
    to(0.3, 0, 180);
    expect([...record.samples.pond[0]!]).toEqual([0.1, 0.2, 0.3, 0].map((level) => expect.closeTo(level, 12)));
    to(0.9, 180, 60);
    expect(record.samples.pond[0]![3]).toBeCloseTo(0.9, 12);
    expect([...record.samples.pond[1]!]).toEqual([0, 0, 0, 0]);
    expect([...record.samples.well[1]!]).toEqual([-2, -2, -2, -2]);
    expect(record.samples.basin[0]![3]).toBeCloseTo(-1.9, 12);
  });
  it('has the last of several shorter ones', () => {
    const { record, to } = recorder();
    to(0.1, 0, 20);
    to(0.4, 20, 30);
    expect(record.samples.pond[0]![0]).toBe(0);
    to(0.2, 50, 10);
    expect(record.samples.pond[0]![0]).toBeCloseTo(0.2, 12);
    // A step that ends in the next one tells the end of this one on its way.
    to(0.5, 60, 80);
    expect(record.samples.pond[0]![1]).toBeCloseTo(0.2 + 0.3 * 0.75, 12);
    expect(record.samples.pond[0]![2]).toBe(0);
    to(0.9, 140, 40);
    expect(record.samples.pond[0]![2]).toBeCloseTo(0.9, 12);
  });
  it('has the mean flow of all pumps of a basin, each part of a step by its length', () => {
    const { network, record, to } = recorder();
    network.flows[11] = 0.006;
    network.flows[12] = 0.003;
    to(0, 0, 20);
    network.flows[12] = 0;
    to(0, 20, 130);
    expect([...record.samples.pump[0]!]).toEqual([0.006 + 0.001, 0.006, 0.003, 0].map((flow) => expect.closeTo(flow, 12)));
  });
  it('knows of every store where its last step ended, and of every basin what is pumped', () => {
    const network = new Network(stores({ ponds: [pondStore(), pondStore({ id: 'L2' })], basins: [basinStore({ units: [], lines: [] }), basinStore()] }));
    const record = new Recorder(network.model, network, 60, 2);
    network.flows[4] = 0.002;
    network.setLevel(1, 0.3);
    record.add(0, 30);
    network.setLevel(1, 0.5);
    record.add(30, 60);
    expect([...record.samples.pond[1]!]).toEqual([expect.closeTo(0.4, 12), 0]);
    record.add(90, 0.5);
    expect([...record.samples.pump[1]!]).toEqual([expect.closeTo(0.002, 12), expect.closeTo(0.002 * (30.5 / 60), 12)]);
  });
  it('begins anywhere and ends with its grid', () => {
    const { network, record, to } = recorder();
    network.flows[11] = 0.006;
    to(0.2, 120, 500);
    expect([...record.samples.pump[0]!]).toEqual([0, 0, 0.006, 0.006]);
    expect([...record.samples.pond[0]!]).toEqual([0, 0, expect.closeTo(0.2 * (60 / 500), 12), expect.closeTo(0.2 * (120 / 500), 12)]);
  });
});

describe('lengths of steps', () => {
  /** A network that errs as it is told. */
  function steps(): { readonly errs: Float64Array; readonly accuracy: Accuracy } {
    const network = yard();
    const errs = new Float64Array(6);
    return { errs, accuracy: new Accuracy(Object.assign(Object.create(network) as Network, { errors: () => errs, rootOf: (error: number) => Math.sqrt(error) })) };
  }

  it('begin with 1.5 s and leave no short rest', () => {
    const { accuracy } = steps();
    expect([100, 3.1, 3, 2.9, 2, 1.5, 1, 0.2].map((left) => accuracy.next(left))).toEqual([1.5, 1.5, 1.5, 1.45, 1, 1.5, 1, 0.2]);
  });
  it('grow fourfold at most while nothing errs, and aim at eight tenths of what is allowed', () => {
    const { errs, accuracy } = steps();
    expect(accuracy.again(1.5)).toBe(0);
    accuracy.taken(1.5);
    expect(accuracy.next(100)).toBe(6);
    // Errors of a quarter of a micrometer of a low spot: 0.8 / sqrt(0.25).
    errs[0] = -0.25e-6;
    expect(accuracy.again(6)).toBe(0);
    accuracy.taken(6);
    expect(accuracy.next(100)).toBeCloseTo(9.6, 9);
  });
  it('are taken again where they err by more than twice as much, no shorter than a fifth and than 1.5 s', () => {
    const { errs, accuracy } = steps();
    errs[0] = 1.96e-6;
    expect(accuracy.again(50)).toBe(0);
    errs[0] = 4e-6;
    expect(accuracy.again(50)).toBeCloseTo(20, 9);
    errs[0] = 1;
    expect(accuracy.again(50)).toBeCloseTo(10, 9);
    expect(accuracy.again(5)).toBe(1.5);
    expect(accuracy.again(3)).toBe(1.5);
    expect(accuracy.again(2.9)).toBe(0);
    accuracy.taken(2.9);
    expect(accuracy.next(100)).toBe(1.5);
  });
  it('are weighed by the kind of store: micrometers in low spots and dry wells, 20 in basins, a millimeter in junctions', () => {
    [1e-6, 1e-6, 1e-3, 1e-6, 1e-6, 2e-5].forEach((allowed, store) => {
      const { errs, accuracy } = steps();
      errs[store] = 2.1 * allowed;
      expect(accuracy.again(60)).toBeGreaterThan(0);
      errs[store] = 1.9 * allowed;
      expect(accuracy.again(60)).toBe(0);
    });
  });
  it('are as short as the worst store asks for', () => {
    const { errs, accuracy } = steps();
    errs.set([1e-6, -4e-6, 1e-9, 0, 2e-6, 0]);
    expect(accuracy.again(50)).toBeCloseTo(20, 9);
  });
  it('shrink after a step that was good but not as good as wanted', () => {
    const { errs, accuracy } = steps();
    accuracy.again(1.5);
    accuracy.taken(1.5);
    accuracy.again(6);
    accuracy.taken(6);
    errs[0] = 1.5625e-6;
    expect(accuracy.again(20)).toBe(0);
    accuracy.taken(20);
    expect(accuracy.next(100)).toBeCloseTo(20 * (0.8 / 1.25), 9);
  });
  it('do not shrink by a step that an event has cut short', () => {
    const { accuracy } = steps();
    accuracy.again(1.5);
    accuracy.taken(1.5);
    accuracy.again(6);
    accuracy.taken(0.5);
    expect(accuracy.next(100)).toBe(6);
    accuracy.again(6);
    accuracy.taken(5);
    expect(accuracy.next(100)).toBe(20);
  });
});

describe('steps that are taken together', () => {
  const minutes = (flows: readonly number[]): Float64Array => Float64Array.from(flows);
  /** 100 m2 of low spot and 1 m2 of basin, with the storm of one catchment. */
  function paced(flows: readonly number[], level: number, basin: readonly number[] = flows.map(() => 0), fields: Partial<RoutingModel> = {}): Pace {
    const network = new Network(stores({ ponds: [pondStore()], basins: [basinStore()], ...fields }));
    network.setLevel(0, level);
    network.setLevel(network.layout.firstBasin, -1.5);
    const inflow: StormInflow = { step: 60, steps: flows.length, ponds: [minutes(flows)], basins: [minutes(basin)] };
    return new Pace(network, inflow, [0, flows.length]);
  }

  it('are all that are alike, sixty at most, and none beyond the end', () => {
    const same = paced(Array<number>(200).fill(0.01), 0.2);
    expect([same.together(0, 200), same.together(0, 7), same.together(150, 200), same.together(199, 200), same.together(100, 107)]).toEqual([60, 7, 50, 1, 7]);
  });
  it('move no level by more than a hair in strong rain: a quarter of their range over their time', () => {
    // 3 micrometers of 100 m2 are 0.3 liters: 0.25 * range * 2 * 60 s.
    const strong = (range: number): number => paced([0.01, 0.01 + range, 0.01 + range], 0.2).together(0, 3);
    expect([strong(0.99e-5), strong(1.01e-5), strong(0.66e-5)]).toEqual([2, 1, 3]);
    expect(paced([0.01, 0.01 - 0.99e-5, 0.01 - 0.99e-5], 0.2).together(0, 3)).toBe(2);
    // Down and up again the range is that of all.
    expect(paced([0.01, 0.01 - 0.6e-5, 0.01 + 0.6e-5], 0.2).together(0, 3)).toBe(2);
  });
  it('may err by 20 micrometers in quiet hours, under a tenth of the strongest rain', () => {
    const quiet = (range: number, level: number): number => paced([1e-3, 1e-3 + range, 0.02, 0.02], level, [0, 0, 0, 0], { basins: [basinStore({ pump: { id: 'M1', flow: steady(0.01), lineVolume: 0, runBack: 0 } })] }).together(0, 4);
    expect([quiet(6.6e-5, 0.2), quiet(6.7e-5, 0.2)]).toEqual([2, 1]);
    // Just under a tenth is quiet, just over it is not; the strongest minute stands in the middle.
    const share = (of: number): number => paced([of * 0.02, of * 0.02 + 3e-5, 0.02, 1e-3], 0.2, [0, 0, 0, 0], { basins: [basinStore({ pump: { id: 'M1', flow: steady(0.01), lineVolume: 0, runBack: 0 } })] }).together(0, 4);
    expect([share(0.095), share(0.105)]).toEqual([2, 1]);
    // Where no water stands, a twentieth of the inflow is alike as well.
    const dry = (range: number, level: number): number => paced([1.9e-3, 1.9e-3 + range, 0.02, 0.02], level, [0, 0, 0, 0], { basins: [basinStore({ pump: { id: 'M1', flow: steady(0.01), lineVolume: 0, runBack: 0 } })] }).together(0, 4);
    expect([dry(9e-5, 0.0009), dry(9e-5, 0.00105), dry(1.1e-4, 0.0009)]).toEqual([2, 1, 1]);
  });
  it('are not quiet where more comes than a pump keeps up with, or where there is none', () => {
    const rain = [1e-3, 1.05e-3, 0.02, 0.02];
    const pump = (flow: number): Partial<RoutingModel> => ({ basins: [basinStore({ pump: { id: 'M1', flow: steady(flow), lineVolume: 0, runBack: 0 } })] });
    expect([pump(0.01), pump(0.00125), pump(0.0013125 + 1e-9)].map((fields) => paced(rain, 0.2, [0, 0, 0, 0], fields).together(0, 4))).toEqual([2, 1, 2]);
    expect(paced(rain, 0.2).together(0, 4)).toBe(1);
    // What comes straight into the basin counts with it.
    expect(paced(rain, 0.2, [0.008, 0.008, 0, 0], pump(0.01)).together(0, 4)).toBe(1);
  });
  it('end where rain grows strong', () => {
    const flows = [1e-3, 1e-3, 0.02, 0.02];
    const fields: Partial<RoutingModel> = { basins: [basinStore({ pump: { id: 'M1', flow: steady(1), lineVolume: 0, runBack: 0 } })], ponds: [pondStore({ storage: prism(0, 1, 1e7) })] };
    expect(paced(flows, 0.2, [0, 0, 0, 0], fields).together(0, 4)).toBe(2);
    expect(paced(flows, 0.2, [0, 0, 0, 0], fields).together(2, 4)).toBe(2);
  });
  it('may err by 0.2 mm in a basin, and between its floats by a twentieth of what comes', () => {
    const none = [0, 0, 0, 0];
    const fields = (level: number): Partial<RoutingModel> => ({ basins: [basinStore({ onLevel: level, pump: { id: 'M1', flow: steady(1), lineVolume: 0, runBack: 0 } })] });
    const direct = (range: number, on: number): number => paced(none, 0, [1e-3, 1e-3 + range, 1e-3 + range, 0], fields(on)).together(0, 4);
    // 0.2 liters: 0.25 * range * 2 * 60 s.
    expect([direct(6.6e-6, -1.6), direct(6.8e-6, -1.6), direct(4.9e-5, -1.6), direct(4.9e-5, -1), direct(5.4e-5, -1), direct(4.9e-5, -1.5)]).toEqual([2, 1, 1, 3, 1, 3]);
    // The second of two basins by its own float.
    const pump = { id: 'M1', flow: steady(1), lineVolume: 0, runBack: 0 };
    const two = new Network(stores({ basins: [basinStore({ pump, onLevel: -2 }), basinStore({ pump })] }));
    two.setLevel(0, -1.5);
    two.setLevel(1, -1.5);
    const flows = minutes([1e-3, 1e-3 + 4.9e-5, 1e-3, 0]);
    expect(new Pace(two, { step: 60, steps: 4, ponds: [], basins: [minutes(none), flows] }, [0, 4]).together(0, 4)).toBe(3);
  });
  it('weigh junctions as passing on what comes, wet or not, and dry wells as low spots', () => {
    const network = (kind: 'junctions' | 'wells', range: number, level: number): number => {
      const item = new Network(stores({ junctions: [junctionStore()], wells: [dryWell()] }));
      item.setLevel(kind === 'junctions' ? 0 : 1, level);
      const flows = minutes([1e-3, 1e-3 + range, 1e-3 + range, 0.2]);
      const none = minutes([0, 0, 0, 0]);
      return new Pace(item, { step: 60, steps: 4, ponds: [], basins: [], junctions: [kind === 'junctions' ? flows : none], wells: [kind === 'wells' ? flows : none] }, [0, 4]).together(0, 4);
    };
    // In strong rain 0.2 mm of 1 m2.
    const strong = new Network(stores({ junctions: [junctionStore()] }));
    const steep = minutes([1e-3, 1e-3 + 6e-6]);
    expect(new Pace(strong, { step: 60, steps: 2, ponds: [], basins: [], junctions: [steep] }, [0, 2]).together(0, 2)).toBe(2);
    // A junction of 1 m2: a twentieth, whatever stands in it. A dry well of 4 m2: 80 cubic centimeters, and a twentieth where it is dry.
    expect([network('junctions', 4.9e-5, 0.5), network('junctions', 5.4e-5, 0.5)]).toEqual([3, 1]);
    expect([network('wells', 2.6e-6, -1.5), network('wells', 2.7e-6, -1.5), network('wells', 4.9e-5, -1.9995), network('wells', 4.9e-5, -1.9985)]).toEqual([2, 1, 3, 1]);
  });
  it('look at the window of a run only', () => {
    const flows = minutes([0.02, 1e-3, 1.03e-3, 0.0104]);
    const pace = (window: readonly [number, number]): number => {
      const network = new Network(stores({ ponds: [pondStore()] }));
      network.setLevel(0, 0.2);
      return new Pace(network, { step: 60, steps: 4, ponds: [flows], basins: [] }, window).together(1, 3);
    };
    expect([pace([0, 4]), pace([1, 4]), pace([1, 3])]).toEqual([2, 2, 1]);
  });
});
