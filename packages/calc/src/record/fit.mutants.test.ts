import { describe, expect, it } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { dayNumber } from './calendar.ts';
import { fitExistingLoss } from './fitExistingLoss.ts';
import type { RainRecord } from './rainRecord.ts';

const AREA = 400;
/** A hollow of upright walls, 50 m2, with sills 0.1 and 0.2 m over its bottom, beside the demo yard's own; 400 m2 run off into it whole and at once. */
const yard: DesignDocument = changed(demoSite('tern-hollow'), (copy) => {
  const [spot] = copy.site.lowSpots;
  const [sill] = copy.site.sills;
  const [patio] = copy.site.catchments;
  copy.system.parts = [];
  copy.construction.trenches = [];
  copy.construction.slabCuts = [];
  copy.site.lowSpots.push({ ...spot!, id: 'L2', stageArea: [{ level: 30, area: 50 }, { level: 30.5, area: 50 }], rimLevel: 30.5, existingLoss: 0 });
  copy.site.sills = [sill!, { ...sill!, id: 'low', lowSpot: 'L2', level: 30.1 }, { ...sill!, id: 'high', lowSpot: 'L2', level: 30.2 }];
  copy.site.catchments = [{ ...patio!, id: 'P', surface: 'paving', area: AREA, coefficient: 1, depressionStorage: 0, response: 'instantaneous', drainsTo: { kind: 'lowSpot', id: 'L2' } }];
});

/** Four years of five minutes from 2021 on; each burst would just reach the upper sill, 10 m3, against a loss [m3/s] that has five minutes for it. */
function bursts(losses: readonly number[]): RainRecord {
  const depths = new Float64Array(1461 * 288);
  losses.forEach((loss, year) => { depths[(365 * year + 100) * 288] = ((10 + 300 * loss) / AREA) * 1000; });
  return { gauge: { id: 'X', name: 'X', latitude: null, longitude: null, distance: null }, step: 300, startDay: dayNumber(2021, 1, 1), depths, accumulations: [], rejected: 0 };
}
/** From 0.05 m3/s down by fours to the first that is small enough, then halved seven times as a ratio: steps of the 128th root of four. */
const found = (loss: number): number => 0.05 * 4 ** (-Math.ceil((128 * Math.log(0.05 / loss)) / Math.log(4) - 1e-9) / 128);
const close = (value: number): number => expect.closeTo(value, 9) as number;

describe('the loss at which a record gives as many events as are reported', () => {
  const record = bursts([8e-4, 2e-3, 3e-4]);
  it('is the greatest that lets so many bursts reach the sill; beside it that of half as many and of half as many again', () => {
    // Two in four years: the second one reaches it up to 8e-4, the first alone up to 2e-3, all three up to 3e-4.
    expect(fitExistingLoss(yard, record, 0.5, { sill: 'high', shouldStop: () => false })).toEqual({
      lowSpot: 'L2', sill: 'high', reportedPerYear: 0.5, share: 0.5, losses: [{ lowSpot: 'L2', way: 'recorded', loss: close(found(8e-4)) }],
      ways: [{ way: 'recorded', loss: close(found(8e-4)), counted: 2, lossAtMore: close(found(3e-4)), lossAtFewer: close(found(2e-3)) }],
    });
  });
  it('is nothing for more events than there are, and the greatest that is tried where even that is not enough', () => {
    const [all] = fitExistingLoss(yard, record, 0.75, { sill: 'high' }).ways;
    expect(all).toMatchObject({ loss: close(found(3e-4)), counted: 3, lossAtMore: 0, lossAtFewer: close(found(8e-4)) });
    // 25 m3 are the rim; 0.06 m3/s would take 18 m3 in five minutes.
    const [torrents] = fitExistingLoss(yard, bursts([0.06, 0.06, 0.06, 0.001]), 0.5, { sill: 'high' }).ways;
    expect(torrents).toMatchObject({ loss: 0.05, counted: 3, lossAtMore: 0.05, lossAtFewer: 0.05 });
    expectProblems([
      [() => fitExistingLoss(yard, record, 1, { sill: 'high' }), 'record.notReached at reportedPerYear'],
      [() => fitExistingLoss(yard, { ...record, depths: record.depths.slice(0, 289) }, 1), 'record.notWholeDays at record'],
    ]);
  });
  it('is found at the sill that is asked about, or at the first one', () => {
    // The lower sill is reached by all three against any loss up to 5 m3 in 300 s more.
    expect(fitExistingLoss(yard, record, 0.75, { sill: 'low' }).ways[0]!.loss).toBeCloseTo(found(5 / 300 + 3e-4), 9);
    const first = changed(yard, (copy) => { copy.site.sills = copy.site.sills.slice(2); });
    expect(fitExistingLoss(first, record, 0.5).sill).toBe('high');
  });
  it('is given up between two years and between two trials', () => {
    // Four years are laid out; then losses by fours to the first that is small enough, 4 and for more events another, and seven halvings
    // for each of three numbers of events, one of which is known from the one before.
    let all = 0;
    fitExistingLoss(yard, record, 0.5, { sill: 'high', shouldStop: () => { all += 1; return false; } });
    expect(all).toBe(4 + 5 + 3 * 7 - 1);
    for (const last of [1, 3, 5, 8]) {
      let asked = 0;
      expect(() => fitExistingLoss(yard, record, 0.5, { sill: 'high', shouldStop: () => { asked += 1; return asked === last; } })).toThrow('record.stopped');
      expect(asked).toBe(last);
    }
  });
});
