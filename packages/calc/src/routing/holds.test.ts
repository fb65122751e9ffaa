import { describe, expect, it } from 'vitest';
import { demoSite } from '../testing/sites.ts';
import type { Pipe } from '../document/document.ts';
import { basinStore, dryWell, junctionStore, lineStore, pondStore, prism, pumpUnit, stores } from '../testing/prisms.ts';
import { handModel, handOutage, type HandModel } from './handModel.ts';
import { conduitOf } from './linkOf.ts';
import type { PondStore } from './model.ts';
import { Network } from './network.ts';
import { runStorm, type StormInflow } from './run.ts';

describe('a path that was laid with a hump', () => {
  const document = demoSite('tern-hollow');
  const pipe = document.system.parts.find((part): part is Pipe => part.kind === 'pipe')!;
  const laid = (diameter: number, invertUp: number, invertDown: number): Pipe => ({ ...pipe, diameter, invertUp, invertDown });
  const held = (...pipes: readonly Pipe[]): [number, number] => {
    const { invertDown, diameterDown } = conduitOf(pipe, 0, pipes, 1.5, { to: null, returns: null, standing: -Infinity });
    return [invertDown, diameterDown];
  };
  it('is held by the hump that a pipe climbs to, when it is higher than the end', () => {
    expect(held(laid(0.1, 1.5, 1.6), laid(0.15, 1.6, 1.2))).toEqual([1.6, 0.1]);
    expect(held(laid(0.1, 1.5, 1.6), laid(0.12, 1.6, 1.7), laid(0.15, 1.7, 1.2))).toEqual([1.7, 0.12]);
    expect(held(laid(0.1, 1.5, 1.7), laid(0.12, 1.55, 1.6), laid(0.15, 1.6, 1.2))).toEqual([1.7, 0.1]);
  });
  it('is held by its end where a pipe falls or lies level, however high, and where the hump is no higher', () => {
    expect(held(laid(0.1, 1.6, 1.5), laid(0.15, 1.4, 1.2))).toEqual([1.2, 0.15]);
    expect(held(laid(0.1, 1.5, 1.5), laid(0.15, 1.4, 1.2))).toEqual([1.2, 0.15]);
    expect(held(laid(0.1, 1, 1.2), laid(0.15, 1.4, 1.2))).toEqual([1.2, 0.15]);
    expect(held()).toEqual([1.5, 0.1]);
  });
});

describe('levels in a step', () => {
  const spilling = (id: string): PondStore => pondStore({ id, rimLevel: 0 });
  it('that moves them by less than a millionth of a meter follow the flows of now, not those of long ago', () => {
    const network = new Network(stores({ ponds: [pondStore({ loss: 1e-4 })] }));
    network.inflow[0] = 0.01;
    expect(network.settle(60, true)).toBe(60);
    network.commit();
    // 1e-4 m3/s go; as much comes, and so little more that 100 m2 rise by 1e-7 m in the first stage of 17.6 s.
    network.inflow[0] = 1e-4 + 5e-7;
    expect(network.settle(60, true)).toBe(60);
    expect(network.flows[0]).toBeCloseTo(1e-4, 12);
    const before = network.volume[0]!;
    network.commit();
    expect(network.volume[0]! - before).toBeCloseTo(60 * 5e-7, 12);
    expect(network.level[0]).toBeCloseTo(network.volume[0]! / 100, 9);
  });
  it('whose first stage does not settle are found in one', () => {
    const model = stores({ ponds: [spilling('L1')] });
    const [once, twice] = [new Network(model), new Network(model)];
    for (const network of [once, twice]) network.inflow[0] = 0.01;
    const balance = twice['balance'];
    const solve = balance.solve.bind(balance);
    let calls = 0;
    balance.solve = (...asked) => {
      calls += 1;
      return solve(...asked) && calls > 1;
    };
    expect([once.trial(60), twice.trialFine(60)]).toEqual([true, true]);
    expect([...twice.flows]).toEqual([...once.flows]);
    expect(once.flows[0]).toBeGreaterThan(0);
  });
  it('err alike in two low spots of a kind', () => {
    const network = new Network(stores({ ponds: [spilling('L1'), spilling('L2')] }));
    network.inflow.fill(0.01);
    for (const fine of [false, true]) {
      network.settle(60, fine);
      const [first, second] = network.errors();
      expect(Math.abs(first!)).toBeGreaterThan(0);
      expect(second! / first!).toBeCloseTo(1, 9);
    }
  });
});

describe('steps that are taken together', () => {
  const dry = (steps: number): Float64Array => new Float64Array(steps);
  it('are as many where an inflow is left out as where it is none', () => {
    const model = stores({ ponds: [pondStore()], junctions: [junctionStore()], wells: [dryWell()] });
    const inflow: StormInflow = { step: 60, steps: 120, ponds: [dry(120).fill(1e-4)], basins: [] };
    const left = runStorm(model, inflow, { mode: 'real' });
    expect(left.effort).toEqual(runStorm(model, { ...inflow, junctions: [dry(120)], wells: [dry(120)] }, { mode: 'real' }).effort);
    expect(left.effort.steps).toBeLessThan(60);
  });
  it('are parted where the power goes and comes, and nowhere else', () => {
    const inflow: StormInflow = { step: 60, steps: 60, ponds: [dry(60)], basins: [dry(60)] };
    // Half an hour, ten minutes and twenty minutes, each of a few steps that grow fourfold from a second and a half.
    const { effort } = runStorm(stores({ ponds: [pondStore()], basins: [basinStore()] }), inflow, { mode: 'real', outage: [1800, 2400] });
    expect(effort.steps).toBeLessThan(20);
  });
});

it('a line of which one cubic meter runs back gives it back', () => {
  // 2 l/s from 4 m3 in the basin; the line holds 1.5 m3 and keeps half of one. It is filled, pumps the rest, and 1 m3 falls back at the stop.
  const line = lineStore({ volume: 1.5, runBack: 1 });
  const model = stores({ basins: [basinStore({ storage: prism(-2, 3, 4), units: [pumpUnit()], lines: [line] })] });
  const flows = new Float64Array(60);
  flows[0] = 4 / 60;
  const run = runStorm(model, { step: 60, steps: 60, ponds: [], basins: [flows] }, { mode: 'real', record: true });
  const stop = run.events.find(({ kind }) => kind === 'pumpOff')!.time;
  // 1 m3 into the line and 3 m3 through it, 2000 s in all; then it stands a quarter of a meter over its off level.
  expect(stop - run.events[0]!.time).toBeCloseTo(2000, 0);
  expect(run.events).toHaveLength(2);
  expect(run.samples!.basin[0]![59]).toBeCloseTo(-1.25, 4);
});

describe('the hand model', () => {
  const site = demoSite('tern-hollow').site.lowSpots[0]!;
  const box: HandModel = {
    lowSpot: { ...site, stageArea: [{ level: 0, area: 10 }, { level: 2, area: 10 }], rimLevel: 1.5, spillWidth: 0 },
    sillLevel: 1, runoffArea: 100, pumpFlow: 0.001, store: 0, blocks: [], block: 60,
  };
  /** 1 l/s runs off in the minutes that are named, of 41; the peak is taken at the twentieth. */
  const raining = (minute: (index: number) => boolean): HandModel => ({ ...box, blocks: Array.from({ length: 41 }, (_, index) => (minute(index) ? 0.6 : 0)) });

  it('takes steps of about five seconds, a whole number of them in a block', () => {
    // One step in 7.3 s: 0.73 m3/s fill 5.329 m3 over a rim at 0.1 m, which only the next step would feel.
    const flood = { ...box, pumpFlow: 0, lowSpot: { ...box.lowSpot, rimLevel: 0.1, spillWidth: 5 }, blocks: [53.29], block: 7.3 };
    expect(handModel(flood).maxLevel).toBeCloseTo(0.5329, 9);
  });
  it('tries outages from ten minutes and their length before the peak to a quarter of an hour after it, a minute apart', () => {
    // Twelve steps of 5 s without the pump in the last minute: 0.06 m3 on 10 m2.
    expect(handOutage(raining((index) => index === 35), 60)).toBeCloseTo(1 - 0.006, 9);
    // Of 59 s the last one would begin a second too late for it.
    expect(handOutage(raining((index) => index === 35), 59)).toBeCloseTo(1, 9);
    // One of 54 s begins six seconds into its minute, and ten steps lie in it.
    expect(handOutage(raining(() => true), 54)).toBeCloseTo(1 - 0.005, 9);
  });
});
