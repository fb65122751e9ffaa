/* oxlint-disable max-lines -- the examples of one file of the router, small and many, stand together */
import { describe, expect, it } from 'vitest';
import { basinStore, dryWell, lineStore, linkOf, pondStore, prism, pumpUnit, steady, stores } from '../testing/prisms.ts';
import { film } from './fluxes.ts';
import { FlowTable, LevelTable } from './levelTable.ts';
import { Network } from './network.ts';
import { maskOf, restLevel, setTwin } from './pumpModes.ts';
import { runStorm, type RunOptions, type StormInflow } from './run.ts';
import type { RoutingModel } from './model.ts';

/** Minutes of steady flow into the basin [m3/s]. */
const into = (flows: readonly number[], ponds = 0): StormInflow =>
  ({ step: 60, steps: flows.length, ponds: Array.from({ length: ponds }, () => new Float64Array(flows.length)), basins: [Float64Array.from(flows)] });
const steadyInflow = (flow: number, minutes: number): StormInflow => into(Array<number>(minutes).fill(flow));
const pumped = (fields: Parameters<typeof basinStore>[0] = {}): RoutingModel => stores({ basins: [basinStore(fields)] });
const times = (model: RoutingModel, inflow: StormInflow, options: Partial<RunOptions> = {}): [string, number, number][] =>
  runStorm(model, inflow, { mode: 'real', ...options }).events.map(({ kind, unit, time }) => [kind, unit, time]);

describe('a pump between its floats', () => {
  // 1 m2, off at -1.5, on at -1: half a cubic meter. 1 l/s comes, 2 l/s are pumped: 500 s to fill and 500 s to empty.
  it('starts and stops when its basin comes to their levels', () => {
    const events = times(pumped(), steadyInflow(0.001, 60));
    expect(events.map(([kind]) => kind)).toEqual(['pumpOn', 'pumpOff', 'pumpOn', 'pumpOff', 'pumpOn', 'pumpOff', 'pumpOn']);
    events.forEach(([, unit, time], k) => {
      expect(unit).toBe(0);
      expect(Math.abs(time - 500 * (k + 1))).toBeLessThan(0.1);
    });
  });
  it('and moves what came in, less what stands in the basin', () => {
    const run = runStorm(pumped(), steadyInflow(0.001, 50), { mode: 'real' });
    expect(run.inflowVolume).toBeCloseTo(3, 12);
    expect(run.volumes).toMatchObject({ inflow: expect.closeTo(3, 9), pumped: expect.closeTo(3, 3), stored: expect.closeTo(0, 3) });
    expect(Math.abs(run.runTime - 1500)).toBeLessThan(0.2);
    expect(run.maxBasin[0]).toBeGreaterThanOrEqual(-1);
    expect(run.maxBasin[0]).toBeLessThan(-1 + 2e-5);
    expect(run.massError).toBeLessThan(1e-9);
    expect(run.samples).toBeNull();
  });
  it('of two starts alone, and the standby where that is not enough', () => {
    // The second one starts at -0.8: 3 l/s come, so 1 l/s is left over from -1 on: 250 s to fill, 200 s to the standby's float.
    const two = pumped({ units: [pumpUnit(), pumpUnit({ id: 'M2', startLevel: -0.8 })], lines: [lineStore({ units: [0, 1] })] });
    const events = times(two, steadyInflow(0.003, 18));
    expect(events.map(([kind, unit]) => `${kind} ${unit}`)).toEqual(['pumpOn 0', 'pumpOn 1', 'pumpOff 0', 'pumpOff 1']);
    // Then both take 4 l/s, down 0.7 m at 1 l/s, and stop together.
    [0.5 / 0.003, 0.5 / 0.003 + 200, 0.5 / 0.003 + 900, 0.5 / 0.003 + 900].forEach((time, k) => { expect(Math.abs(events[k]![2] - time)).toBeLessThan(0.2); });
  });
  it('on two lines pumps into both', () => {
    const two = pumped({ units: [pumpUnit(), pumpUnit({ id: 'M2', startLevel: -0.8 })], lines: [lineStore({ units: [0] }), lineStore({ id: 'D2', units: [1] })] });
    expect(times(two, steadyInflow(0.003, 18)).map(([kind, unit]) => `${kind} ${unit}`)).toEqual(['pumpOn 0', 'pumpOn 1', 'pumpOff 0', 'pumpOff 1']);
  });
  it('stands still without power, and starts when it comes back', () => {
    const events = times(pumped(), steadyInflow(0.001, 60), { outage: [620, 1500] });
    // Power goes at 620 s, in the eleventh minute: minutes whose beginning lies within the outage are without it.
    expect(events.slice(0, 3).map(([kind]) => kind)).toEqual(['pumpOn', 'pumpOff', 'pumpOn']);
    [500, 660, 1500].forEach((time, k) => { expect(Math.abs(events[k]![2] - time)).toBeLessThan(0.1); });
    // 1 m3/1000 s: 1.5 m3 have come by then, and 0.32 m3 are gone.
    expect(runStorm(pumped(), steadyInflow(0.001, 60), { mode: 'real', outage: [620, 1500] }).maxBasin[0]).toBeCloseTo(-1.5 + 1.5 - 0.32, 3);
  });
  it('is the same step by step on whole minutes', () => {
    const even = runStorm(pumped(), steadyInflow(0.001, 51), { mode: 'real', pace: 'even' });
    expect(even.events.map(({ kind }) => kind)).toEqual(['pumpOn', 'pumpOff', 'pumpOn', 'pumpOff', 'pumpOn', 'pumpOff']);
    even.events.forEach(({ time, basin }, k) => {
      expect(basin).toBe(0);
      expect(Math.abs(time - 500 * (k + 1))).toBeLessThan(0.1);
    });
    // Fifty-one minutes and a part more for each start and stop within one.
    expect(even.effort).toEqual({ steps: expect.any(Number) as number, failed: 0 });
    expect(even.effort.steps).toBeGreaterThanOrEqual(51);
    expect(even.effort.steps).toBeLessThanOrEqual(63);
  });
  it('is one of several basins, each by itself', () => {
    const two = stores({ basins: [basinStore(), basinStore({ id: 'B2', onLevel: -1.25, units: [pumpUnit({ startLevel: -1.25 })] })] });
    const inflow: StormInflow = { step: 60, steps: 20, ponds: [], basins: [new Float64Array(20), new Float64Array(20).fill(0.001)] };
    const { events } = runStorm(two, inflow, { mode: 'real' });
    expect(events.map(({ basin, kind }) => [basin, kind])).toEqual([[1, 'pumpOn'], [1, 'pumpOff'], [1, 'pumpOn'], [1, 'pumpOff']]);
    events.forEach(({ time }, k) => { expect(Math.abs(time - 250 * (k + 1))).toBeLessThan(0.1); });
  });
  it('gives less as its basin falls: h = h0 e^(-t/1000)', () => {
    // 1 l/s for each meter that the basin stands over -2; 0.4 m3 come within the first minute, and the pump starts at -1.2 after 45 s.
    const table = FlowTable.tabulate(-3, 3, 6, (head) => 0.001 * (2 - head));
    const falling = lineStore({ liftLevel: 0, flow: () => table, filling: () => table });
    const events = times(pumped({ onLevel: -1.2, units: [pumpUnit({ startLevel: -1.2 })], lines: [falling] }), into([0.4 / 60, ...Array<number>(20).fill(0)]));
    expect(events.map(([kind]) => kind)).toEqual(['pumpOn', 'pumpOff']);
    expect(Math.abs(events[0]![2] - 45)).toBeLessThan(0.1);
    // dh/dt = 1/150 - h/1000 for 15 s from 0.8 m, then down to 0.5 m.
    const top = 1000 / 150 + (0.8 - 1000 / 150) * Math.exp(-0.015);
    expect(Math.abs(events[1]![2] - (60 + 1000 * Math.log(top / 0.5)))).toBeLessThan(1);
  });
});

describe('a line without a check valve', () => {
  // 0.2 m3 of it run back at every stop, 0.1 m3 stay; the pump fills it at 4 l/s and pumps 2 l/s through it.
  const line = lineStore({ volume: 0.3, runBack: 0.2, flow: () => steady(0.002), filling: () => steady(0.004) });
  const open = pumped({ lines: [line] });
  /** The second of two basins, of 2 m2, its line the second of two. */
  const second = (fields: Parameters<typeof basinStore>[0] = {}): RoutingModel => stores({
    ponds: [pondStore()], basins: [basinStore({ units: [], lines: [] }), basinStore({ storage: prism(-2, 1, 2), lines: [lineStore({ id: 'D0', units: [] }), line], ...fields })],
  });
  const minute = (volume: number, minutes: number): StormInflow => {
    const flows = new Float64Array(minutes);
    flows[0] = volume / 60;
    return { step: 60, steps: minutes, ponds: [new Float64Array(minutes)], basins: [new Float64Array(minutes), flows] };
  };

  it('is filled before it delivers, and falls back into its basin at the stop', () => {
    const run = runStorm(second(), minute(1, 30), { mode: 'real', record: true });
    // On as 1 m3 has come, at 60 s; 0.2 m3 at 4 l/s fill the line by 110 s; 0.8 m3 more at 2 l/s to the stop at 510 s, and 0.2 m3 fall back.
    expect(run.events.map(({ kind, basin }) => [kind, basin])).toEqual([['pumpOn', 1], ['pumpOff', 1]]);
    [60, 510].forEach((time, k) => { expect(Math.abs(run.events[k]!.time - time)).toBeLessThan(0.1); });
    expect(run.volumes.pumped).toBeCloseTo(0.8, 4);
    expect(run.volumes.stored).toBeCloseTo(0.2, 4);
    expect(run.samples!.basin[1]![29]).toBeCloseTo(-1.4, 4);
    expect(run.maxPond).toEqual([0]);
    expect(run.massError).toBeLessThan(1e-9);
    expect(Math.abs(run.runTime - 450)).toBeLessThan(0.2);
  });
  it('runs back once all of its pumps stand', () => {
    // Two of 2 l/s fill 0.2 m3 by 110 s and pump 0.2 m3 by 160 s, when the battery is empty; 0.6 m3 are left to the other one: 300 s.
    const two = lineStore({ volume: 0.3, runBack: 0.2, units: [0, 1] });
    const run = runStorm(second({ units: [pumpUnit(), pumpUnit({ id: 'M2', battery: true, energy: 30_000, inputPower: 300 })], lines: [two] }), minute(1, 30), { mode: 'real', record: true });
    expect(run.events.map(({ kind, unit }) => `${kind} ${unit}`)).toEqual(['pumpOn 0', 'pumpOn 1', 'pumpOff 1', 'pumpOff 0']);
    [60, 60, 160, 460].forEach((time, k) => { expect(Math.abs(run.events[k]!.time - time)).toBeLessThan(0.1); });
    expect(run.samples!.basin[1]![29]).toBeCloseTo(-1.4, 4);
  });
  it('lets a twin rest as high as it runs back, and pump the greater of both from the off level on', () => {
    expect(restLevel(open.basins[0]!)).toBe(-1);
    expect(restLevel({ ...open.basins[0]!, lines: [{ ...line, runBack: 0.7 }] })).toBeCloseTo(-0.8, 12);
    const network = new Network(open);
    setTwin(network, 'offTwin', () => true);
    const [[off]] = network.layout.pumps as [[Network['layout']['pumps'][0][0]]];
    expect(off.stages.map(({ start }) => start)).toEqual([-1.5 - film]);
    expect(off.stages[0]!.table.flow(1)).toBe(0.004);
    setTwin(network, 'onTwin', () => true);
    expect(off.stages.map(({ start }) => start)).toEqual([-1]);
    expect(off.stages[0]!.table.flow(1)).toBe(0.002);
    // One that runs back nothing is rated full, however much more it took while it filled.
    const shut = new Network(pumped({ lines: [{ ...line, runBack: 0 }] }));
    setTwin(shut, 'offTwin', () => true);
    expect(shut.layout.pumps[0]![0]!.stages[0]!.table.flow(1)).toBe(0.002);
    const other = new Network(second());
    setTwin(other, 'onTwin', () => true);
    expect(other.thresholds).toEqual([[], [], [-1]]);
    const higher = new Network(pumped({ lines: [{ ...line, runBack: 0.7 }] }));
    setTwin(higher, 'onTwin', () => true);
    expect(higher.layout.pumps[0]![0]!.stages.map(({ start }) => start)).toEqual([expect.closeTo(-0.8, 12)]);
  });
});

describe('the twins of a set of pumps', () => {
  const units = [pumpUnit(), pumpUnit({ id: 'M2', startLevel: -0.8 }), pumpUnit({ id: 'M3', startLevel: -1 })];
  const set = stores({ ponds: [pondStore()], basins: [basinStore({ units, lines: [lineStore({ units: [0, 1, 2] })] })] });
  const stagesOf = (mode: 'offTwin' | 'onTwin', available: (unit: number) => boolean = () => true): [number, number][] => {
    const network = new Network(set);
    setTwin(network, mode, (_, unit) => available(unit));
    const stages = network.layout.pumps[0]![0]!.stages.map(({ start, table }): [number, number] => [start, table.flow(0)]);
    expect(network.thresholds).toEqual([[], stages.map(([start]) => start)]);
    return stages;
  };

  it('run all together from the off level on, or each from its own start level', () => {
    expect(stagesOf('offTwin')).toEqual([[-1.5 - film, 0.006]]);
    expect(stagesOf('onTwin')).toEqual([[-1, 0.004], [-0.8, 0.006]]);
  });
  it('are those that have power', () => {
    expect(stagesOf('offTwin', (unit) => unit === 1)).toEqual([[-1.5 - film, 0.002]]);
    expect(stagesOf('onTwin', (unit) => unit > 0)).toEqual([[-1, 0.002], [-0.8, 0.004]]);
    expect([stagesOf('offTwin', () => false), stagesOf('onTwin', () => false)]).toEqual([[], []]);
  });
  it('have an edge for each start of any line, lowest first', () => {
    const two = new Network(stores({ basins: [basinStore({ units, lines: [lineStore({ units: [1] }), lineStore({ id: 'D2', units: [0, 2] })] })] }));
    setTwin(two, 'onTwin', () => true);
    expect(two.thresholds).toEqual([[-1, -0.8]]);
  });
  it('are told by bits', () => {
    expect([[], [0], [2], [0, 2], [0, 1, 2]].map((running) => maskOf(lineStore({ units: [5, 6, 7] }), (unit) => running.includes(unit - 5)))).toEqual([0, 1, 4, 5, 7]);
  });
  it('bound the real pump', () => {
    const levels = (['offTwin', 'real', 'onTwin'] as const).map((mode) => runStorm(pumped(), steadyInflow(0.001, 60), { mode }).maxBasin[0]!);
    // The off twin holds the basin at its off level, the on twin at its on level from the start.
    [-1.5, -1, -1].forEach((level, k) => { expect(Math.abs(levels[k]! - level)).toBeLessThan(3e-5); });
    const held = runStorm(pumped(), steadyInflow(0.001, 60), { mode: 'onTwin' });
    expect(held.volumes.pumped).toBeCloseTo(3.6, 4);
    expect(held.events).toEqual([]);
  });
});

describe('a pump on a battery', () => {
  // 300 W and 25.5 kJ: 85 s.
  const battery = (fields: Parameters<typeof pumpUnit>[0] = {}): RoutingModel =>
    pumped({ units: [pumpUnit(), pumpUnit({ id: 'M2', battery: true, energy: 25_500, inputPower: 300, ...fields })], lines: [lineStore({ units: [0] }), lineStore({ id: 'D2', units: [1] })] });
  const dark: RunOptions = { mode: 'real', outage: [0, 1e9] };

  it('runs without power until it is empty, and never again', () => {
    const events = times(battery(), steadyInflow(0.001, 30), dark);
    expect(events.map(([kind, unit]) => `${kind} ${unit}`)).toEqual(['pumpOn 1', 'pumpOff 1']);
    [500, 585].forEach((time, k) => { expect(Math.abs(events[k]![2] - time)).toBeLessThan(0.1); });
    const even = times(battery(), steadyInflow(0.001, 30), { ...dark, pace: 'even' });
    [500, 585].forEach((time, k) => { expect(Math.abs(even[k]![2] - time)).toBeLessThan(0.1); });
  });
  it('that draws nothing runs on', () => {
    const events = times(battery({ inputPower: 0 }), steadyInflow(0.001, 40), dark);
    expect(events.map(([kind, unit]) => `${kind} ${unit}`)).toEqual(['pumpOn 1', 'pumpOff 1', 'pumpOn 1', 'pumpOff 1']);
  });
  it('is empty in a twin as well after what it has pumped', () => {
    for (const mode of ['offTwin', 'onTwin'] as const) {
      // 2 l/s come: both twins pump all of it for 85 s and up to a minute more, then the basin fills.
      const run = runStorm(battery(), steadyInflow(0.002, 10), { ...dark, mode });
      expect(run.volumes.pumped).toBeGreaterThan(0.169);
      expect(run.volumes.pumped).toBeLessThan(0.295);
      expect(run.maxBasin[0]).toBeCloseTo((mode === 'onTwin' ? -1 : -1.5) + 1.2 - run.volumes.pumped, 3);
    }
  });
  it('lasts longer where it pumps a part of the time', () => {
    // 1 l/s come and 2 l/s would be pumped: half of the time.
    const run = runStorm(battery(), steadyInflow(0.001, 20), { ...dark, mode: 'onTwin', pace: 'even' });
    // 170 s of 1 l/s, up to the end of the minute.
    expect(run.volumes.pumped).toBeCloseTo(0.18, 4);
  });
  it('is spared while another pump of its line does the work', () => {
    // 3 l/s come: the mains pump runs from 167 s on, the battery from 367 s on for 85 s.
    const one = pumped({ units: [pumpUnit(), pumpUnit({ id: 'M2', startLevel: -0.8, battery: true, energy: 25_500, inputPower: 300 })], lines: [lineStore({ units: [0, 1] })] });
    const events = times(one, steadyInflow(0.003, 10));
    expect(events.map(([kind, unit]) => `${kind} ${unit}`)).toEqual(['pumpOn 0', 'pumpOn 1', 'pumpOff 1']);
    [500 / 3, 500 / 3 + 200, 500 / 3 + 285].forEach((time, k) => { expect(Math.abs(events[k]![2] - time)).toBeLessThan(0.1); });
  });
  it('counts in one basin beside others on the mains', () => {
    const one = battery().basins[0]!;
    const model = stores({ basins: [basinStore({ id: 'B0' }), { ...one, id: 'B9' }] });
    const inflow: StormInflow = { step: 60, steps: 30, ponds: [], basins: [new Float64Array(30), new Float64Array(30).fill(0.001)] };
    expect(runStorm(model, inflow, dark).events.map(({ basin, unit, kind }) => [basin, unit, kind])).toEqual([[1, 1, 'pumpOn'], [1, 1, 'pumpOff']]);
  });
  it('begins each run full', () => {
    const model = battery();
    expect(times(model, steadyInflow(0.001, 30), dark)).toEqual(times(model, steadyInflow(0.001, 30), dark));
  });
});

describe('a storm through a yard', () => {
  const rain = (flows: readonly number[]): StormInflow => ({ step: 60, steps: flows.length, ponds: [Float64Array.from(flows)], basins: [] });

  it('fills a low spot in order, and counts the time over a sill', () => {
    // 0.1 m3/s for 10 minutes onto 100 m2: 0.6 m, straight; over 0.45 m for the last 150 s, then for good.
    const run = runStorm(stores({ ponds: [pondStore()] }), rain([...Array<number>(10).fill(0.1), 0, 0]), { mode: 'real', sills: [{ pond: 0, level: 0.45 }], record: true });
    expect(run.maxPond).toEqual([expect.closeTo(0.6, 9)]);
    expect(run.secondsOverSill).toEqual([expect.closeTo(150 + 120, 6)]);
    expect([...run.samples!.pond[0]!]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 10, 10].map((k) => expect.closeTo(0.06 * k, 9)));
    expect(run.volumes).toMatchObject({ inflow: expect.closeTo(60, 9), stored: expect.closeTo(60, 9) });
    expect([run.maxBasin, run.maxWell, run.wells]).toEqual([[], [], []]);
  });
  it('may be run through a window of its steps only', () => {
    const run = runStorm(stores({ ponds: [pondStore()] }), rain([0.1, 0.1, 0.2, 0.1, 0.1]), { mode: 'real', window: [1, 3] });
    expect(run.inflowVolume).toBeCloseTo(18, 12);
    expect(run.maxPond[0]).toBeCloseTo(0.18, 9);
  });
  it('goes where each of its series says', () => {
    const model = stores({ ponds: [pondStore(), pondStore({ id: 'L2' })], junctions: [{ id: 'J1', storage: prism(-1, 1, 1) }], wells: [dryWell({ rate: 0 })], basins: [basinStore({ units: [], lines: [] })] });
    const minutes = (...flows: number[]): Float64Array => Float64Array.from(flows);
    const run = runStorm(model, {
      step: 60, steps: 2, ponds: [minutes(1, 2), minutes(0.5, 0.1)], junctions: [minutes(0.001, 0.002)], wells: [minutes(0.01, 0.02)], basins: [minutes(0.001, 0.003)],
    }, { mode: 'real', pace: 'even' });
    expect(run.maxPond).toEqual([expect.closeTo(1.8, 9), expect.closeTo(0.36, 9)]);
    expect(run.maxWell).toEqual([expect.closeTo(-2 + 1.8 / 4, 9)]);
    expect(run.maxBasin).toEqual([expect.closeTo(-1.5 + 0.24, 9)]);
    expect(run.effort).toEqual({ steps: 2, failed: 0 });
    expect(run.inflowVolume).toBeCloseTo(60 * (3 + 0.6 + 0.003 + 0.03 + 0.004), 9);
  });
  it('may leave junctions and dry wells without any of their own', () => {
    const model = stores({ ponds: [pondStore()], wells: [dryWell()], junctions: [{ id: 'J1', storage: prism(-1, 1, 1) }] });
    expect(runStorm(model, rain([0.1, 0.1]), { mode: 'real' }).maxPond[0]).toBeCloseTo(0.12, 9);
  });
  it('tells what each dry well soaked and what ran over', () => {
    const model = stores({ wells: [dryWell({ crestLevel: 0 }), dryWell({ id: 'O2', rate: 2e-5 })] });
    const flow = (value: number): Float64Array => new Float64Array(30).fill(value);
    const run = runStorm(model, { step: 60, steps: 30, ponds: [], basins: [], wells: [flow(0.02), flow(0)] }, { mode: 'real' });
    const [first, second] = run.wells;
    // 36 m3 less what stands in 4 m2 and what soaks through 24 m2 at 1e-5 m/s for half an hour.
    expect(first!.soaked).toBeLessThan(24e-5 * 1800);
    expect(first!.soaked).toBeGreaterThan(0.9 * 24e-5 * 1800 * (1 - 8 / 36));
    expect(first!.overflowed).toBeCloseTo(36 - first!.soaked - 4 * (run.maxWell[0]! + 2), 2);
    expect(second).toEqual({ soaked: 0, overflowed: 0 });
    expect(run.volumes).toMatchObject({ soaked: expect.closeTo(first!.soaked, 9), overflowed: expect.closeTo(first!.overflowed, 9) });
  });
  it('takes like minutes together, and each of them alone on an even grid', () => {
    const model = stores({ ponds: [pondStore()] });
    const alike = Array<number>(60).fill(0.01);
    const [fitted, even] = [runStorm(model, rain(alike), { mode: 'real' }), runStorm(model, rain(alike), { mode: 'real', pace: 'even' })];
    expect(even.effort.steps).toBe(60);
    // 1.5, 6, 24, 96 s and so on.
    expect(fitted.effort.steps).toBeLessThan(10);
    expect(fitted.maxPond[0]).toBeCloseTo(even.maxPond[0]!, 9);
    // Also where the power goes for a minute at the beginning: three beginnings.
    expect(runStorm(model, rain(alike), { mode: 'real', outage: [60, 120] }).effort.steps).toBeLessThan(20);
    const unlike = alike.map((_, k) => 0.3 * ((k * 7) % 5));
    expect(runStorm(stores({ ponds: [pondStore({ rimLevel: 0.2, spillWidth: 3 })] }), rain(unlike), { mode: 'real', pace: 'even' }).effort.steps).toBe(60);
    // Unlike minutes have their mean, and nothing is lost.
    const uneven = alike.map((flow, k) => flow * (1 + 1e-5 * (k % 3)));
    expect(runStorm(model, rain(uneven), { mode: 'real' }).inflowVolume).toBeCloseTo(60 * uneven.reduce((sum, flow) => sum + flow, 0), 9);
  });
  it('is cut where the power changes', () => {
    const model = stores({ ponds: [pondStore()], basins: [basinStore({ units: [pumpUnit({ startLevel: -2 })] })], links: [] });
    const inflow: StormInflow = { step: 60, steps: 10, ponds: [new Float64Array(10)], basins: [new Float64Array(10).fill(0.002)] };
    // 2 l/s come and go; without power from the beginning of the third to the end of the fifth minute they stay.
    const run = runStorm(model, inflow, { mode: 'onTwin', outage: [120, 300] });
    expect(run.maxBasin[0]).toBeCloseTo(-1 + 0.36, 3);
    expect(runStorm(model, inflow, { mode: 'onTwin', outage: [100, 290] }).maxBasin[0]).toBeCloseTo(-1 + 0.36, 3);
  });
  it('of a low spot over its basin runs into it through the grate', () => {
    const model = stores({ ponds: [pondStore()], basins: [basinStore()], links: [linkOf({ basin: 0, to: { kind: 'basin', index: 0 }, resistance: 100 })] });
    const run = runStorm(model, into([0.4 / 60, ...Array<number>(20).fill(0)], 1), { mode: 'real' });
    expect(run.massError).toBeLessThan(1e-9);
    const storm = runStorm(model, { step: 60, steps: 20, ponds: [new Float64Array(20).fill(0.001)], basins: [new Float64Array(20)] }, { mode: 'real' });
    // Nothing stands on the ground: all of it comes down to the basin and is pumped from 500 s on.
    expect(storm.maxPond[0]).toBeLessThan(0.01);
    // Less the little that stands over the grate meanwhile.
    expect(storm.events[0]!.time).toBeGreaterThan(500);
    expect(storm.events[0]!.time).toBeLessThan(500 + (100 * storm.maxPond[0]!) / 0.001 + 1);
  });
  it('with a pump that starts every few seconds is followed so far, then answered by its mean', () => {
    // 2.5 cm3 between the floats... 1 l/s comes and 2 l/s go: a start and a stop in five seconds would be 17,280 in a day; half of that is more than 20,000.
    const quick = pumped({ storage: LevelTable.tabulate(-2, 1, 30, (level) => 0.001 * (level + 2)), onLevel: -0.5, units: [pumpUnit({ startLevel: -0.5 })] });
    const day = steadyInflow(0.001, 1440);
    const run = runStorm(quick, day, { mode: 'real' });
    expect(run.events).toHaveLength(20_001);
    // As many in each day of a storm, and all of them in half an hour: some 1,800.
    expect(runStorm(quick, steadyInflow(0.001, 2880), { mode: 'real' }).events).toHaveLength(40_001);
    expect(runStorm(quick, steadyInflow(0.001, 30), { mode: 'real' }).events.length).toBeGreaterThan(1000);
    expect(run.volumes.pumped).toBeCloseTo(86.4, 2);
    expect(run.maxBasin[0]).toBeLessThan(-0.5 + 0.01);
  });
});
