import { describe, expect, it } from 'vitest';
import { FOOT, INCH } from '../common/constants.ts';
import type { CatchBasin, Channel, DesignDocument, Outlet, Pipe } from '../document/document.ts';
import type { Finding, Results } from '../results/results.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import type { CheckInput } from './finding.ts';
import { fallAtHouse, grateStep, gravity, gravityPaths, landings, soilFall, surveyClosure } from './levels.ts';
import { limitsInForce } from './overrides.ts';

const tern = demoSite('tern-hollow');
type Copy = Changeable<DesignDocument>;
const input = (change: (copy: Copy) => void, results: Partial<Results> = {}): CheckInput => ({ document: changed(tern, change), results: results as Results, limits: limitsInForce([]) });
const codes = (found: readonly Finding[]): string[] => found.map(({ code, severity }) => `${code} ${severity}`);
const alone = (copy: Copy): void => { copy.system.parts = []; };
const feet = (list: readonly number[]): number[] => list.map((value) => value * FOOT);
const inches = (list: readonly number[]): number[] => list.map((value) => value * INCH);

describe('the run of levels', () => {
  it('closes within 0.01 ft, is doubtful up to 0.02 ft, on either side', () => {
    const closed = (misclosure: number): Finding[] => surveyClosure(input((copy) => { copy.site.closure = { misclosure, setUps: 3 }; }));
    expect(feet([0.01, -0.01, 0.0101, -0.02, 0.0201]).map((miss) => codes(closed(miss))[0])).toEqual(['L1.ok note', 'L1.ok note', 'L1.doubtful caution', 'L1.doubtful caution', 'L1.open stop']);
    expect(closed(-0.004)[0]!.params).toMatchObject({ misclosure: 0.004, setUps: 3 });
  });
  it('is asked for where levels were shot', () => {
    const open = (shots: boolean): string[] => codes(surveyClosure(input((copy) => {
      copy.site.closure = null;
      if (!shots) copy.site.spotLevels = [];
    })));
    expect([open(true), open(false)]).toEqual([['L1.notClosed caution'], []]);
  });
});

describe('soil at the house', () => {
  const at = (fall: number | null, collector: boolean): Finding[] => soilFall(input((copy) => {
    if (!collector) alone(copy);
    copy.site.sills[0]!.soilFall = fall;
  }));
  it('falls six inches, with a caution down to three (IRC R401.3); the cure is the six', () => {
    expect(inches([6, 5.9, 3, 2.9]).map((fall) => codes(at(fall, false))[0])).toEqual(['L2.ok note', 'L2.fallSmall caution', 'L2.fallSmall caution', 'L2.fallMissing stop']);
    expect(at(-INCH, false)[0]).toMatchObject({ at: 'S1', params: { fall: -INCH, back: INCH }, remedy: { code: 'remedy.regrade', params: { fall: 6 * INCH }, patch: [{ path: '/site/sills/0/soilFall', value: 6 * INCH }] } });
    expect(at(null, false)).toEqual([]);
  });
  it('may fall toward it where a collector lies between', () => {
    expect(inches([6, 4, -3]).map((fall) => codes(at(fall, true))[0])).toEqual(['L2.ok note', 'L2.collected note', 'L2.collected note']);
  });
});

describe('paving between the house and a low spot', () => {
  /** The low spot lies at station 3 m at level 30; shots by station. */
  const paved = (shots: readonly (readonly [station: number | null, level: number])[], collector = false): Finding[] => fallAtHouse(input((copy) => {
    if (!collector) alone(copy);
    const [spot] = copy.site.lowSpots;
    spot!.station = 3;
    spot!.stageArea[0]!.level = 30;
    const [first] = copy.site.spotLevels;
    copy.site.spotLevels = shots.map(([station, level], i) => ({ ...first!, id: `V${String(i)}`, station, level }));
  }));
  it('falls 2 % from the nearest shot outside the door, with a caution down to 1 % (IRC R401.3)', () => {
    // 2 m between the shot and the low spot.
    expect([30.04, 30.039, 30.02, 30.019].map((level) => codes(paved([[1, level]]))[0])).toEqual(['L3.ok note', 'L3.fallSmall caution', 'L3.fallSmall caution', 'L3.fallMissing stop']);
    // Of several shots that at half a meter counts: 5 cm in 2.5 m are 2 %.
    expect(paved([[2, 31], [0.5, 30.05], [1, 32], [0, 33], [-0.3, 34], [null, 35]])[0]!.params).toMatchObject({ slope: expect.closeTo(0.02, 12) });
    for (const far of [3, 3.1, null, 0]) expect(paved([[far, 30.5]])).toEqual([]);
    expect([codes(paved([[1, 30.001]], true)), codes(paved([[1, 30.05]], true))]).toEqual([[], ['L3.ok note']]);
  });
  it('is looked at within ten feet of the house', () => {
    const at = (station: number): Finding[] => fallAtHouse(input((copy) => {
      alone(copy);
      copy.site.lowSpots[0]!.station = 5;
      copy.site.spotLevels = [{ ...copy.site.spotLevels[0]!, station, level: 40 }];
    }));
    expect([3.04, 10 * FOOT, 3.05].map((station) => at(station).length)).toEqual([1, 0, 0]);
  });
});

describe('what gravity can do', () => {
  const answers = (feasible: boolean) => ({ gravity: [{ outlet: tern.site.candidateOutlets[0]!.id, neededLevel: 30, shortfall: -0.2, shortfallWithMargin: -0.15, feasible }] });
  it('is a reason for a pump, a question to one, and needed without', () => {
    const said = (feasible: boolean, pumped: boolean): Finding => gravity(input(pumped ? () => undefined : alone, answers(feasible)))[0]!;
    expect([said(false, true), said(false, false), said(true, true), said(true, false)].map(({ code, severity }) => `${code} ${severity}`)).toEqual(['L4.gravityShort note', 'L4.gravityShort note', 'L4.gravityPossible caution', 'L4.ok note']);
    expect(said(true, true).params).toMatchObject({ outlet: tern.site.candidateOutlets[0]!.name, shortfall: -0.2, withMargin: -0.15, spare: 0.15 });
  });

  const [pipe] = tern.system.parts.filter((part): part is Pipe => part.kind === 'pipe');
  const [channel] = tern.system.parts.filter((part): part is Channel => part.kind === 'channel');
  const [outlet] = tern.system.parts.filter((part): part is Outlet => part.kind === 'outlet');
  /** A channel, two pipes of 10 and 5 m, and an outlet two inches and a fall of so many per cent below the start of the first. */
  const path = (percent: number, over: readonly { kind: string }[] = []): Finding[] => gravityPaths(input((copy) => {
    copy.system.parts = [
      { ...channel!, drainsTo: 'A', invertDown: 31 }, { ...pipe!, id: 'A', drainsTo: 'B', length: 10, invertUp: 30 }, { ...pipe!, id: 'B', drainsTo: 'O', length: 5, invertUp: 29.95 },
      { ...outlet!, id: 'O', level: 30 - 2 * INCH - 0.15 * percent }, ...over,
    ] as unknown as Copy['system']['parts'];
  }));
  it('takes 1 % of the whole way and two inches in hand; half of it with a caution', () => {
    expect([1, 0.99, 0.5, 0.49].map((percent) => codes(path(percent))[0])).toEqual(['L4.fallEnough note', 'L4.fallSmall caution', 'L4.fallSmall caution', 'L4.fallMissing stop']);
    expect(path(0.8)[0]!.params).toMatchObject({ slope: expect.closeTo(0.008, 12), inHand: 2 * INCH });
    // The first pipe starts higher by what is missing: 0.2 % of 15 m.
    expect(path(0.8)[0]!.remedy).toMatchObject({ code: 'remedy.higherPipe', patch: [{ path: '/system/parts/1/invertUp', value: expect.closeTo(30.03, 5) }] });
    expect(gravityPaths(input(() => undefined))).toEqual([]);
  });
});

describe('a grate in its surface', () => {
  const at = (below: number): Finding => grateStep(input((copy) => {
    copy.site.lowSpots[0]!.stageArea[0]!.level = 30;
    copy.system.parts.find((part): part is Changeable<Channel> => part.kind === 'channel')!.grateLevel = 30 - below;
  }))[0]!;
  it('lies 1/16 to 1/8 in low, at most 1/4, and never proud (ADA 303)', () => {
    expect(inches([1 / 16, 1 / 8, 0.13, 1 / 4, 0.26, 0.06, 0, -0.01]).map((below) => `${at(below).code} ${at(below).severity}`)).toEqual([
      'L7.ok note', 'L7.ok note', 'L7.low caution', 'L7.low caution', 'L7.lip stop', 'L7.flush caution', 'L7.flush caution', 'L7.proud stop',
    ]);
    expect(at(-0.01)).toMatchObject({ params: { below: expect.closeTo(-0.01, 12), proud: expect.closeTo(0.01, 12) }, remedy: { code: 'remedy.lowerGrate', params: { below: INCH / 8 }, patch: [{ value: 30 - INCH / 8 }] } });
    const box: CatchBasin = { kind: 'catchBasin', id: 'CB', name: 'Box', drainsTo: null, lowSpot: 'L1', grateLevel: 29, gratePerimeter: 1, grateOpenArea: 0.01, clogging: 0.5, invertOut: 28, sumpDepth: 0.1 } as unknown as CatchBasin;
    expect(grateStep(input((copy) => { copy.system.parts.push(box as Changeable<CatchBasin>); })).map(({ at: where }) => where)).toEqual(['CH1', 'CB']);
  });
});

describe('a step at a door', () => {
  const step = (kind: 'egress' | 'other', before: number, after: number): Finding[] => landings(input((copy) => { copy.site.sills[0]!.landing = { kind, before: before * INCH, after: after * INCH }; }));
  it('is no higher than it was, and within the code: 1 1/2 in at the egress door, 7 3/4 at others (IRC R311.3)', () => {
    expect([step('egress', 1.5, 1.5), step('egress', 1.6, 1.6), step('other', 7.75, 7.75), step('other', 8, 7.8), step('other', 2, 2.1)].map((found) => codes(found)[0])).toEqual([
      'L8.ok note', 'L8.overCode caution', 'L8.ok note', 'L8.overCode caution', 'L8.higher stop',
    ]);
    expect(step('egress', 1, 1.2)[0]).toMatchObject({ params: { before: INCH, after: 1.2 * INCH }, remedy: { code: 'remedy.keepStep', params: { step: INCH }, patch: [{ path: '/site/sills/0/landing/after', value: INCH }] } });
    expect(landings(input((copy) => { copy.site.sills[0]!.landing = null; }))).toEqual([]);
  });
});
