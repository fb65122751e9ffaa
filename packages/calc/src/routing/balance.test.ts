/* oxlint-disable max-lines -- the examples of one file of the router, small and many, stand together */
import { describe, expect, it } from 'vitest';
import { backTo, basinStore, dryWell, lineStore, linkOf, pondStore, prism, steady, stores } from '../testing/prisms.ts';
import { Balance } from './balance.ts';
import { climb } from './climb.ts';
import { film } from './fluxes.ts';
import { FlowTable, LevelTable } from './levelTable.ts';
import { Network, networkOf } from './network.ts';
import { layoutOf } from './stores.ts';

/** The share at which the first of two stages stands: 1 - 1/sqrt(2), Alexander 1977. */
const gamma = 1 - Math.SQRT1_2;

/**
 * A dry well of 4 m2 of voids over 10 m2 of base and 14 m of edge, soaking f = 1e-3 m/s, so that it answers within minutes: 4 dd/dt = q - f (10 + 14 d),
 * a linear reservoir of which every step is known in closed form.
 */
const soaking = (): Network => new Network(stores({ wells: [dryWell({ rate: 1e-3 })] }));
const rate = (depth: number): number => 1e-3 * (10 + 14 * depth);

describe('a step of a linear reservoir', () => {
  it('is backward Euler', () => {
    const network = soaking();
    network.setLevel(0, -1.5);
    network.inflow[0] = 0.005;
    expect(network.volume[0]).toBeCloseTo(2, 12);
    expect(network.trial(100)).toBe(true);
    // 4 d1 = 2 + 100 (0.005 - 0.01 - 0.014 d1)
    const depth = (2 - 0.5) / (4 + 1.4);
    expect(network.trialLevel[0]! + 2).toBeCloseTo(depth, 10);
    expect(network.flows[0]).toBeCloseTo(rate(depth), 12);
    expect(network.level[0]).toBe(-1.5);
    // Half of the difference of both ends is what it may err by, answering on the way.
    expect(network.errors()[0]).toBeCloseTo((50 * (rate(0.5) - rate(depth))) / (4 + 1.4), 10);
    expect(network.rootOf(64)).toBe(8);
    network.commit();
    expect(network.level[0]! + 2).toBeCloseTo(depth, 10);
    expect(network.volume[0]).toBeCloseTo(2 + 100 * (0.005 - rate(depth)), 12);
  });
  it('of two that do not meet is that of each by itself', () => {
    const network = new Network(stores({ wells: [dryWell({ rate: 1e-3 }), dryWell({ id: 'O2', rate: 2e-3 })] }));
    network.setLevel(1, -1.5);
    network.inflow.set([0.015, 0.03]);
    network.trialFine(100);
    const end = (start: number, per: number): number => 5 / 14 + (start - 5 / 14) * ((1 - (1 - 2 * gamma) * per) / (1 + gamma * per) ** 2);
    expect(network.trialLevel[0]! + 2).toBeCloseTo(end(0, 0.35), 10);
    expect(network.trialLevel[1]! + 2).toBeCloseTo(end(0.5, 0.7), 10);
    const alone = soaking();
    alone.inflow[0] = 0.015;
    alone.trialFine(100);
    expect(network.errors()[0]).toBeCloseTo(alone.errors()[0]!, 12);
    expect(Math.abs(network.errors()[1]!)).toBeLessThan(0.1);
    network.trial(100);
    network.commit();
    expect(network.volume[0]).toBeCloseTo(4 * ((1.5 - 1) / (4 + 1.4)), 10);
    expect(network.volume[1]).toBeCloseTo(4 * ((2 + 3 - 2) / (4 + 2.8)), 10);
  });
  it('that brings just what soaks away goes on as it was found', () => {
    const network = soaking();
    network.setLevel(0, -1.5);
    network.trial(50);
    network.commit();
    const depth = network.level[0]! + 2;
    network.inflow[0] = rate(depth);
    network.trial(50);
    expect(network.flows[0]).toBeCloseTo(rate(depth), 12);
    network.trialFine(50);
    expect(network.flows[0]).toBeCloseTo(rate(depth), 12);
    // A moment in which no level moves by a hair.
    network.inflow[0] = 0;
    network.trialFine(1e-5);
    expect(network.flows[0]).toBeCloseTo(rate(depth), 8);
  });
  it('is of second order by two stages: y1 = R(z) y0, R = (1 + (1 - 2g) z) / (1 - g z)^2', () => {
    const network = soaking();
    network.setLevel(0, -1.5);
    network.inflow[0] = 0.015;
    expect(network.trialFine(100)).toBe(true);
    // At rest 10 + 14 d = 15: d = 5/14; the rest of the depth falls by 14e-3/4 of itself each second.
    const z = (-14e-3 / 4) * 100;
    const depth = 5 / 14 + (0.5 - 5 / 14) * ((1 + (1 - 2 * gamma) * z) / (1 - gamma * z) ** 2);
    expect(network.trialLevel[0]! + 2).toBeCloseTo(depth, 10);
    // The volume follows from the mean of both stages.
    expect(network.flows[0]).toBeCloseTo(0.015 - (4 * (depth - 0.5)) / 100, 12);
    network.commit();
    expect(network.volume[0]).toBeCloseTo(4 * depth, 10);
    expect(network.rootOf(64)).toBe(4);
  });
  it('errs by the difference to the parabola through its three rates', () => {
    const network = soaking();
    network.setLevel(0, -1.5);
    network.inflow[0] = 0.015;
    network.trialFine(100);
    const end = network.trialLevel[0]! + 2;
    // First stage: 4 d = 2 + 100 g (0.015 - rate(d)).
    const first = (2 + 100 * gamma * 0.005) / (4 + 1.4 * gamma);
    // A parabola through times 0, g and 1: its weights have the moments 1, 1/2 and 1/3.
    const middle = (1 / 2 - 1 / 3) / (gamma * (1 - gamma));
    const last = 1 / 2 - middle * gamma;
    const weights = [-(1 - middle - last), 1 - gamma - middle, gamma - last];
    const err = (100 * (weights[0]! * rate(0.5) + weights[1]! * rate(first) + weights[2]! * rate(end))) / (4 + 1.4 * gamma);
    expect(Math.abs(err)).toBeGreaterThan(1e-5);
    expect(network.errors()[0]).toBeCloseTo(err, 10);
  });
  it('goes on from where the last one ended, of whatever length', () => {
    const network = soaking();
    network.setLevel(0, -1.5);
    network.inflow[0] = 0;
    let depth = 0.5;
    for (const dt of [20, 30, 7]) {
      expect(network.settle(dt)).toBe(dt);
      network.commit();
      depth = (4 * depth - dt * 0.01) / (4 + dt * 0.014);
      expect(network.level[0]! + 2).toBeCloseTo(depth, 10);
    }
  });
});

describe('stores that answer to each other', () => {
  // Two prisms of 100 and 50 m2 joined by a rim of 2 m at level 0.
  const pair = (): Network => new Network(stores({ ponds: [pondStore({ id: 'L1', storage: prism(-1, 1, 100), rimLevel: 0, spillWidth: 2, spillsTo: 1 }), pondStore({ id: 'L2', storage: prism(-1, 1, 50) })] }));
  const weir = 2 * 3 * Math.sqrt(0.3048);

  it('give over their rim what the levels at the end of a step ask for, and lose nothing', () => {
    const network = pair();
    network.setLevel(0, 0.2);
    expect(network.trial(10)).toBe(true);
    const [upper, lower] = network.trialLevel;
    const flow = weir * upper! ** 1.5;
    expect(100 * (0.2 - upper!)).toBeCloseTo(10 * flow, 8);
    expect(50 * (lower! + 1)).toBeCloseTo(10 * flow, 8);
  });
  it('come to rest at one level', () => {
    const network = pair();
    network.setLevel(0, 0.3);
    network.setLevel(1, 0.1);
    for (let i = 0; i < 40; i += 1) {
      network.settle(60, i % 2 === 0);
      network.commit();
    }
    // (100 * 0.3 + 50 * 0.1) / 150 over the rim.
    expect(network.level[0]).toBeCloseTo(35 / 150, 5);
    expect(network.level[1]).toBeCloseTo(35 / 150, 5);
    expect(network.volume[0]! + network.volume[1]!).toBeCloseTo(130 + 55, 9);
  });
  it('run back over the rim as well', () => {
    const network = pair();
    network.setLevel(0, -0.5);
    network.setLevel(1, 0.2);
    network.trial(10);
    expect(50 * (0.2 - network.trialLevel[1]!)).toBeCloseTo(10 * weir * network.trialLevel[1]! ** 1.5, 8);
    expect(100 * (network.trialLevel[0]! + 0.5)).toBeCloseTo(10 * weir * network.trialLevel[1]! ** 1.5, 8);
  });
  it('in a chain of three give back every liter', () => {
    const chain = [0, 1, 2].map((k) => pondStore({ id: `L${k}`, storage: prism(-1, 1, 20 + 10 * k), rimLevel: -0.1 * k, spillWidth: 1 + k, spillsTo: k === 2 ? -1 : k + 1 }));
    const network = new Network(stores({ ponds: chain }));
    [0.3, 0.1, 0].forEach((level, k) => { network.setLevel(k, level); });
    const before = network.volume.reduce((sum, volume) => sum + volume, 0);
    let gone = 0;
    for (let i = 0; i < 30; i += 1) {
      const dt = network.settle(20, true);
      network.commit();
      gone += dt * network.flows[2]!;
      network.level.forEach((level, k) => { expect(chain[k]!.storage.volume(level)).toBeCloseTo(network.volume[k]!, 6); });
    }
    expect(before - network.volume.reduce((sum, volume) => sum + volume, 0)).toBeCloseTo(gone, 9);
    // Every one has come down to about its rim, and none below it.
    network.level.forEach((level, k) => {
      expect(level).toBeGreaterThan(-0.1 * k);
      expect(level).toBeLessThan(-0.1 * k + 0.05);
    });
  });
});

describe('one step of Newton', () => {
  /**
   * Five stores whose ways are straight in their levels: a low spot that loses steadily, one that takes back a quarter of what leaves, a dry well that
   * soaks, a basin pumped into it and one pumped off the site. 1 l/s less for each meter of head.
   */
  const pumping = FlowTable.tabulate(-8, 8, 16, (head) => 0.01 - 0.001 * head);
  const layout = layoutOf(stores({
    ponds: [pondStore({ id: 'L0', loss: 0.003 }), pondStore()], wells: [dryWell({ rate: 1e-3 })],
    basins: [basinStore({ lines: [lineStore({ well: 0, liftLevel: -1.9 })] }), basinStore({ id: 'B2', lines: [lineStore({ liftLevel: 3, returns: backTo(1, 0.25) })] })],
  }));
  for (const [pump] of layout.pumps) pump!.setOne(pumping, true);
  const starts = [0.4, 0.3, -1.5, -1.8, -0.7];
  const balanceAt = (levels: readonly number[]): Balance => {
    const balance = new Balance(layout);
    balance.level.set(levels);
    balance.look();
    return balance;
  };
  /** What each store gives, by hand. */
  const outOf = ([, , well, first, second]: readonly number[]): number[] => {
    const [into, off] = [0.01 - 0.001 * (well! - first!), 0.01 - 0.001 * (3 - second!)];
    return [0.003, -0.25 * off, 1e-3 * (10 + 14 * (well! + 2)) - into, into, off];
  };
  const volumesOf = (levels: readonly number[]): number[] => levels.map((level, k) => [100, 100, 4, 1, 1][k]! * (level - [0, 0, -2, -2, -2][k]!));

  it('is all that straight ways need, and what was found follows it along its slopes', () => {
    const balance = balanceAt(starts);
    balance.base.set([41, 33, 1.9, 0.4, 1.1]);
    expect(balance.solve(30, 100)).toBe(true);
    const levels = Array.from(balance.level);
    const out = outOf(levels);
    volumesOf(levels).forEach((volume, k) => { expect(volume).toBeCloseTo(balance.base[k]! - 30 * out[k]!, 10); });
    volumesOf(levels).forEach((volume, k) => { expect(balance.found.volumes[k]).toBeCloseTo(volume, 10); });
    out.forEach((value, k) => { expect(balance.found.out[k]).toBeCloseTo(value, 12); });
    expect([...balance.found.flows].filter((flow) => flow !== 0)).toEqual([0.003, out[2]! + out[3]!, out[3], out[4]].map((value) => expect.closeTo(value!, 12)));
  });
  it('is looked at again where it was long, or where a level could not go as far', () => {
    const far = balanceAt(starts);
    far.base.set([41, 33, 1.9, 0.4, 1.1]);
    expect(far.solve(30, 1e-9)).toBe(true);
    volumesOf(Array.from(far.level)).forEach((volume, k) => { expect(volume).toBeCloseTo(far.base[k]! - 30 * outOf(Array.from(far.level))[k]!, 9); });
    const dry = balanceAt(starts);
    dry.base.set([0.05, 33, 1.9, 0.4, 1.1]);
    expect(dry.solve(30, 100)).toBe(true);
    expect(dry.level[0]).toBeLessThan(film);
    const second = balanceAt(starts);
    second.base.set([41, -0.2, 1.9, 0.4, 1.1]);
    expect(second.solve(30, 100)).toBe(true);
    expect(second.level[1]).toBe(0);
    expect(second.found.volumes[1]).toBe(0);
    expect(dry.found.volumes[0]).toBeCloseTo(100 * dry.level[0]!, 12);
  });
  it('is made of how each store answers to each level', () => {
    const levels = [...starts];
    const { answers } = balanceAt(levels).found;
    levels.forEach((_, j) => {
      const moved = (by: number): number[] => outOf(levels.map((level, k) => (k === j ? level + by : level)));
      moved(1).forEach((value, i) => { expect(answers[i * 5 + j]).toBeCloseTo((value - moved(-1)[i]!) / 2, 10); });
    });
  });
  it('turns volumes into heights', () => {
    const balance = balanceAt(starts);
    const heights = Float64Array.from([1, 2, 0.3, 0.2, 0.1]);
    const volumes = [...heights];
    balance.heights(heights, 20);
    const [zero, moved] = [outOf(starts), outOf(starts.map((level, k) => level + heights[k]!))];
    volumes.forEach((volume, k) => { expect([100, 100, 4, 1, 1][k]! * heights[k]! + 20 * (moved[k]! - zero[k]!)).toBeCloseTo(volume, 10); });
  });
  it('forgets what flowed before', () => {
    const balance = balanceAt(starts);
    balance.level.set([-1, -1, -3, -3, -3]);
    balance.look();
    expect([...balance.found.flows, ...balance.found.out].every((value) => value === 0)).toBe(true);
    const rims = new Balance(layoutOf(stores({ ponds: [pondStore({ rimLevel: 0.1, spillsTo: 1 }), pondStore({ id: 'L2' })] })));
    rims.level.set([0.3, 0.25]);
    rims.look();
    expect([...rims.found.byFrom, ...rims.found.byTo].filter((value) => value !== 0)).toHaveLength(2);
    rims.level.fill(0.05);
    rims.look();
    expect([...rims.found.flows, ...rims.found.byFrom, ...rims.found.byTo].every((value) => value === 0)).toBe(true);
  });
  it('carries what runs over a drowned rim along with both levels, into the first store as into any other', () => {
    const rims = new Balance(layoutOf(stores({ ponds: [pondStore({ id: 'L1' }), pondStore({ id: 'L2', rimLevel: 0.1, spillWidth: 3, spillsTo: 0 })] })));
    rims.level.set([0.5, 0.6]);
    rims.look();
    const [first, byFrom, byTo] = [rims.found.flows[1]!, rims.found.byFrom[1]!, rims.found.byTo[1]!];
    rims.base.set([50.05, 60.02]);
    expect(rims.solve(0.01, 0.01)).toBe(true);
    const landed = rims.found.flows[1]!;
    expect(landed).toBeCloseTo(first + byFrom * (rims.level[1]! - 0.6) + byTo * (rims.level[0]! - 0.5), 9);
    expect(byTo).toBeLessThan(-1);
    rims.look();
    expect(Math.abs(landed - rims.found.flows[1]!)).toBeLessThan(1e-4);
  });
  it('is halved where it overshoots and brings nothing', () => {
    // A yard of 100 m2 within 10 cm between narrow walls of 1 m2.
    const volumeAt = (level: number): number => level + 100 * Math.max(0, Math.min(0.1, level - 1));
    const narrow = new Balance(layoutOf(stores({ ponds: [pondStore({ storage: LevelTable.tabulate(0, 2, 20, volumeAt), rimLevel: 500 })] })));
    for (const start of [0.2, 0.9, 1.05, 1.5, 3]) {
      for (const volume of [0.5, 2, 5, 9, 11, 12]) {
        narrow.level[0] = start;
        narrow.look();
        narrow.base[0] = volume;
        expect(narrow.solve(60), `${start} m, ${volume} m3`).toBe(true);
        expect(volumeAt(narrow.level[0]!)).toBeCloseTo(volume, 8);
      }
    }
  });
  it('knows how the last film of a store answers, on both sides of a rim', () => {
    const rims = new Balance(layoutOf(stores({ ponds: [pondStore({ storage: prism(0, 1, 10) }), pondStore({ id: 'L2', storage: prism(0, 1, 10), rimLevel: -0.5, spillsTo: 0 })] })));
    const outAt = (levels: readonly number[]): number[] => {
      rims.level.set(levels);
      rims.look();
      return [...rims.found.out];
    };
    for (const levels of [[4e-6, -0.2], [-0.2, 4e-6], [4e-6, 2e-6], [3e-6, 6e-6]] as const) {
      outAt(levels);
      const answers = [...rims.found.answers];
      for (const j of [0, 1]) {
        const moved = (by: number): number[] => outAt(levels.map((level, k) => (k === j ? level + by : level)));
        const [more, less] = [moved(1e-9), moved(-1e-9)];
        more.forEach((value, i) => {
          const slope = (value - less[i]!) / 2e-9;
          expect(Math.abs(answers[2 * i + j]! - slope)).toBeLessThanOrEqual(1e-4 * Math.abs(slope) + 1e-4);
        });
      }
    }
  });
});

describe('a store that runs dry', () => {
  const losing = (loss: number): Network => new Network(stores({ ponds: [pondStore({ loss })] }));

  it('gives less as its last film goes: 100 d = V - dt * loss * d/film', () => {
    const network = losing(0.01);
    network.addVolume(0, 0.3);
    expect(network.level[0]).toBeCloseTo(0.003, 12);
    network.trial(60);
    const depth = 0.3 / (100 + (60 * 0.01) / film);
    expect(network.trialLevel[0]).toBeCloseTo(depth, 12);
    expect(network.flows[0]).toBeCloseTo((0.01 * depth) / film, 10);
    network.commit();
    expect(network.volume[0]).toBeGreaterThanOrEqual(0);
  });
  it('gives the whole as long as more than a film stands in it', () => {
    const network = losing(0.01);
    network.addVolume(0, 0.7);
    network.trial(60);
    expect(network.trialLevel[0]).toBeCloseTo(0.001, 10);
    expect(network.flows[0]).toBe(0.01);
  });
  it('passes on what comes in, dry itself', () => {
    const network = losing(0.01);
    network.inflow[0] = 0.004;
    network.trial(60);
    // All but what the film holds by then: 100 d = 0.24 - 0.6 d/film.
    expect(network.flows[0]).toBeCloseTo((0.01 * (0.24 / (100 + 0.6 / film))) / film, 10);
    network.trialFine(60);
    expect(network.flows[0]).toBeCloseTo(0.004, 4);
    network.commit();
    expect(network.volume[0]).toBeGreaterThanOrEqual(0);
    expect(network.level[0]).toBeLessThan(film);
  });
  it('is taken in one stage where two would take more than it holds', () => {
    const network = losing(0.01);
    network.addVolume(0, 0.3);
    network.trialFine(60);
    expect(network.rootOf(64)).toBe(8);
    const fuller = losing(0.01);
    fuller.addVolume(0, 2);
    fuller.trialFine(60);
    expect(fuller.rootOf(64)).toBe(4);
    expect(fuller.trialLevel[0]).toBeCloseTo(0.014, 9);
  });
  it('on the far side of a rim gives less as well', () => {
    const network = new Network(stores({ ponds: [pondStore({ storage: prism(-1, 1, 10), rimLevel: -0.5, spillWidth: 5, spillsTo: 1 }), pondStore({ id: 'L2', storage: prism(0, 1, 10) })] }));
    network.setLevel(1, 0.001);
    network.trial(60);
    // It runs back over a rim half a meter below its ground: 0.01 m3 in all, none of it twice.
    network.commit();
    expect(network.volume[1]).toBeGreaterThanOrEqual(0);
    expect(network.volume[0]! + network.volume[1]!).toBeCloseTo(0.01, 12);
    expect(network.level[1]).toBeLessThan(film);
  });
});

describe('pumps in a step', () => {
  const pumped = (fields: Parameters<typeof basinStore>[0] = {}): Network => new Network(stores({ basins: [basinStore(fields)] }));

  it('take out of their basin what they give', () => {
    const network = pumped();
    network.setLevel(0, -1);
    network.layout.pumps[0]![0]!.setOne(steady(0.002), true);
    network.trial(100);
    expect(network.trialLevel[0]).toBeCloseTo(-1.2, 12);
    network.commit();
    expect(network.volume[0]).toBeCloseTo(0.8, 12);
  });
  it('send on to a dry well only when their line delivers', () => {
    const network = new Network(stores({ wells: [dryWell({ rate: 0 })], basins: [basinStore({ lines: [lineStore({ well: 0 })] })] }));
    network.setLevel(1, -1);
    const [[pump]] = network.layout.pumps as [[Network['layout']['pumps'][0][0]]];
    pump.setOne(steady(0.002), false);
    network.trial(100);
    network.commit();
    expect([network.volume[0], network.volume[1], network.level[0]]).toEqual([0, expect.closeTo(0.8, 12), -2]);
    pump.setOne(steady(0.002), true);
    network.otherFlows();
    network.trial(100);
    network.commit();
    expect([network.volume[0], network.volume[1]]).toEqual([expect.closeTo(0.2, 12), expect.closeTo(0.6, 12)]);
    expect(network.level[0]).toBeCloseTo(-2 + 0.2 / 4, 10);
  });
  it('send a share of what leaves the site back to a low spot', () => {
    const network = new Network(stores({ ponds: [pondStore()], basins: [basinStore({ lines: [lineStore({ returns: backTo(0, 0.25) })] })] }));
    network.setLevel(1, -1);
    network.layout.pumps[0]![0]!.setOne(steady(0.002), true);
    network.trial(100);
    network.commit();
    expect(network.volume[0]).toBeCloseTo(0.05, 12);
    expect(network.level[0]).toBeCloseTo(0.0005, 10);
  });
  it('keep what runs back in the balance while it rises with the level that sends it', () => {
    // A link that falls free 1 m down gives back half: 100 d1 = 20 - 10 (1 - 0.5) 0.01 sqrt(d1 + 1).
    const network = new Network(stores({ ponds: [pondStore()], links: [linkOf({ returns: backTo(0, 0.5) })] }));
    network.setLevel(0, 0.2);
    network.trial(10);
    const level = network.trialLevel[0]!;
    expect(100 * level).toBeCloseTo(20 - 0.05 * Math.sqrt(level + 1), 8);
  });
  it('of a twin begin at each of their edges, whichever store they stand in', () => {
    const network = new Network(stores({ ponds: [pondStore()], basins: [basinStore()] }));
    network.layout.pumps[0]![0]!.stages = [{ start: -1.4, table: steady(0.001) }, { start: -1, table: steady(0.002) }];
    network.thresholds[1] = [-1.4, -1];
    for (const level of [-1.401, -1.001]) {
      network.setLevel(1, level);
      network.inflow[1] = 0.005;
      network.trialFine(2);
      expect(network.rootOf(64)).toBe(8);
    }
    network.setLevel(1, -1.2);
    network.trialFine(2);
    expect(network.rootOf(64)).toBe(4);
  });
  it('of a twin begin at an edge that a fine step does not cross', () => {
    const network = pumped();
    network.setLevel(0, -1.01);
    network.layout.pumps[0]![0]!.stages = [{ start: -1, table: steady(0.002) }];
    network.thresholds[0] = [-1];
    network.inflow[0] = 0.001;
    // Up to 5 mm under the edge it is fine, over it backward Euler and held in its film: half of the pump.
    network.trialFine(5);
    expect([network.trialLevel[0], network.rootOf(64)]).toEqual([expect.closeTo(-1.005, 10), 4]);
    // The first stage of 15 s ends under the edge, the second one over it.
    network.trialFine(15);
    expect(network.rootOf(64)).toBe(8);
    network.trialFine(100);
    expect([network.trialLevel[0], network.rootOf(64)]).toEqual([expect.closeTo(-1, 5), 8]);
    expect(network.flows[1]).toBeCloseTo(0.0009, 5);
    network.commit();
    // Within the film it rests, and is as fine as anywhere.
    network.trialFine(100);
    expect([network.flows[1], network.rootOf(64)]).toEqual([expect.closeTo(0.001, 6), 4]);
    // More than the pump takes lifts the level through the film and out of it.
    network.inflow[0] = 0.003;
    network.trialFine(100);
    expect([network.trialLevel[0], network.rootOf(64)]).toEqual([expect.closeTo(-0.9, 4), 8]);
    network.commit();
    network.trialFine(100);
    expect([network.trialLevel[0], network.rootOf(64)]).toEqual([expect.closeTo(-0.8, 4), 4]);
  });
});

describe('a network', () => {
  it('knows what flows at the levels that it is given, whatever it knew before', () => {
    const changes: readonly ((network: Network) => void)[] = [
      (network) => { network.setLevel(0, -1.2); }, (network) => { network.addVolume(0, 0.4); },
      (network) => { network.reset(); },
    ];
    for (const change of changes) {
      const network = soaking();
      network.setLevel(0, -1.5);
      network.trialFine(100);
      network.commit();
      change(network);
      const fresh = soaking();
      fresh.setLevel(0, network.level[0]!);
      for (const item of [network, fresh]) {
        item.inflow[0] = 0.02;
        item.trialFine(80);
      }
      expect(network.errors()[0]).toBeCloseTo(fresh.errors()[0]!, 12);
      expect(network.trialLevel[0]).toBeCloseTo(fresh.trialLevel[0]!, 10);
    }
  });
  it('knows at the start of a step what it found at the end of the last one', () => {
    const network = soaking();
    network.setLevel(0, -1.5);
    network.trial(50);
    network.commit();
    const start = network.level[0]! + 2;
    network.trial(50);
    const end = network.trialLevel[0]! + 2;
    expect(network.errors()[0]).toBeCloseTo((25 * (rate(start) - rate(end))) / (4 + 0.7), 10);
    // The pumps have changed meanwhile: what was known is known no more.
    const pumped = new Network(stores({ basins: [basinStore()] }));
    pumped.setLevel(0, -1);
    pumped.trial(10);
    pumped.layout.pumps[0]![0]!.setOne(steady(0.002), true);
    pumped.otherFlows();
    pumped.trialFine(10);
    expect(pumped.errors()[0]).toBeCloseTo(0, 12);
    expect(pumped.settle(10, true)).toBe(10);
    expect(pumped.rootOf(64)).toBe(4);
    expect(pumped.settle(10)).toBe(10);
    expect(pumped.rootOf(64)).toBe(8);
  });
  it('finds its levels wherever on earth they are counted from', () => {
    // A level of 3,000 m has no digits under a picometer: over 10 hectares that is more than a balance is met to.
    for (const bottom of [3000, -3000]) {
      const table = prism(bottom, bottom + 1, 1e5);
      const network = new Network(stores({ ponds: [pondStore({ storage: table, loss: 0.1 }), pondStore({ id: 'L2', storage: prism(bottom, bottom + 1, 1), loss: 0.001 })] }));
      [0.31, 0.37].forEach((depth, k) => { network.setLevel(k, bottom + depth); });
      network.inflow[0] = 0.7;
      for (const dt of [7, 11, 13.7, 60]) {
        expect([network.trialFine(dt), network.trial(dt), network.failed]).toEqual([true, true, 0]);
        network.commit();
      }
    }
  });
  it('finds the level of a store that is wide only in its middle', () => {
    // A pit of 0.02 m2, a yard of 1,000 m2 within 10 cm, a shaft of 0.02 m2.
    const volumeAt = (level: number): number => 0.02 * level + 1000 * Math.max(0, Math.min(0.1, level - 1));
    const network = new Network(stores({ ponds: [pondStore({ storage: LevelTable.tabulate(0, 2, 20, volumeAt), rimLevel: 50 })] }));
    network.setLevel(0, 0.5);
    for (const volume of [30, 55, 20, 90, 3]) {
      network.inflow[0] = (volume - network.volume[0]!) / 60;
      expect(network.trialFine(60)).toBe(true);
      expect(volumeAt(network.trialLevel[0]!)).toBeCloseTo(volume, 3);
      expect(network.trial(60)).toBe(true);
      expect(volumeAt(network.trialLevel[0]!)).toBeCloseTo(volume, 6);
      network.commit();
    }
    // Most of them at once, by halves of a step of Newton; what is left by a way up over shorter steps, each counted once.
    expect(network.failed).toBeGreaterThan(0);
  });
  it('is dry and at rest again when it is asked for once more', () => {
    const model = stores({ ponds: [pondStore()], basins: [basinStore()] });
    const network = networkOf(model);
    network.setLevel(0, 0.4);
    network.inflow[1] = 3;
    network.thresholds[1] = [-1];
    network.failed = 7;
    network.layout.pumps[0]![0]!.setOne(steady(0.002), false);
    network.trial(1);
    network.commit();
    expect(networkOf(model)).toBe(network);
    expect(network.model).toBe(model);
    expect([...network.level, ...network.volume, ...network.inflow, network.failed]).toEqual([0, -2, 0, 0, 0, 0, 0]);
    expect(network.thresholds).toEqual([[], []]);
    expect(network.layout.pumps[0]![0]).toMatchObject({ stages: [], delivers: true });
    network.trial(100);
    expect([...network.trialLevel]).toEqual([0, -2]);
    expect(networkOf(stores({ ponds: [pondStore()] }))).not.toBe(network);
  });
  it('adds water at once, on top of what is there', () => {
    const network = new Network(stores({ ponds: [pondStore()] }));
    network.addVolume(0, 20);
    network.addVolume(0, 10);
    expect([network.level[0], network.volume[0]]).toEqual([expect.closeTo(0.3, 12), 30]);
    expect(network.failed).toBe(0);
  });
  it('halves a step that cannot be solved, and says so when none can', () => {
    // A store that is not a number at any level never settles.
    const broken = new Network(stores({ ponds: [pondStore({ storage: LevelTable.tabulate(0, 1, 4, () => NaN) })] }));
    broken.inflow[0] = 1;
    // 0.42 ms, two halves of it down to 0.105 ms, and one below a tenth of a millisecond.
    expect(() => broken.settle(0.00042)).toThrow('document.notComputable');
    expect(broken.failed).toBe(4);
  });
});

describe('the way up to the levels of a long step', () => {
  /** A balance that finds levels only so far beyond those that it stands at; its level is the length that was solved. */
  function strides(most: number): { readonly balance: Balance; readonly asked: number[] } {
    const asked: number[] = [];
    const level = new Float64Array(2);
    const base = new Float64Array(2);
    let looks = 0;
    const solve = (length: number): boolean => {
      asked.push(length);
      // What stands at the levels was looked at before.
      expect([...base, looks]).toEqual([5 + 2 * length, 3 - length, asked.length]);
      if (length - level[0]! > most + 1e-12) {
        level[0] = -99;
        return false;
      }
      level[0] = length;
      return true;
    };
    return { balance: { level, base, solve, look: () => { looks += 1; } } as unknown as Balance, asked };
  }
  const up = (most: number): readonly [boolean, number[]] => {
    const { balance, asked } = strides(most);
    return [climb(balance, Float64Array.of(5, 3), Float64Array.of(2, -1), 16), asked];
  };

  it('begins at half of it and doubles what succeeds', () => {
    expect(up(8)).toEqual([true, [8, 16]]);
    expect(up(12)).toEqual([true, [8, 16]]);
  });
  it('halves what does not, and begins again where it stood', () => {
    expect(up(5)).toEqual([true, [8, 4, 12, 8, 16, 12, 16]]);
  });
  it('gives up where even a hundred-thousandth of the step does not succeed', () => {
    const [done, asked] = up(0);
    expect(done).toBe(false);
    // 16 / 2^k down to 16e-5: k up to 16.
    expect(asked.map((length) => 16 / length)).toEqual(Array.from({ length: 16 }, (_, k) => 2 ** (k + 1)));
  });
  it('gives up after sixty strides', () => {
    const [done, asked] = up(0.2);
    expect([done, asked.length]).toEqual([false, 60]);
  });
});
