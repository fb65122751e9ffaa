import { describe, expect, test, vi } from 'vitest';
import { INCH, MINUTE } from '../common/constants.ts';
import type { WhatIf, WhatIfCase } from '../results/decisions.ts';
import { handModelOf } from '../routing/handDifference.ts';
import { handOutage } from '../routing/handModel.ts';
import { changed, demoSite, withPart } from '../testing/sites.ts';
import { EvaluationContext } from './context.ts';
import { outage } from './outage.ts';
import { whatIfs } from './whatIf.ts';
import { exitHalfBlocked, saturatedLevel, whatIfSetups } from './whatIfCases.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const site = demoSite('tern-hollow');
const context = new EvaluationContext(site);
const all = whatIfs(context);
const of = (name: WhatIfCase, returnPeriod: number, list: readonly WhatIf[] = all): WhatIf => list.find((item) => item.case === name && item.returnPeriod === returnPeriod)!;
const freeboard = (item: WhatIf): number => item.sills[0]!.freeboard;
const designed = (returnPeriod: number): number => context.sills[0]!.level - context.run(returnPeriod, 'system', { mode: 'onTwin' }).maxPond[0]!;

describe('what-ifs of Tern Hollow', () => {
  test('answer every case in every storm, once', () => {
    expect(all.map((item) => `${item.case} ${item.at} ${item.returnPeriod}`).length).toBe(new Set(all.map((item) => `${item.case} ${item.at} ${item.returnPeriod}`)).size);
    expect(new Set(all.map((item) => item.case))).toEqual(new Set<WhatIfCase>([
      'noSystem', 'pumpFailed', 'powerOut', 'grateHalfBlocked', 'emitterHalfBlocked', 'gutterOverflowing', 'outletSaturated', 'checkValveMissing',
    ]));
    for (const item of all) {
      expect(item.maxLevels).toHaveLength(1);
      expect(item.sills[0]!.freeboard).toBeCloseTo(context.sills[0]!.level - item.maxLevels[0]!, 9);
      expect(item.sills[0]!.minutesOverSill > 0).toBe(item.sills[0]!.freeboard < 0);
    }
  });

  test.each([2, 10, 25, 100])('nothing that fails makes it better but the valve, which costs head, %i years', (returnPeriod) => {
    for (const name of ['noSystem', 'pumpFailed', 'powerOut', 'grateHalfBlocked', 'emitterHalfBlocked', 'gutterOverflowing', 'outletSaturated'] as const) {
      expect(freeboard(of(name, returnPeriod)), name).toBeLessThanOrEqual(designed(returnPeriod) + 1e-4);
    }
    expect(freeboard(of('noSystem', returnPeriod))).toBeLessThan(freeboard(of('pumpFailed', returnPeriod)));
    expect(freeboard(of('pumpFailed', returnPeriod))).toBeLessThan(freeboard(of('powerOut', returnPeriod)));
  });

  // Source: the hand model of the trade's worked example (ours): nothing -1.08, -1.22, -1.29, -1.37 in; roof diverted only -0.71, -1.00, -1.05, -1.11 in.
  test('no system and a dead pump come near the hand model', () => {
    const nothing = [-1.08, -1.22, -1.29, -1.37];
    const diverted = [-0.71, -1.0, -1.05, -1.11];
    [2, 10, 25, 100].forEach((period, i) => {
      // The hand model has neither surface storage nor travel time, and 45 gal in basin and pipes.
      expect(Math.abs(freeboard(of('noSystem', period)) / INCH - nothing[i]!)).toBeLessThanOrEqual(0.08);
      expect(Math.abs(freeboard(of('pumpFailed', period)) / INCH - diverted[i]!)).toBeLessThanOrEqual(0.12);
    });
  });

  test('half an hour without power comes near the hand model once that has the real store', () => {
    const { ponds, basins } = context.model;
    const store = basins[0]!.storage.volume(ponds[0]!.storage.bottom) - basins[0]!.storage.volume(basins[0]!.onLevel);
    const hand = handOutage({ ...handModelOf(site, 10)!, store }, 30 * MINUTE);
    // Left over: head on the pump, and what the surfaces keep.
    expect(Math.abs(freeboard(of('powerOut', 10)) - hand) / INCH).toBeLessThanOrEqual(0.3);
  });

  test('the worst start is the worst of all whole minutes of the storm', () => {
    const search = context.outageSearch(10);
    for (const duration of [15 * MINUTE, 30 * MINUTE]) {
      let worst = Infinity;
      for (let from = 0; from < 86400; from += MINUTE) worst = Math.min(worst, search.freeboard(from, duration));
      expect(search.worst(duration).freeboard).toBe(worst);
    }
  });

  test('the longest outage floods nothing, a minute more does', () => {
    const { longestSafe, cases } = outage(context)!;
    const search = context.outageSearch(10);
    expect(search.worst(longestSafe).freeboard).toBeGreaterThanOrEqual(0);
    expect(search.worst(longestSafe + MINUTE).freeboard).toBeLessThan(0);
    for (let i = 1; i < cases.length; i += 1) expect(cases[i]!.worstFreeboard).toBeLessThan(cases[i - 1]!.worstFreeboard);
    for (const item of cases) expect(item.worstFreeboard).toBeLessThanOrEqual(item.fromPeak);
  });

  test('a battery holds until it is empty', () => {
    const pump = site.system.parts.find(({ id }) => id === 'M1');
    if (pump?.kind !== 'pump') throw new Error('M1 is a pump');
    const withBattery = (energy: number): EvaluationContext => new EvaluationContext(changed(site, (copy) => {
      copy.system.parts.push({ ...pump, curve: pump.curve.map((point) => ({ ...point })), id: 'M2', name: 'Backup', role: 'standby', power: 'battery', energy, inputPower: 400, startLevel: null });
    }));
    const safe = [0, 400 * 10 * MINUTE, 400 * 240 * MINUTE].map((energy) => outage(withBattery(energy))!.longestSafe);
    expect(safe[0]).toBeLessThan(safe[1]!);
    expect(safe[1]).toBeLessThan(safe[2]!);
    expect(safe[2]).toBe(240 * MINUTE);
  });
});

describe('what goes wrong, as a document', () => {
  const outlet = site.system.parts.find(({ id }) => id === 'O1')!;
  if (outlet.kind !== 'outlet') throw new Error('O1 is an outlet');

  test('half of the exit at 30 gpm takes the head of an orifice', () => {
    const blocked = exitHalfBlocked(site, outlet).system.parts.find(({ id }) => id === 'O1')!;
    // By hand: 31.6 gpm = 1.99e-3 m3/s through 0.6 x 0.5 x pi/4 x 0.1016^2 = 2.43e-3 m2: 0.82 m/s, 0.034 m.
    expect(blocked.kind === 'outlet' && Math.abs(blocked.openingHead - outlet.openingHead - 0.034)).toBeLessThan(0.003);
  });

  test('an outlet on the flat yard stands under water to the rim, one far below does not', () => {
    expect(saturatedLevel(site, outlet)).toBe(site.site.lowSpots[0]!.rimLevel);
    const low = { ...outlet, level: 29, waterLevel: 29, groundLevel: 29.1 };
    expect(saturatedLevel(site, low)).toBeCloseTo(29.1 + 0.03048, 12);
    const well = { area: 1, perimeter: 4, depth: 1, voids: 0.4, bottomLevel: 28.5, infiltrationRate: 1e-5, overflow: false, overflowsTo: null };
    expect(saturatedLevel(site, { ...low, dryWell: well })).toBeCloseTo(29.5, 12);
  });

  test('half of what every run counts on is taken off a grate', () => {
    const blocked = whatIfSetups(site).find((setup) => setup.case === 'grateHalfBlocked')!.document.system.parts.find(({ id }) => id === 'CH1');
    expect(blocked?.kind === 'channel' && blocked.grate.clogging).toBe(0.25);
  });

  test('only a valve that is there can be missing', () => {
    expect(whatIfSetups(withPart(site, 'V1', { present: false })).some((setup) => setup.case === 'checkValveMissing')).toBe(false);
  });
});
