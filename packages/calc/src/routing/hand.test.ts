import { describe, expect, it } from 'vitest';
import { GALLON, GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import type { LowSpot } from '../document/document.ts';
import { dutyFlow } from '../evaluate/pumpedParts.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { buildModel } from './buildModel.ts';
import { explainHandDifference, handModelOf } from './handDifference.ts';
import { handModel, handOutage, handPumpFlow, handStore, type HandModel } from './handModel.ts';
import { stormInflow } from './inflow.ts';
import { partsOf } from './pathParts.ts';
import { runStorm } from './run.ts';
import { designBlocks, stormRunoff } from './storm.ts';

const site = changed(demoSite('tern-hollow'), (copy) => {
  copy.rain.storm = { method: 'alternatingBlock', duration: 1800, block: 300 };
});

describe('the hand calculation', () => {
  // A prism of 100 m2, 1 m to its rim; blocks of 10 minutes, 6 mm each onto 1,000 m2: 10 l/s.
  const spot: LowSpot = { ...site.site.lowSpots[0]!, stageArea: [{ level: 0, area: 100 }, { level: 2, area: 100 }], rimLevel: 1, spillWidth: 2 };
  const model: HandModel = { lowSpot: spot, sillLevel: 0.5, runoffArea: 1000, pumpFlow: 0.004, store: 0.6, blocks: [0, 6, 6, 1.2, 0], block: 600 };

  it('counts gallons', () => {
    expect([handStore, handPumpFlow(30)]).toEqual([45 * GALLON, 30 * GALLON_PER_MINUTE]);
  });
  it('fills its store first, then the low spot, by what comes less what is pumped', () => {
    // 6 l/s for 1,200 s are 7.2 m3, 0.6 m3 of them in the store; then 2 l/s come and 4 go.
    expect(handModel(model)).toEqual({ maxLevel: expect.closeTo(0.066, 9) as number, freeboard: expect.closeTo(0.434, 9) as number });
    expect(handModel({ ...model, pumpFlow: 0.02 }).maxLevel).toBe(0);
    expect(handModel({ ...model, pumpFlow: 0, store: 0 }).maxLevel).toBeCloseTo(0.132, 9);
  });
  it('pumps on between two rains', () => {
    // 3.6 m3, 1.2 m3 less, 3.6 m3 more.
    expect(handModel({ ...model, store: 0, blocks: [6, 1.2, 6] }).maxLevel).toBeCloseTo(0.06, 9);
  });
  it('begins at nothing whenever the pump keeps it empty', () => {
    // The first block alone would pump it dry; what it could have pumped more is not saved up.
    expect(handModel({ ...model, store: 0, blocks: [0.6, 6] }).maxLevel).toBeCloseTo(0.036, 9);
  });
  it('pumps nothing while the power is out', () => {
    // 10 l/s for 600 s from 600 s on, 6 l/s before and after: 6 more in a thousandth.
    const out = (from: number, to: number): number => handModel({ ...model, store: 0, outage: [from, to] }).maxLevel;
    expect(out(600, 1200)).toBeCloseTo(0.072 + 0.024, 9);
    expect(out(600, 605)).toBeCloseTo(0.072 + 0.0002, 9);
    expect(out(0, 5)).toBeCloseTo(0.072, 9);
    expect(handModel({ ...model, store: 0, blocks: [1.2], outage: [0, 600] }).maxLevel).toBeCloseTo(0.012, 9);
    // Over the end of the rain as well: 2 l/s come for ten minutes.
    expect(out(600, 2400)).toBeCloseTo(0.072 + 0.048 + 0.012, 9);
  });
  it('spills over the rim by 3.0 in feet and seconds', () => {
    // Long rain of 0.2 m3/s onto a rim of 2 m: at rest h = (Q / (3.0 sqrt(0.3048) 2))^(2/3).
    const long = handModel({ ...model, pumpFlow: 0, store: 0, runoffArea: 20_000, blocks: Array<number>(40).fill(6) });
    expect(long.maxLevel).toBeCloseTo(1 + (0.2 / (3 * Math.sqrt(0.3048) * 2)) ** (2 / 3), 4);
  });
  it('goes in steps of about 5 s whatever the block', () => {
    // 12 s are two steps of 6 s: an outage from 6 s on takes one of them away.
    const short: HandModel = { ...model, store: 0, blocks: [0.12, 0], block: 12, outage: [6, 100] };
    expect(handModel(short).maxLevel).toBeCloseTo((0.12 - 0.024) / 100, 9);
    expect(handModel({ ...short, outage: [5, 100] }).maxLevel).toBeCloseTo((0.12 - 0.024) / 100, 9);
  });
  it('searches the worst beginning of an outage around the peak', () => {
    // The strongest block is the middle one, 1,200 to 1,800 s; an outage of 10 minutes at it keeps 2.4 m3 in.
    const storm = { ...model, store: 0, blocks: [0, 0, 6, 0, 0] };
    expect(handOutage(storm, 600)).toBeCloseTo(0.5 - 0.06, 9);
    // One of a minute at its end is as bad as any.
    expect(handOutage(storm, 60)).toBeCloseTo(0.5 - 0.036 - 0.0024, 9);
    // Rain that begins 20 minutes after the middle is beyond what is searched with a minute.
    expect(handOutage({ ...storm, blocks: [0, 0, 0, 0, 6] }, 60)).toBeCloseTo(0.5 - 0.036, 9);
    // Ten minutes and its own length before the middle it may begin: it just meets the end of the first block.
    expect(handOutage({ ...storm, blocks: [6, 0, 0, 0, 0] }, 60)).toBeCloseTo(0.5 - 0.036 - 0.0024, 9);
  });
});

describe('the hand calculation of a design', () => {
  it('is its first low spot, the sill there and its first basin', () => {
    const model = handModelOf(site, 10)!;
    const [patio, , , lawn] = site.site.catchments;
    expect(model).toMatchObject({ lowSpot: { id: 'L1' }, sillLevel: site.site.sills[0]!.level, store: handStore, block: 300 });
    expect(model.runoffArea).toBeCloseTo(patio!.area * 0.95 + lawn!.area * 0.3, 9);
    expect(model.pumpFlow).toBe(dutyFlow(site, partsOf(site, 'basin')[0]!));
    expect(model.blocks).toEqual(designBlocks(site, 10));
    const other = changed(site, (copy) => {
      copy.site.sills.unshift({ ...copy.site.sills[0]!, id: 'S0', lowSpot: 'L9', level: 99 });
      copy.site.catchments[0]!.drainsTo = { kind: 'lowSpot', id: 'L9' };
    });
    expect(handModelOf(other, 10)).toMatchObject({ sillLevel: site.site.sills[0]!.level, runoffArea: expect.closeTo(lawn!.area * 0.3, 9) as number });
  });
  it('is none without a low spot, a sill or a basin', () => {
    const without = (change: Parameters<typeof changed>[1]): unknown => explainHandDifference(changed(site, change), 10);
    expect(without((copy) => { copy.site.lowSpots = []; })).toBeNull();
    expect(without((copy) => { copy.site.sills = []; })).toBeNull();
    expect(without((copy) => { copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'basin'); })).toBeNull();
  });
  it('differs from the coupled one by its store, the head, the floats and the delay, which add up', () => {
    const told = explainHandDifference(site, 10)!;
    const model = buildModel(site);
    const run = (mode: 'real' | 'onTwin', instantaneous: boolean): number =>
      site.site.sills[0]!.level - runStorm(model, stormInflow(site, stormRunoff(site, 10, { instantaneous }), 'system'), { mode }).maxPond[0]!;
    expect(told.hand).toBe(handModel(handModelOf(site, 10)!).freeboard);
    expect(told.returnPeriod).toBe(10);
    const { storage, onLevel } = model.basins[0]!;
    const store = storage.volume(site.site.lowSpots[0]!.stageArea[0]!.level) - storage.volume(onLevel);
    const withStore = handModel({ ...handModelOf(site, 10)!, store }).freeboard;
    expect(told.store).toBeCloseTo(withStore - told.hand, 12);
    expect(told.pumpHead).toBeCloseTo(run('onTwin', true) - withStore, 9);
    expect(told.phase).toBeCloseTo(run('real', true) - run('onTwin', true), 9);
    expect(told.response).toBeCloseTo(run('real', false) - run('real', true), 9);
    expect(told.coupled).toBeCloseTo(run('real', false), 9);
    expect(told.hand + told.store + told.pumpHead + told.phase + told.response).toBeCloseTo(told.coupled, 12);
    expect(Math.abs(told.coupled - told.hand)).toBeLessThan(2 * INCH);
    // What an evaluation has already is taken as it is.
    const known = explainHandDifference(site, 10, { stores: model, coupled: (pond) => 30.4 + pond })!;
    expect(known.coupled).toBeCloseTo(site.site.sills[0]!.level - 30.4, 12);
    expect(known.pumpHead).toBe(told.pumpHead);
  });
});
