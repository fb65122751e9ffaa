import { describe, expect, it } from 'vitest';
import { FOOT, HOUR, INCH } from '../common/constants.ts';
import type { DesignDocument, DryWell, Outlet, Pipe } from '../document/document.ts';
import type { Finding, OutletResult, Results } from '../results/results.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import { dryWells } from './dryWells.ts';
import type { CheckInput } from './finding.ts';
import { distances, erosion, outletQuestions, pits, receivingWater } from './outlets.ts';
import { limitsInForce } from './overrides.ts';

const tern = demoSite('tern-hollow');
const [first] = tern.system.parts.filter((part): part is Outlet => part.kind === 'outlet');
const [pipe] = tern.system.parts.filter((part): part is Pipe => part.kind === 'pipe');
type Copy = Changeable<DesignDocument>;
/** The yard with this outlet alone, at the place of the second part, and what else is changed. */
function input(fields: Partial<Outlet>, more: { soil?: Partial<DesignDocument['site']['soil']>; result?: Partial<OutletResult>; change?: (copy: Copy) => void } = {}): CheckInput {
  const document = changed(tern, (copy) => {
    copy.system.parts = [{ ...pipe!, id: 'P', drainsTo: 'O', length: 10, invertUp: 31, invertDown: 30 }, { ...first!, id: 'O', pit: null, dryWell: null, level: 30, waterLevel: 30, ...fields }] as unknown as Copy['system']['parts'];
    Object.assign(copy.site.soil, more.soil);
    more.change?.(copy);
  });
  return { document, results: { outlets: [{ part: 'O', lineVolume: 0, exitVelocity: null, ...more.result }] } as unknown as Results, limits: limitsInForce([]) };
}
const codes = (found: readonly Finding[]): string[] => found.map(({ code, severity }) => `${code} ${severity}`);
const patch = (finding: Finding | undefined): Record<string, unknown> => Object.fromEntries((finding?.remedy?.patch ?? []).map(({ path, value }) => [path.replace('/system/parts/', ''), value]));
const feet = (list: readonly number[]): number[] => list.map((value) => value * FOOT);

it('a no to any question stops, an unknown one is a caution', () => {
  for (const [answer, severity] of [['no', 'stop'], ['unknown', 'caution'], ['yes', 'note'], ['notApplicable', 'note']] as const) {
    const questions = Object.fromEntries(Object.keys(first!.questions).map((key) => [key, answer])) as unknown as Outlet['questions'];
    expect(outletQuestions(input({ questions })).map(({ check, severity: found }) => `${check} ${found}`)).toEqual(Array.from({ length: 10 }, (_, i) => `O${String(i + 1)} ${severity}`));
  }
});

describe('a percolation pit', () => {
  const pit = { area: 0.5, depth: 0.4, voids: 0.4, bottomLevel: 29 };
  const of = (check: string, fields: Partial<typeof pit>, soil: Partial<DesignDocument['site']['soil']>, lineVolume = 0.08): Finding =>
    pits(input({ pit: { ...pit, ...fields } }, { soil, result: { lineVolume } })).find((finding) => finding.check === check)!;
  it('holds the line: 0.5 x 0.4 m at 40 % are 80 l; the cure is as wide as it must be', () => {
    expect([0.08, 0.0801, 0].map((line) => `${of('N3', {}, {}, line).code} ${of('N3', {}, {}, line).severity}`)).toEqual(['N3.ok note', 'N3.small caution', 'N3.ok note']);
    const small = of('N3', {}, {}, 0.12);
    expect(small.params).toMatchObject({ pit: expect.closeTo(0.08, 12), line: 0.12 });
    expect(patch(small)).toEqual({ '1/pit/area': expect.closeTo(0.12 / (0.4 * 0.4), 5) });
  });
  it('stands over the high water table; the cure is the same volume, shallower under the same top', () => {
    const at = (seasonalHighWaterTable: number | null): Finding => of('N5', {}, { seasonalHighWaterTable });
    expect([29, 29.01, null].map((table) => `${at(table).code} ${at(table).severity}`)).toEqual(['N5.ok note', 'N5.inWaterTable stop', 'N5.waterTableUnknown caution']);
    expect([at(28.9).params['above'], at(null).params['above']]).toEqual([expect.closeTo(0.1, 12), 0]);
    expect(patch(at(29.2))).toEqual({ '1/pit/depth': expect.closeTo(0.2, 12), '1/pit/bottomLevel': expect.closeTo(29.2, 12), '1/pit/area': expect.closeTo(1, 5) });
    // A bed of less than four inches is none.
    expect(at(29.31).remedy).toBeNull();
  });
  it('soaks away at half the measured rate within a day, with a caution within three', () => {
    // 0.4 m at 40 % are 0.16 m of water.
    const at = (hours: number): Finding => of('N6', {}, { infiltrationRate: 0.16 / (0.5 * hours * HOUR) });
    expect([24, 24.1, 72, 72.1].map((hours) => `${at(hours).code} ${at(hours).severity}`)).toEqual(['N6.ok note', 'N6.slow caution', 'N6.slow caution', 'N6.tooSlow stop']);
    expect(at(36).params).toMatchObject({ time: expect.closeTo(36 * HOUR, 6) });
    expect(patch(at(36))).toMatchObject({ '1/pit/depth': expect.closeTo(0.4 * (24 / 36), 9) });
    expect([of('N6', {}, { infiltrationRate: null }), of('N6', {}, { infiltrationRate: 0 })].map(({ code, severity }) => `${code} ${severity}`)).toEqual(['N6.untested note', 'N6.untested note']);
    expect([pits(input({ pit: { ...pit, voids: 0 } })), pits(input({ pit: null }))]).toEqual([[], []]);
  });
});

describe('what lets water out', () => {
  it('lies ten feet from foundation and lot line, with a caution down to five', () => {
    const near = (foundation: number, lotLine: number, fields: Partial<Outlet> = {}): string[] => codes(distances(input({ outletKind: 'percolationTee', distanceToFoundation: foundation * FOOT, distanceToLotLine: lotLine * FOOT, ...fields })));
    expect([near(10, 10), near(9.9, 10), near(5, 9.9), near(4.9, 5), near(10, 4.9)]).toEqual([
      ['N4.ok note'], ['N4.nearFoundation caution'], ['N4.nearFoundation caution', 'N4.nearLotLine caution'], ['N4.atFoundation stop', 'N4.nearLotLine caution'], ['N4.ok note', 'N4.atLotLine stop'],
    ]);
    expect([near(1, 1, { outletKind: 'curb' }), near(1, 1, { outletKind: 'stormConnection' }), near(1, 10, { dryWell: well })]).toEqual([[], [], []]);
  });
  it('stands over the gutter of a curb, and six inches over the water that stands in a ditch', () => {
    const curb = (groundLevel: number): Finding => receivingWater(input({ outletKind: 'curb', groundLevel }))[0]!;
    expect([curb(30), curb(30.02)].map(({ code, severity }) => `${code} ${severity}`)).toEqual(['N10.ok note', 'N10.belowGutter stop']);
    expect([curb(30.02).params, patch(curb(30.02))]).toEqual([
      { outlet: first!.name, above: expect.closeTo(-0.02, 12), below: expect.closeTo(0.02, 12) }, { '1/level': 30.02, '1/waterLevel': 30.02, '0/invertDown': 30.02 },
    ]);
    const ditch = (above: number, fields: Partial<Outlet> = {}): Finding[] => receivingWater(input({ outletKind: 'daylight', ordinaryWater: 30 - above, ...fields }));
    expect([6 * INCH, 5.9 * INCH, 0, -0.01].map((above) => codes(ditch(above))[0])).toEqual(['N10.ok note', 'N10.lowOverWater caution', 'N10.lowOverWater caution', 'N10.underWater stop']);
    expect(ditch(-0.01)[0]!.params).toMatchObject({ above: expect.closeTo(-0.01, 12), below: expect.closeTo(0.01, 12) });
    expect(patch(ditch(0)[0])).toEqual({ '1/level': expect.closeTo(30 + 6 * INCH, 9), '1/waterLevel': expect.closeTo(30 + 6 * INCH, 9), '0/invertDown': expect.closeTo(30 + 6 * INCH, 9) });
    // Water that stands higher anyway stays; a pipe that would lose its fall is not raised: 1/96 of ten meters.
    expect(Object.keys(patch(ditch(0, { waterLevel: 31 })[0]))).toEqual(['1/level', '0/invertDown']);
    expect([ditch(-0.74)[0]!.remedy, ditch(-0.75)[0]!.remedy]).toEqual([expect.anything(), null]);
    expect(ditch(1, { ordinaryWater: null })).toEqual([]);
  });
  it('lets it out slowly enough for its ground: 2.5, 5 and 10 ft/s, and no more than 3, 6 and 15', () => {
    const at = (exitVelocity: number | null, exitGround: Outlet['exitGround'], fields: Partial<Outlet> = {}): Finding[] => erosion(input({ outletKind: 'daylight', exitGround, ...fields }, { result: { exitVelocity: exitVelocity === null ? null : exitVelocity * FOOT } }));
    for (const [ground, slow, fast] of [['grass', 2.5, 3], ['denseGrass', 5, 6], ['stone', 10, 15]] as const) {
      expect([slow, slow + 0.1, fast, fast + 0.1].map((velocity) => codes(at(velocity, ground))[0])).toEqual(['N7.ok note', 'N7.fast caution', 'N7.fast caution', 'N7.scours stop']);
    }
    expect(at(4, 'grass')[0]).toMatchObject({ params: { velocity: 4 * FOOT }, remedy: { code: 'remedy.stoneApron', patch: [{ path: '/system/parts/1/exitGround', value: 'stone' }] } });
    expect([codes(at(2.5, null)), codes(at(2.6, null)), codes(at(9, null))]).toEqual([['N7.ok note'], ['N7.groundUntold caution'], ['N7.groundUntold caution']]);
    expect([at(null, 'grass'), at(9, 'grass', { outletKind: 'curb' }), at(9, 'grass', { outletKind: 'stormConnection' }), at(9, 'grass', { dryWell: well })]).toEqual([[], [], [], []]);
  });
});

const inchPerHour = INCH / HOUR;
const well: DryWell = { ...({} as DryWell), area: 4, perimeter: 8, depth: 1, voids: 0.4, bottomLevel: 29, infiltrationRate: inchPerHour, overflow: true, overflowsTo: null };

describe('a dry well', () => {
  const good = { soil: { infiltrationRate: 2 * inchPerHour, seasonalHighWaterTable: 29 - 2 * FOOT } };
  const found = (fields: Partial<DryWell>, more: Parameters<typeof input>[1] = good, outlet: Partial<Outlet> = {}): Finding[] => dryWells(input({ dryWell: { ...well, ...fields }, distanceToFoundation: 10 * FOOT, ...outlet }, more));
  /** 0.4 x 4 m2 x dh/dt = -f (4 + 8 h): t = 0.2/f x ln(1 + 2 h). */
  const time = (depth: number, rate: number): number => (0.2 / rate) * Math.log(1 + 2 * depth);
  it('is good with half the measured rate, two feet over the water and ten from the house', () => {
    expect(codes(found({}))).toEqual(['N8.ok note']);
    expect(found({})[0]!.params['time']).toBeCloseTo(time(1, inchPerHour), 3);
    expect(dryWells(input({ dryWell: null }))).toEqual([]);
  });
  it('counts half of a rate between half an inch and ten inches an hour', () => {
    const rates = (measured: number | null, design: number): Finding[] => found({ infiltrationRate: design * inchPerHour }, { soil: { ...good.soil, infiltrationRate: measured === null ? null : measured * inchPerHour } });
    expect(codes(rates(2, 1.01))).toEqual(['N8.factorLow stop']);
    expect([rates(2, 1.01)[0]!.params, patch(rates(2, 1.01)[0])]).toEqual([expect.objectContaining({ measured: 2 * inchPerHour, design: 1.01 * inchPerHour, factor: expect.closeTo(2 / 1.01, 9) as number }), { '1/dryWell/infiltrationRate': expect.closeTo(inchPerHour, 12) }]);
    expect([codes(rates(0.5, 0.25)), codes(rates(0.49, 0.24)), codes(rates(10, 5)), codes(rates(10.2, 5)), codes(rates(null, 1))]).toEqual([['N8.ok note'], ['N8.soilSlow stop'], ['N8.ok note'], ['N8.soilFast caution'], ['N8.untested caution']]);
    expect(codes(rates(2, 0))).toEqual(['N8.neverEmpties stop']);
    // What was not measured, and what soaks away nothing, has no factor.
    expect([rates(null, 1)[0]!.params, rates(0.49, 0)[0]!.params]).toEqual([expect.objectContaining({ measured: 0, factor: 0 }), expect.objectContaining({ factor: 0 })]);
    expect(rates(2, 1.01)[0]!.remedy!.params['rate']).toBeCloseTo(inchPerHour, 12);
    expect(rates(0, 1).find(({ code }) => code === 'N8.factorLow')!.remedy).toBeNull();
  });
  it('empties within three days; the cure is as shallow as it must be, by tenths, its plan growing both ways', () => {
    const slow = (days: number): Finding[] => {
      const rate = time(1, 1) / (days * 24 * HOUR);
      return found({ infiltrationRate: rate }, { soil: { ...good.soil, infiltrationRate: 2 * inchPerHour } });
    };
    expect([codes(slow(3)), codes(slow(3.01))]).toEqual([['N8.ok note'], ['N8.emptiesSlowly stop']]);
    // Four and a half days: at a depth of 0.9^n with areas 4/0.9^n and walls 8/0.9^(n/2), the first n that needs three days or less.
    const rate = time(1, 1) / (4.5 * 24 * HOUR);
    let n = 1;
    const left = (k: number): number => {
      const [area, wall] = [4 / 0.9 ** k, 8 / 0.9 ** (k / 2)];
      return ((0.4 * area) / (rate * wall)) * Math.log(1 + (wall * 0.9 ** k) / area);
    };
    while (left(n) > 72 * HOUR) n += 1;
    expect(patch(slow(4.5)[0])).toEqual({
      '1/dryWell/depth': expect.closeTo(0.9 ** n, 9), '1/dryWell/area': expect.closeTo(4 / 0.9 ** n, 4), '1/dryWell/perimeter': expect.closeTo(8 / 0.9 ** (n / 2), 4), '1/dryWell/bottomLevel': expect.closeTo(30 - 0.9 ** n, 9),
    });
    // The last one that is tried is 0.9^21 of it: left(k) goes with 1/rate, and this one lies between those of 20 and of 21.
    const slower = (left(20) + left(21)) / 2 / (72 * HOUR);
    expect(patch(slow(4.5 / slower)[0])['1/dryWell/depth']).toBeCloseTo(0.9 ** 21, 9);
    expect(slow(300)[0]!.remedy).toBeNull();
  });
  it('stands two feet over the high water table; the cure lifts its bottom', () => {
    const over = (table: number | null): Finding[] => found({}, { soil: { ...good.soil, seasonalHighWaterTable: table } });
    expect([codes(over(29 - 1.99 * FOOT)), codes(over(null))]).toEqual([['N8.nearWaterTable stop'], ['N8.waterTableUnknown caution']]);
    expect(over(29 - 1.5 * FOOT)[0]!.params['above']).toBeCloseTo(1.5 * FOOT, 12);
    expect(patch(over(29 - 1.5 * FOOT)[0])).toMatchObject({ '1/dryWell/depth': expect.closeTo(1 - 0.5 * FOOT, 9), '1/dryWell/bottomLevel': expect.closeTo(29 + 0.5 * FOOT, 9) });
  });
  it('keeps its distance and overflows, but not to a sill', () => {
    expect(feet([10, 9.9]).map((distanceToFoundation) => codes(found({}, good, { distanceToFoundation }))[0])).toEqual(['N8.ok note', 'N8.nearFoundation stop']);
    const none = found({ overflow: false });
    expect([codes(none), patch(none[0])]).toEqual([['N8.noOverflow stop'], { '1/dryWell/overflow': true }]);
    const change = (copy: Copy): void => { copy.site.sills.push({ ...copy.site.sills[0]!, id: 'S2', lowSpot: 'L2' }); };
    expect([codes(found({ overflowsTo: 'L1' }, { ...good, change })), codes(found({ overflowsTo: 'L9' }))]).toEqual([['N8.overflowsToSill caution'], ['N8.ok note']]);
  });
});
