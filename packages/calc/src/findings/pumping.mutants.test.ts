import { describe, expect, it } from 'vitest';
import { FOOT, INCH, MINUTE } from '../common/constants.ts';
import type { Basin, Channel, DesignDocument, Pump } from '../document/document.ts';
import type { BasinResult, Finding, PumpResult, Results } from '../results/results.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import { cycling, floats, flotationChecks, offLevel, onAndAlarm, wallAndLid } from './basins.ts';
import type { CheckInput } from './finding.ts';
import { pumpedFreeboard } from './freeboard.ts';
import { freeze, lineCover } from './lines.ts';
import { limitsInForce } from './overrides.ts';
import { duty, groundWater, lineVelocity, returns, secondPump, solids } from './pumps.ts';

const tern = demoSite('tern-hollow');
type Copy = Changeable<DesignDocument>;
const of = <T>(copy: Copy, kind: string): Changeable<T> => copy.system.parts.find((part) => part.kind === kind) as unknown as Changeable<T>;
const input = (change: (copy: Copy) => void = () => undefined, results: Partial<Results> = {}): CheckInput => ({ document: changed(tern, change), results: results as Results, limits: limitsInForce([]) });
const said = (found: readonly Finding[], check?: string): string[] => found.filter((finding) => check === undefined || finding.check === check).map(({ code, severity }) => `${code} ${severity}`);
const patch = (finding: Finding | undefined): Record<string, unknown> => Object.fromEntries((finding?.remedy?.patch ?? []).map(({ path, value }) => [path.split('/').slice(4).join('/'), value]));
const each = (values: readonly number[], found: (value: number) => readonly Finding[], check?: string): string[] => values.map((value) => said(found(value), check).join());

describe('levels in a basin', () => {
  /** Floor at 29, inlet at 30; heights in inches over the floor, or under the inlet. */
  const basin = (fields: Partial<Record<'off' | 'on' | 'alarm', number>>, more: (copy: Copy) => void = () => undefined): CheckInput => input((copy) => {
    const own = of<Basin>(copy, 'basin');
    Object.assign(own, { floorLevel: 29, inletInvert: 30, offLevel: 29 + (fields.off ?? 5) * INCH, onLevel: 30 - (fields.on ?? 10) * INCH });
    own.alarmLevel = own.onLevel + (fields.alarm ?? 4) * INCH;
    more(copy);
  });
  it('B3, B10: the pump stops four inches over the floor, or as high as it must stand in water', () => {
    expect([4, 3.9].map((off) => said(offLevel(basin({ off }))))).toEqual([['B3.ok note', 'B10.ok note'], ['B3.sucksAir stop', 'B10.siltRoomSmall caution']]);
    const deep = (off: number): Finding[] => offLevel(basin({ off }, (copy) => { of<Pump>(copy, 'pump').minSubmergence = 6 * INCH; }));
    expect([said(deep(6), 'B3'), said(deep(5.9), 'B3'), said(deep(5.9), 'B10')]).toEqual([['B3.ok note'], ['B3.sucksAir stop'], ['B10.ok note']]);
    expect([deep(5.9)[0]!.params, patch(deep(5.9)[0])]).toEqual([expect.objectContaining({ above: expect.closeTo(5.9 * INCH, 12) as number, need: 6 * INCH }), { offLevel: 29 + 6 * INCH }]);
    expect(patch(offLevel(basin({ off: 3 }))[1])).toEqual({ offLevel: 29 + 4 * INCH });
    // Two inches are left between stop and start: 5 cm just are enough to switch.
    const narrow = (stroke: number): Finding => offLevel(basin({ off: 3 }, (copy) => { of<Basin>(copy, 'basin').onLevel = 29 + 4 * INCH + stroke; }))[0]!;
    expect([narrow(0.0501).remedy, narrow(0.0499).remedy]).toEqual([expect.anything(), null]);
  });
  it('B4: it starts two inches under the inlet, never over it', () => {
    expect(each([2, 1.9, 0, -0.1], (on) => onAndAlarm(basin({ on })), 'B4')).toEqual(['B4.ok note', 'B4.nearInlet caution', 'B4.nearInlet caution', 'B4.aboveInlet stop']);
    const over = onAndAlarm(basin({ on: -1 }))[0]!;
    expect(over.params).toMatchObject({ below: expect.closeTo(-INCH, 12), above: expect.closeTo(INCH, 12) });
    // The alarm four inches over it would stand over the inlet.
    expect(patch(over)).toEqual({ onLevel: 30 - 2 * INCH, alarmLevel: 30 });
    expect(onAndAlarm(basin({ on: -1 }, (copy) => { of<Basin>(copy, 'basin').offLevel = 30 - 2 * INCH - 0.04; }))[0]!.remedy).toBeNull();
  });
  it('B5: its alarm stands three to six inches over the start, and under the inlet', () => {
    expect(each([3, 6, 2.9, 6.1, 10.1], (alarm) => onAndAlarm(basin({ alarm })), 'B5')).toEqual(['B5.ok note', 'B5.ok note', 'B5.unusual caution', 'B5.unusual caution', 'B5.aboveInlet stop']);
    const [, found] = onAndAlarm(basin({ alarm: 10.1 }));
    expect([found!.params['over'], patch(found)['alarmLevel']]).toEqual([expect.closeTo(10.1 * INCH, 12), expect.closeTo(30 - 6 * INCH, 12)]);
    expect(patch(onAndAlarm(basin({ on: 3, alarm: 7 }))[1])['alarmLevel']).toBeCloseTo(30, 12);
  });
  it('B6, P7: floats hang three inches clear, and a tether wants a basin of 18 in', () => {
    const hung = (clearance: number, kind: Basin['floatKind'] = 'vertical', diameter = 30): CheckInput => input((copy) => { Object.assign(of<Basin>(copy, 'basin'), { floatClearance: clearance * INCH, floatKind: kind, diameter: diameter * INCH }); });
    expect(each([3, 2.9, 1, 0.9], (clearance) => floats(hung(clearance)), 'B6')).toEqual(['B6.ok note', 'B6.close caution', 'B6.close caution', 'B6.touches stop']);
    expect(patch(floats(hung(1))[0])).toEqual({ floatClearance: 3 * INCH });
    expect([said(floats(hung(3, 'tether', 18)), 'P7'), said(floats(hung(3, 'tether', 17.9)), 'P7'), said(floats(hung(3, 'vertical', 12)), 'P7')]).toEqual([['P7.ok note'], ['P7.tetherInSmallBasin stop'], ['P7.ok note']]);
    expect(patch(floats(hung(3, 'tether', 17))[1])).toEqual({ floatKind: 'vertical' });
  });
  it('B8, B9: its wall is whole where it stands in ground water, and its lid is fixed', () => {
    const wall = (fields: Partial<Basin>, table: number | null): Finding[] => wallAndLid(input((copy) => {
      Object.assign(of<Basin>(copy, 'basin'), { offLevel: 29.5, ...fields });
      copy.site.soil.seasonalHighWaterTable = table;
    }));
    expect([wall({ wall: 'perforated' }, 29.5), wall({ wall: 'perforated' }, 29.51), wall({ wall: 'perforated' }, null), wall({ wall: 'solid' }, 31)].map((found) => said(found, 'B8')[0])).toEqual(['B8.ok note', 'B8.perforatedWet stop', 'B8.perforatedWet stop', 'B8.ok note']);
    expect([patch(wall({ wall: 'perforated' }, null)[0]), said(wall({ lidFixed: false }, null), 'B9'), patch(wall({ lidFixed: false }, null)[1]), said(wall({ lidFixed: true }, null), 'B9')]).toEqual([{ wall: 'solid' }, ['B9.loose stop'], { lidFixed: true }, ['B9.ok note']]);
  });

  const result = (fields: Partial<BasinResult>) => ({ basins: [{ part: 'B1', worstStartsPerHour: 10, aloneRunTime: 90, workingVolume: 0.1, flotationAtGrade: 1.2, flotationAtWaterTable: 1.3, ...fields } as BasinResult] });
  it('B1, B2: it starts 15 times an hour, and 30 with a caution; it runs a minute, and half of one with a caution', () => {
    const at = (fields: Partial<BasinResult>): Finding[] => cycling(input(undefined, result(fields)));
    expect(each([15, 15.1, 30, 30.1], (worstStartsPerHour) => at({ worstStartsPerHour }), 'B1')).toEqual(['B1.ok note', 'B1.manyStarts caution', 'B1.manyStarts caution', 'B1.tooManyStarts stop']);
    expect(each([60, 59, 30, 29], (aloneRunTime) => at({ aloneRunTime }), 'B2')).toEqual(['B2.ok note', 'B2.shortRun caution', 'B2.shortRun caution', 'B2.tooShortRun stop']);
    expect(at({})[0]!.params).toMatchObject({ starts: 10, volume: 0.1, runTime: 90 });
  });
  it('B7: it does not float at the high water table, 1.2, nor with water at grade, 1.1', () => {
    const at = (grade: number, table: number | null): Finding[] => flotationChecks(input((copy) => { if (table === null) copy.site.soil.seasonalHighWaterTable = null; }, result({ flotationAtGrade: grade, flotationAtWaterTable: table })));
    expect([at(1.1, 1.2), at(1.09, 1.2), at(0.99, 1.2), at(1.1, 1.19), at(1.1, 0.99), at(1.05, 1.1)].map((found) => said(found))).toEqual([
      ['B7.ok note'], ['B7.lightAtGrade caution'], ['B7.floatsAtGrade stop'], ['B7.lightAtWaterTable caution'], ['B7.floatsAtWaterTable stop'], ['B7.lightAtGrade caution', 'B7.lightAtWaterTable caution'],
    ]);
    expect([said(at(1.2, null)), said(at(1, null))]).toEqual([['B7.waterTableUnknown caution'], ['B7.lightAtGrade caution', 'B7.waterTableUnknown caution']]);
    expect([at(1.1, 1.2)[0]!.params, at(1.2, null)[0]!.params]).toEqual([expect.objectContaining({ atTable: 1.2, atGrade: 1.1 }), expect.objectContaining({ atTable: 0 })]);
    // A table that lies under the basin lifts nothing and is no unknown one.
    expect(said(flotationChecks(input(undefined, result({ flotationAtWaterTable: null }))))).toEqual(['B7.ok note']);
  });
});

describe('a pump at its duty', () => {
  /** The demo pump: 3.15451 l/s at the end of its sheet, 5.4864 m at shut-off. */
  const [runOut, shutOff] = [0.00315451, 5.4864];
  const at = (fields: Partial<PumpResult['dutyAtOff']>, more: Partial<PumpResult> = {}, change?: (copy: Copy) => void): CheckInput =>
    input(change, { pumps: [{ part: 'M1', dutyAtOff: { flow: 0.0015, head: 3, staticHead: 1, velocity: 1, basinLevel: 29, ...fields }, runBackShare: 0, runBack: 0.01, weepShare: 0, weepFlow: 1e-5, ...more } as PumpResult] });
  it('P1, P5: works in the middle three fifths of its curve, and lifts three quarters of its shut-off head', () => {
    expect(each([0.5, 0.2, 0.8, 0.19, 0.81, 0, 1], (share) => duty(at({ flow: share * runOut })), 'P1')).toEqual(['P1.ok note', 'P1.ok note', 'P1.ok note', 'P1.endOfCurve caution', 'P1.endOfCurve caution', 'P1.noFlow stop', 'P1.beyondCurve stop']);
    expect(each([0.75, 0.76, 0.85, 0.86], (share) => duty(at({ staticHead: share * shutOff })), 'P5')).toEqual(['P5.ok note', 'P5.highLift caution', 'P5.highLift caution', 'P5.tooHigh stop']);
    expect(duty(at({}))[0]!.params).toMatchObject({ flow: 0.0015, head: 3, lift: 1, shutOff });
    expect(each([0, 1], (share) => duty(at({ flow: share * runOut })), 'P5')).toEqual(['P5.ok note', 'P5.ok note']);
  });
  it('P3: keeps ahead of ground water by half, and by a fifth with a caution', () => {
    const drained = (flow: number): Finding[] => groundWater({ ...at({ flow }), document: changed(tern, (copy) => {
      copy.system.parts.push({ kind: 'underdrain', id: 'U', name: 'Drain', drainsTo: 'B1', length: 10, diameter: 0.1, invertUp: 30.3, invertDown: 30.2, inflowPerLength: 1e-4, seepage: null } as unknown as Copy['system']['parts'][0]);
    }) });
    expect(each([0.0015, 0.00149, 0.0012, 0.00119], (flow) => drained(flow))).toEqual(['P3.ok note', 'P3.tight caution', 'P3.tight caution', 'P3.short stop']);
    expect([drained(0.001)[0]!.params['inflow'], groundWater(at({}))]).toEqual([expect.closeTo(0.001, 12), []]);
  });
  it('P4: runs at 2 to 5 ft/s in its line, and no faster than 8', () => {
    expect(each([2, 1.9, 5, 5.1, 8, 8.1], (velocity) => lineVelocity(at({ velocity: velocity * FOOT })))).toEqual(['P4.ok note', 'P4.slow stop', 'P4.ok note', 'P4.fast caution', 'P4.fast caution', 'P4.tooFast stop']);
  });
  it('P6: passes what the grates of its basin let through, half an inch without a basket', () => {
    const passing = (pumpSolids: number, slot: number): Finding[] => solids(at({}, {}, (copy) => {
      of<Pump>(copy, 'pump').solids = pumpSolids * INCH;
      of<Channel>(copy, 'channel').grate.slotWidth = slot * INCH;
    }));
    expect([passing(0.5, 0.5), passing(0.4, 0.3), passing(0.25, 0.2), passing(0.2, 0.1), passing(0.5, 0.6)].map((found) => said(found)[0])).toEqual(['P6.ok note', 'P6.basket caution', 'P6.basket caution', 'P6.tooSmall stop', 'P6.smallerThanSlot stop']);
    expect([passing(0.5, 0.6)[0]!.params, patch(passing(0.5, 0.6)[0])]).toEqual([expect.objectContaining({ solids: 0.5 * INCH, slot: 0.6 * INCH }), { 'grate/slotWidth': 0.5 * INCH }]);
    expect(said(passing(0, 0.1))).toEqual(['P6.tooSmall stop']);
  });
  it('P8: a second one is called for where the yard floods without power in ten minutes, and without a system', () => {
    const alone = (minutes: number, without: number, change?: (copy: Copy) => void): Finding[] => secondPump(input(change, {
      outage: { longestSafe: minutes * MINUTE, returnPeriod: 10 } as Results['outage'],
      freeboards: [{ sill: 'S1', returnPeriod: tern.rain.designReturnPeriod, withoutSystem: without * INCH }, { sill: 'S1', returnPeriod: 9999, withoutSystem: -1 }] as unknown as Results['freeboards'],
    }));
    expect([alone(9, 0.4), alone(10, 0.4), alone(9, 0.5)].map((found) => said(found)[0])).toEqual(['P8.secondWanted caution', 'P8.onePump note', 'P8.onePump note']);
    expect(alone(9, 0.4)[0]!.params).toMatchObject({ duration: 9 * MINUTE, returnPeriod: 10 });
    expect(said(alone(9, 0.4, (copy) => { copy.system.parts.push({ ...of<Pump>(copy, 'pump'), id: 'M2' } as Changeable<Pump>); }))).toEqual(['P8.ok note']);
    expect(secondPump(input(undefined, { outage: null }))).toEqual([]);
  });
  it('N1, N2: a quarter of its working volume may run back, and a twentieth of its flow through the weep hole', () => {
    const open = (runBackShare: number): Finding[] => returns(at({}, { runBackShare }, (copy) => { of<{ present: boolean }>(copy, 'checkValve').present = false; }));
    expect(each([0.25, 0.26, 0.5, 0.51], open)).toEqual(['N1.ok note', 'N1.runBack caution', 'N1.runBack caution', 'N1.runBackLarge stop']);
    expect([patch(open(0.3)[0]), open(0.3)[0]!.params]).toEqual([{ present: true }, expect.objectContaining({ volume: 0.01, share: 0.3, weep: 1e-5, weepShare: 0 })]);
    const weeping = (weepShare: number, diameter = 0.004762): Finding[] => returns(at({}, { weepShare }, (copy) => { of<{ diameter: number }>(copy, 'weepHole').diameter = diameter; }));
    expect(each([0.05, 0.051, 0.1, 0.101], (share) => weeping(share))).toEqual(['N2.ok note', 'N2.large caution', 'N2.large caution', 'N2.tooLarge stop']);
    // An eighth of an inch is the usual smaller one.
    expect([patch(weeping(0.1)[0]), weeping(0.1, INCH / 8)[0]!.remedy]).toEqual([{ diameter: INCH / 8 }, null]);
    expect(said(returns(at({}, {}, (copy) => { copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole'); })))).toEqual(['N2.missing caution']);
  });
});

describe('what a pump leaves under a sill, and its line in frost', () => {
  it('P2: an inch in the design storm, half of one with a caution; the worst of the sills that it guards', () => {
    const left = (lower: number, other = 9): Finding[] => pumpedFreeboard(input((copy) => { copy.site.sills.push({ ...copy.site.sills[0]!, id: 'S2' }, { ...copy.site.sills[0]!, id: 'S3', lowSpot: 'L9' }); }, {
      freeboards: [['S2', other], ['S1', lower], ['S3', -9]].map(([sill, inches]) => ({ sill, returnPeriod: tern.rain.designReturnPeriod, lower: (inches as number) * INCH, onTwin: 1, upper: 2, minutesOverSill: 3, withoutSystem: -1 })) as unknown as Results['freeboards'],
      pumps: [{ part: 'M1', dutyAtOff: { flow: 0.002 } }] as unknown as Results['pumps'],
    }));
    expect(each([1, 0.9, 0.5, 0.4, -0.1], (lower) => left(lower))).toEqual(['P2.ok note', 'P2.freeboardThin caution', 'P2.freeboardThin caution', 'P2.freeboardShort stop', 'P2.overSill stop']);
    expect(left(2, 1.5)[0]!.params).toMatchObject({ freeboard: 1.5 * INCH, shortBy: -1.5 * INCH, middle: 1, upper: 2, duration: 180, without: -1, flow: 0.002 });
  });
  it('N9, N11: it lies under the frost or empties whole, a foot deep', () => {
    const line = (cover: number, frost: number | null, valve = true, lowestSag: number | null = null): CheckInput => input((copy) => {
      Object.assign(of<object>(copy, 'dischargeLine'), { coverMin: cover * INCH, lowestSag });
      of<{ present: boolean }>(copy, 'checkValve').present = valve;
      copy.site.soil.frostDepth = frost === null ? null : frost * INCH;
    });
    expect([freeze(line(12, null)), freeze(line(12, 12)), freeze(line(11.9, 12)), freeze(line(11.9, 12, false)), freeze(line(11.9, 12, false, 29))].map((found) => said(found)[0])).toEqual(['N9.unknown note', 'N9.ok note', 'N9.holdsWater caution', 'N9.drains note', 'N9.holdsWater caution']);
    expect([patch(freeze(line(8, 12))[0]), freeze(line(8, 12))[0]!.params, freeze(line(8, null))[0]!.params]).toEqual([{ coverMin: 12 * INCH }, expect.objectContaining({ cover: 8 * INCH, frost: 12 * INCH }), expect.objectContaining({ frost: 0 })]);
    expect(each([12, 11.9, 6, 5.9], (cover) => lineCover(line(cover, null)))).toEqual(['N11.ok note', 'N11.shallow caution', 'N11.shallow caution', 'N11.tooShallow stop']);
    expect(patch(lineCover(line(3, null))[0])).toEqual({ coverMin: 12 * INCH });
  });
});
