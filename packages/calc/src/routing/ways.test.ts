import { describe, expect, it } from 'vitest';
import { backTo, basinStore, conduitOf, dryWell, junctionStore, lineStore, linkOf, pondStore, steady, stores } from '../testing/prisms.ts';
import { askedAs, codeOf } from './askedAs.ts';
import { clipped } from './clipped.ts';
import { FlowAt } from './flowAt.ts';
import { ConduitFlux, film, type Flux, LinkFlux, LossFlux, PumpFlux, SeepageFlux, WeirFlux } from './fluxes.ts';
import { FlowTable } from './levelTable.ts';
import { layoutOf } from './stores.ts';

function at(flux: Flux, from: number, to = 0): FlowAt {
  const out = new FlowAt();
  out.set(9, 9, 9);
  flux.at(from, to, out);
  return out;
}

describe('ways that water takes', () => {
  const weir = 3 * Math.sqrt(0.3048);

  it('lose steadily, or soak into the soil, and leave the system', () => {
    const loss = new LossFlux('L1', 3, 2e-4);
    expect(loss).toMatchObject({ kind: 'loss', id: 'L1', from: 3, to: -1, back: -1, backShare: 0, delivers: true });
    expect(at(loss, 5)).toMatchObject({ flow: 2e-4, from: 0, to: 0 });
    const soak = new SeepageFlux(dryWell(), 2);
    expect(soak).toMatchObject({ kind: 'seepage', id: 'O1', from: 2, to: -1 });
    expect(at(soak, -1.5)).toMatchObject({ flow: expect.closeTo(1.7e-4, 15), from: expect.closeTo(1.4e-4, 15), to: 0 });
  });
  it('run over a rim in both directions', () => {
    const spill = new WeirFlux('spill', 'L1', [0, 1], 2, 4);
    expect(at(spill, 2.25, 0).flow).toBeCloseTo(4 * weir * 0.125, 12);
    expect(at(spill, 0, 2.25).flow).toBeCloseTo(-4 * weir * 0.125, 12);
    expect(at(spill, 2.25, 2.25).flow).toBe(0);
    expect(at(spill, 2, 2)).toMatchObject({ flow: 0, from: 0, to: 0 });
    // Into the first of all stores as into any other.
    expect(at(new WeirFlux('spill', 'L2', [1, 0], 2, 4), 2.25, 2.25).flow).toBe(0);
    // Off the site nothing stands behind it.
    expect(at(new WeirFlux('spill', 'L1', [0, -1], 2, 4), 2.25, 2.25).flow).toBeCloseTo(4 * weir * 0.125, 12);
  });
  it('run over a lid or the crest of a dry well in one direction only', () => {
    for (const kind of ['lid', 'overflow'] as const) {
      const over = new WeirFlux(kind, 'B1', [0, 1], 2, 4);
      expect(at(over, 2.25, 0).flow).toBeCloseTo(4 * weir * 0.125, 12);
      expect([at(over, 0, 2.25), at(over, 2.2, 2.25), at(over, 2.25, 2.25), at(over, 2, 0), at(over, 2, 3)].map(({ flow, from, to }) => [flow, from, to])).toEqual(Array(5).fill([0, 0, 0]));
      expect(at(over, 2.25, 2.2).flow).toBeGreaterThan(0);
    }
  });
  it('send a share of what leaves back to a low spot, where one is named', () => {
    expect(new WeirFlux('overflow', 'O1', [3, -1], 0, 1, 1, 0.3)).toMatchObject({ back: 1, backShare: 0.3 });
    expect(new WeirFlux('overflow', 'O1', [3, -1], 0, 1, -1, 0.3)).toMatchObject({ back: -1, backShare: 0 });
    expect(new LinkFlux(linkOf({ returns: backTo(1, 0.4) }), 0, -1)).toMatchObject({ kind: 'inlet', id: 'CH1', back: 1, backShare: 0.4 });
    expect(new ConduitFlux(conduitOf({ returns: backTo(1, 0.4) }), 2, -1)).toMatchObject({ kind: 'conduit', id: 'J1', back: 1, backShare: 0.4 });
    expect(new PumpFlux(lineStore({ returns: backTo(1, 0.4) }), 2, -1)).toMatchObject({ kind: 'pump', id: 'D1', back: 1, backShare: 0.4, share: 0 });
    expect([new LinkFlux(linkOf(), 0, -1), new ConduitFlux(conduitOf(), 2, -1), new PumpFlux(lineStore(), 2, -1)].map(({ back, backShare }) => [back, backShare])).toEqual(Array(3).fill([-1, 0]));
  });
  it('pass an inlet into a store or into the open', () => {
    // 1 m of head drives 0.01 m3/s.
    expect(at(new LinkFlux(linkOf(), 0, 3), 0.25, 0).flow).toBeCloseTo(0.005, 12);
    expect(at(new LinkFlux(linkOf(), 1, 0), 0.25, 0).flow).toBeCloseTo(0.005, 12);
    expect(at(new LinkFlux(linkOf(), 0, -1), 0.44, 0).flow).toBeCloseTo(0.012, 12);
  });
  it('pass a pipe full, 0.25 m over the far crown', () => {
    expect(at(new ConduitFlux(conduitOf({ to: { kind: 'basin', index: 0 }, resistance: 1e6 }), 0, 3), 0, -0.25).flow).toBeCloseTo(0.0005, 12);
  });
});

describe('pumps on a line', () => {
  // Worked by hand: water is lifted to 3 m; 10 l/s less 1 for each meter of head, and a set of twice that.
  const one = FlowTable.tabulate(0, 8, 8, (head) => 0.01 - 0.001 * head);
  const two = FlowTable.tabulate(0, 8, 8, (head) => 2 * (0.01 - 0.001 * head));
  const pumps = (well = -1): PumpFlux => new PumpFlux(lineStore({ liftLevel: 3 }), 0, well);

  it('give nothing until they are set, and what they can against the lift then', () => {
    const flux = pumps();
    expect(at(flux, -1)).toMatchObject({ flow: 0, from: 0, to: 0 });
    expect([flux.setOne(one, true), flux.setOne(one, true), flux.setOne(one, false), flux.setOne(two, false), flux.setOne(null, false), flux.setOne(null, false), flux.setOne(null, true)])
      .toEqual([true, false, true, true, true, false, true]);
    expect(flux.delivers).toBe(true);
    flux.setOne(one, true);
    expect(at(flux, -1)).toMatchObject({ flow: expect.closeTo(0.006, 12), from: expect.closeTo(0.001, 12), to: 0 });
    expect(flux.share).toBe(1);
    flux.setOne(null, true);
    expect(at(flux, -1).flow).toBe(0);
    expect(flux.share).toBe(0);
  });
  it('lift to the water of a dry well where that stands higher, once their line delivers', () => {
    const flux = pumps(4);
    flux.setOne(one, true);
    expect(at(flux, -1, 4)).toMatchObject({ flow: expect.closeTo(0.005, 12), from: expect.closeTo(0.001, 12), to: expect.closeTo(-0.001, 12) });
    expect(at(flux, -1, 3)).toMatchObject({ flow: expect.closeTo(0.006, 12), to: 0 });
    flux.setOne(one, false);
    expect(at(flux, -1, 4)).toMatchObject({ flow: expect.closeTo(0.006, 12), to: 0 });
    const first = pumps(0);
    first.setOne(one, true);
    expect(at(first, -1, 4).flow).toBeCloseTo(0.005, 12);
    const open = pumps();
    open.setOne(one, true);
    expect(at(open, -1, 4).flow).toBeCloseTo(0.006, 12);
  });
  it('of a twin begin stage by stage, each within a film of water', () => {
    expect(film).toBe(1e-5);
    const flux = pumps();
    flux.stages = [{ start: -1, table: one }, { start: 0, table: two }];
    expect(at(flux, -1)).toMatchObject({ flow: 0, from: 0, to: 0 });
    expect(flux.share).toBe(0);
    const half = at(flux, -1 + film / 2);
    expect(half.flow).toBeCloseTo(0.003, 8);
    // The edge lets through 6.000005 l/s within a film, and half of the pumps answers to its head.
    expect(half.from).toBeCloseTo((0.006 + 0.0005 * film) / film + 0.0005, 6);
    expect(flux.share).toBeCloseTo(0.5, 9);
    expect(at(flux, -0.5)).toMatchObject({ flow: expect.closeTo(0.0065, 12), from: expect.closeTo(0.001, 12) });
    expect(flux.share).toBe(1);
    const between = at(flux, film / 2);
    expect(between.flow).toBeCloseTo(0.007 + 0.0035, 7);
    expect(between.from / (0.007 / film)).toBeCloseTo(1, 4);
    expect(flux.share).toBe(1);
    expect(at(flux, 0.5)).toMatchObject({ flow: expect.closeTo(0.015, 12), from: expect.closeTo(0.002, 12) });
    // Half way into the film of a stage the slope is half way between those of both sets: 1.5 l/s for a meter.
    expect(between.from - 0.007 / film).toBeCloseTo(0.0015, 3);
  });
  it('give no less for one more, whatever its table says', () => {
    const flux = pumps();
    flux.stages = [{ start: -1, table: two }, { start: 0, table: one }];
    expect(at(flux, 0.5).flow).toBeCloseTo(0.015, 12);
  });
  it('do not answer to a head that helps them', () => {
    const flux = pumps();
    flux.setOne(FlowTable.tabulate(0, 8, 8, (head) => 0.001 * head), true);
    expect(at(flux, -1)).toMatchObject({ flow: expect.closeTo(0.004, 12), from: 0, to: 0 });
  });
});

describe('a step of Newton', () => {
  // Bottom at 0, pumps begin at 1.
  const step = (before: number, next: number): number => clipped(0, [1], before, next);

  it('is taken whole where nothing stands in its way', () => {
    expect([step(0.5, 0.8), step(2, 3), step(0.8, 0.2), step(0.5, 1 + film / 3), step(1 + film / 2, 3), step(1 + film / 2, 0.5)]).toEqual([0.8, 3, 0.2, 1 + film / 3, 3, 0.5]);
  });
  it('lands in the film of an edge that it would jump over, from either side', () => {
    expect([step(0.5, 3), step(3, 0.5), step(0.5, 1.1)]).toEqual(Array(3).fill(1 + film / 2));
    expect(clipped(0, [1, 2], 0.5, 3)).toBe(1 + film / 2);
    expect(clipped(0, [1, 2], 3, 0.5)).toBe(2 + film / 2);
    expect(clipped(0, [1, 2], 1.5, 3)).toBe(2 + film / 2);
  });
  it('lands on the last film over the bottom before it goes dry', () => {
    expect([step(0.5, -2), step(film / 2, -2), step(0, -1), step(0.5, 0)]).toEqual([film / 2, 0, 0, 0]);
    expect(clipped(-5, [], -4, -9)).toBe(-5 + film / 2);
  });
  it('does not jump from the very edge of a film', () => {
    expect([step(1, 0.5), step(1, 1.5), step(1 + film, 0.5)]).toEqual([0.5, 1.5, 0.5]);
  });
});

describe('the stores of a yard in one row', () => {
  const model = stores({
    ponds: [pondStore({ id: 'L1', spillsTo: 1, loss: 1e-4 }), pondStore({ id: 'L2' })],
    junctions: [junctionStore({ id: 'J1' }), junctionStore({ id: 'J2' })],
    wells: [dryWell({ id: 'O1', overflowsTo: 1, returns: backTo(0, 0.2) }), dryWell({ id: 'O2' })],
    basins: [basinStore({ id: 'B1', lidTo: 1 }), basinStore({ id: 'B2', lines: [lineStore({ id: 'D2', well: 1 }), lineStore({ id: 'D3' })] })],
    links: [linkOf({ id: 'CH1', pond: 1, to: { kind: 'basin', index: 1 } }), linkOf({ id: 'CH2', pond: 0 }), linkOf({ id: 'CH3', pond: 0, to: { kind: 'pond', index: 1 } })],
    conduits: [conduitOf({ id: 'J2', junction: 1, to: { kind: 'well', index: 1 } })],
  });
  const layout = layoutOf(model);

  it('are low spots, junctions, dry wells and basins', () => {
    expect(layout).toMatchObject({ count: 8, firstJunction: 2, firstWell: 4, firstBasin: 6, ids: ['L1', 'L2', 'J1', 'J2', 'O1', 'O2', 'B1', 'B2'] });
    expect(layout.tables[6]).toBe(model.basins[0]!.storage);
  });
  it('are joined by every way that the model has', () => {
    expect(layout.fluxes.map(({ kind, id, from, to, back }) => [kind, id, from, to, back])).toEqual([
      ['loss', 'L1', 0, -1, -1], ['spill', 'L1', 0, 1, -1], ['spill', 'L2', 1, -1, -1], ['inlet', 'CH1', 1, 7, -1], ['inlet', 'CH2', 0, -1, -1], ['inlet', 'CH3', 0, 1, -1],
      ['conduit', 'J2', 3, 5, -1],
      ['seepage', 'O1', 4, -1, -1], ['overflow', 'O1', 4, 1, 0], ['seepage', 'O2', 5, -1, -1], ['overflow', 'O2', 5, -1, -1], ['lid', 'B1', 6, 1, -1], ['lid', 'B2', 7, -1, -1],
      ['pump', 'D1', 6, -1, -1], ['pump', 'D2', 7, 5, -1], ['pump', 'D3', 7, -1, -1],
    ]);
    expect(layout.pumps.map((own) => own.map(({ id }) => id))).toEqual([['D1'], ['D2', 'D3']]);
    expect(layout.pumpPlaces).toEqual([[13], [14, 15]]);
  });
  it('are asked by kind: rims, lids and crests, inlets, pumps, and all others', () => {
    expect(askedAs).toEqual({ weir: 0, link: 1, pump: 2, other: 3 });
    expect(layout.fluxes.map(codeOf)).toEqual([3, 0, 0, 1, 1, 1, 3, 3, 0, 3, 0, 0, 0, 2, 2, 2]);
  });
  it('share what pumps of constant flow give', () => {
    expect([steady(0.002).flow(-50), steady(0.002).flow(99)]).toEqual([0.002, 0.002]);
  });
});
