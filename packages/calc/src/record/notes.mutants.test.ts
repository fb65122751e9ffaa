import { describe, expect, it } from 'vitest';
import { buildModel } from '../routing/buildModel.ts';
import type { BasinStore, RoutingModel } from '../routing/model.ts';
import { changed, demoSite } from '../testing/sites.ts';
import type { SillAnswer } from './longRecord.ts';
import { recordNotes } from './notes.ts';
import { isOneSpot } from './oneSpot.ts';
import type { RecordQuality } from './quality.ts';
import type { RainRecord } from './rainRecord.ts';

const site = demoSite('tern-hollow');
const recordOf = (depths: readonly number[], step: 3600 | 300 = 3600): RainRecord =>
  ({ gauge: { id: 'X', name: '', latitude: null, longitude: null, distance: null }, step, startDay: 0, depths: Float64Array.from(depths), accumulations: [], rejected: 0 });

describe('a network that one quick route carries', () => {
  const model = buildModel(site);
  const [pond] = model.ponds;
  const [basin] = model.basins;
  const withBasin = (fields: Partial<BasinStore>): RoutingModel => ({ ...model, basins: [{ ...basin!, ...fields }] });
  const withLink = (fields: Partial<RoutingModel['links'][0]>): RoutingModel => ({ ...model, links: [{ ...model.links[0]!, ...fields }] });
  const some = [{}] as never;
  it('is one low spot with a plain basin and nothing else', () => {
    expect(isOneSpot(model)).toBe(true);
    expect(isOneSpot({ ...model, basins: [], links: [] })).toBe(true);
    expect(isOneSpot(withLink({ to: null }))).toBe(true);
    const others: RoutingModel[] = [
      { ...model, ponds: [pond!, pond!] }, { ...model, ponds: [{ ...pond!, spillsTo: 0 }] }, { ...model, basins: [basin!, basin!] }, { ...model, junctions: some }, { ...model, wells: some },
      { ...model, conduits: some }, withLink({ to: { kind: 'well', index: 0 } }), withLink({ returns: { pond: 0, share: 1 } }), withBasin({ pump: null }), withBasin({ lidTo: 0 }),
      withBasin({ units: [...basin!.units, { ...basin!.units[0]!, battery: true }] }), withBasin({ units: [...basin!.units, { ...basin!.units[0]!, startLevel: basin!.onLevel + 0.1 }] }),
      // A line that runs back and fills the basin over its on level; 1 m3 is far more than its working volume.
      withBasin({ lines: [{ ...basin!.lines[0]!, runBack: 1 }] }),
      withBasin({ lines: [{ ...basin!.lines[0]!, well: 0 }] }), withBasin({ lines: [basin!.lines[0]!, { ...basin!.lines[0]!, well: 0 }] }), withBasin({ lines: [{ ...basin!.lines[0]!, returns: { pond: 0, share: 1 } }] }),
    ];
    expect(others.map(isOneSpot)).toEqual(others.map(() => false));
  });
});

describe('what is said with a record', () => {
  const span = { from: '2001-01-01T00:00', to: '2011-01-01T00:00', hours: 1 };
  const quality = (fields: Partial<RecordQuality>): RecordQuality =>
    ({ from: span.from, to: span.to, years: [], completeYears: 0, observedYears: 9.95, gaps: [], missingHours: 0, coarse: [], accumulations: [], rejected: 0, ...fields });
  const count = (low: number, high: number) => ({ low, high, lowerLimit: 3.69, upperLimit: 12.31 });
  const answer = (fields: Partial<SillAnswer>): SillAnswer => ({ sill: 'S1', withSystem: null, withoutSystem: null, ...fields });
  const year = (number: number) => ({ year: number, valid: 1, complete: true, depth: 1 });
  const draining = changed(site, (copy) => { copy.site.lowSpots[0]!.existingLoss = 1e-4; });

  it('a record that lacks nothing, of five minutes', () => {
    const record = { ...recordOf([0], 300), gauge: { id: 'G', name: 'Roof', latitude: null, longitude: null, distance: 12 } };
    expect(recordNotes(draining, record, quality({ years: [year(2001)], completeYears: 1 }), [answer({})], null)).toEqual([
      { code: 'record.gauge', params: { name: 'Roof', id: 'G' } }, { code: 'record.gaugeDistance', params: { name: 'Roof', distance: 12 } },
      { code: 'record.span', params: { from: '2001-01-01', to: '2011-01-01', years: 10 } },
      { code: 'record.counted', params: { hours: 6 } }, { code: 'record.noReturnPeriod', params: { years: 10 } }, { code: 'record.notThisYard', params: {} },
    ]);
  });

  it('an hourly one that lacks much, in order', () => {
    const record = recordOf(new Array<number>(48).fill(0));
    const sum = { ...span, depth: 1 };
    const poor = quality({
      observedYears: 9.94, years: [year(2001), year(2002), year(2003)], completeYears: 1, gaps: [span], missingHours: 12, coarse: [span], rejected: 2,
      accumulations: [{ ...sum, kind: 'flagged' }, { ...sum, kind: 'suspected' }, { ...sum, kind: 'suspected' }],
    });
    const sills = [answer({ withSystem: count(0, 0), withoutSystem: { ...count(4, 6), estimate: true } })];
    const sill = 'Patio slider track';
    expect(recordNotes(site, record, poor, sills, null)).toEqual([
      { code: 'record.withoutEstimateRange', params: { sill, low: 4, high: 6, lowerLimit: 3.6, upperLimit: 12.4, years: 9.9 } }, { code: 'record.withNever', params: { sill, years: 9.9, upperLimit: 12.4 } },
      { code: 'record.neverEmpties', params: { spot: 'Patio low spot' } },
      { code: 'record.gauge', params: { name: 'X', id: 'X' } }, { code: 'record.distanceUnknown', params: { name: 'X' } },
      { code: 'record.span', params: { from: '2001-01-01', to: '2011-01-01', years: 9.9 } },
      { code: 'record.gaps', params: { count: 1, hours: 12, share: 0.25 } }, { code: 'record.yearsLeftOut', params: { count: 2, of: 3 } }, { code: 'record.coarse', params: { from: '2001-01-01', to: '2011-01-01' } },
      { code: 'record.flaggedSums', params: { count: 1 } }, { code: 'record.suspectedSums', params: { count: 2 } }, { code: 'record.rejected', params: { count: 2 } },
      { code: 'record.range', params: {} }, { code: 'record.clockHours', params: { share: expect.closeTo(0.13, 12) } }, { code: 'record.snow', params: {} },
      { code: 'record.counted', params: { hours: 6 } }, { code: 'record.noReturnPeriod', params: { years: 9.9 } }, { code: 'record.notThisYard', params: {} },
    ]);
  });

  it('one of each fault, and a count that is an estimate without a range', () => {
    const one = quality({ years: [year(2001), year(2002)], completeYears: 1, accumulations: [{ ...span, depth: 1, kind: 'suspected' }], rejected: 1, observedYears: 9.946 });
    const notes = recordNotes(draining, recordOf([0], 300), one, [answer({ withoutSystem: { ...count(4, 4), estimate: true } }), answer({ withoutSystem: { ...count(4, 6), estimate: false } })], null);
    const sill = 'Patio slider track';
    expect(notes.filter(({ code }) => !['record.gauge', 'record.distanceUnknown', 'record.span', 'record.counted', 'record.noReturnPeriod', 'record.notThisYard'].includes(code))).toEqual([
      { code: 'record.withoutEstimate', params: { sill, count: 4, years: 9.9, lowerLimit: 3.6, upperLimit: 12.4 } }, { code: 'record.withoutRange', params: { sill, low: 4, high: 6, years: 9.9, lowerLimit: 3.6, upperLimit: 12.4 } },
      { code: 'record.yearsLeftOut', params: { count: 1, of: 2 } }, { code: 'record.suspectedSums', params: { count: 1 } }, { code: 'record.rejected', params: { count: 1 } },
    ]);
  });

  it('counts with and without a system, and a fitted loss', () => {
    const fitted = { lowSpot: site.site.lowSpots[0]!.id, sill: 'S1', reportedPerYear: 2, share: 0.5, ways: [], losses: [] };
    const codes = (withSystem: SillAnswer['withSystem']) => recordNotes(site, recordOf([], 300), quality({}), [answer({ withSystem, withoutSystem: { ...count(4, 4), estimate: false } })], fitted).slice(0, 4);
    const sill = 'Patio slider track';
    expect(codes(count(1, 1)).slice(0, 3)).toEqual([
      { code: 'record.without', params: { sill, count: 4, lowerLimit: 3.6, upperLimit: 12.4, years: 10 } }, { code: 'record.with', params: { sill, count: 1, years: 10, upperLimit: 12.4 } },
      { code: 'record.fitted', params: { perYear: 2, share: 0.5 } },
    ]);
    expect(codes(count(0, 2))[1]).toEqual({ code: 'record.withRange', params: { sill, low: 0, high: 2, years: 10, upperLimit: 12.4 } });
    expect(codes(null).map(({ code }) => code)).toEqual(['record.without', 'record.fitted', 'record.gauge', 'record.distanceUnknown']);
  });
});
