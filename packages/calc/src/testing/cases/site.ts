import type { Observation } from '../../document/document.ts';
import { FOOT, INCH } from '../../common/constants.ts';
import type { FindingCode } from '../../findings/codes.ts';
import type { Results } from '../../results/results.ts';
import { routedAs, site, sound, part, type FindingCase } from './case.ts';

type Codes<Prefix extends string> = Extract<FindingCode, `${Prefix}.${string}`>;

const seen = (kind: Observation['kind'], severity: 'refer' | 'caution' = 'refer'): FindingCase =>
  site('tern', `${kind} was seen`, severity, (copy) => { copy.site.observations.push({ id: 'OB1', kind, note: 'seen on the visit' }); });

const sill = (base: 'tern' | 'ridge', what: string, severity: FindingCase['severity'], fields: object, cured = false): FindingCase =>
  site(base, what, severity, (copy) => { Object.assign(copy.site.sills[0]!, fields); }, cured);

/** Without any collector between house and yard. */
const bare = (what: string, severity: FindingCase['severity'], fields: object, cured = false): FindingCase => site('ridge', what, severity, (copy) => {
  copy.system.parts = [];
  copy.construction.slabCuts = [];
  copy.construction.trenches = [];
  Object.assign(copy.site.sills[0]!, fields);
}, cured);

const shotAtDoor = (level: number) => site('ridge', `no channel, drive at the door ${level} m`, 'caution', (copy) => {
  copy.system.parts = [];
  copy.construction.slabCuts = [];
  copy.construction.trenches = [];
  copy.site.spotLevels[2]!.level = level;
});

/** Freeboards of the design or the check storm as given, the routing aside. */
export function freeboardsOf(period: number, lower: number, minutesOverSill = 0) {
  return (results: Results): Results => ({
    ...results, freeboards: results.freeboards.map((item) => (item.returnPeriod === period ? { ...item, lower, onTwin: lower, minutesOverSill } : item)),
  });
}

export const siteCases: Readonly<Record<Codes<'R' | 'rain' | 'M' | 'L1' | 'L2' | 'L3' | 'L4' | 'L5' | 'L6' | 'L7' | 'L8' | 'P2'>, FindingCase>> = {
  'R.retainingWallOver4ft': seen('retainingWallOver4ft'), 'R.leaningWall': seen('leaningWall'), 'R.slabOffset': seen('slabOffset'), 'R.voidUnderSlab': seen('voidUnderSlab'),
  'R.movingFooting': seen('movingFooting'), 'R.postTensionSlab': seen('postTensionSlab'), 'R.publicPipe': seen('publicPipe'), 'R.sewage': seen('sewage'),
  'R.waterOnDryDays': seen('waterOnDryDays', 'caution'), 'R.externalFlood': seen('externalFlood'), 'R.neighbourFill': seen('neighbourFill'),
  'R.lotLineDispute': seen('lotLineDispute'), 'R.septicNear': seen('septicNear'), 'R.wetland': seen('wetland'),
  'R.bigCatchment': site('tern', 'lawn of 1.2 acres', 'refer', (copy) => { copy.site.catchments[3]!.area = 5000; }),
  'R.bigFlow': site('tern', 'patio of 32,000 sq ft', 'refer', (copy) => { copy.site.catchments[0]!.area = 3000; }),
  'rain.illustrative': { ...sound('tern'), severity: 'caution' },
  'M.littleRunoff': site('lawn', 'curve number 39', 'caution', (copy) => { copy.site.catchments[0]!.loss = { method: 'curveNumber', curveNumber: 39 }; copy.rain.storm.duration = 7200; }),
  'M.smallForUnit': site('lawn', 'unit hydrograph on 1,300 sq ft', 'caution', (copy) => { copy.site.catchments[0]!.response = 'unitHydrograph'; }, true),
  'M.quickSite': site('tern', 'NRCS type II storm', 'caution', (copy) => { copy.rain.storm.method = 'nrcsII'; }, true),
  'M.wetGround': site('lawn', 'water table 1 ft down under lawn of coefficient 0.25', 'caution', (copy) => { copy.site.soil.seasonalHighWaterTable = copy.site.soil.gradeLevel - FOOT; }, true),
  'M.fromTexture': site('under', 'conductivity read from the texture', 'caution', (copy) => {
    const drain = copy.system.parts.find((item) => item.kind === 'underdrain')!;
    Object.assign(drain, { seepage: { method: 'interceptor', conductivity: 1e-5, fromTexture: true, gradient: 0.05, depth: 1 } });
  }),
  'M.grateHead': sound('tern'),
  'M.grateHeadShort': part('catchBasin', 'lawn', 'CB1', { gratePerimeter: 0.8 }, 'caution'),
  'L1.ok': sound('tern'),
  'L1.doubtful': site('tern', 'misclosure 0.015 ft', 'caution', (copy) => { copy.site.closure = { misclosure: -0.015 * FOOT, setUps: 2 }; }),
  'L1.open': site('tern', 'misclosure 0.021 ft', 'stop', (copy) => { copy.site.closure = { misclosure: 0.021 * FOOT, setUps: 2 }; }),
  'L1.notClosed': site('tern', 'survey not closed', 'caution', (copy) => { copy.site.closure = null; }),
  'L2.ok': sill('tern', 'soil falls 6 in', 'note', { soilFall: 6 * INCH }),
  'L2.collected': sill('tern', 'soil falls 2 in toward a channel', 'note', { soilFall: 2 * INCH }),
  'L2.fallSmall': bare('no collector, soil falls 4 in', 'caution', { soilFall: 4 * INCH }, true),
  'L2.fallMissing': bare('no collector, soil falls back 1 in', 'stop', { soilFall: -INCH }, true),
  'L3.ok': sound('tern'),
  'L3.fallSmall': shotAtDoor(30.425136 + 0.015 * (0.4572 - 0.09144)),
  'L3.fallMissing': { ...shotAtDoor(30.42), severity: 'stop' },
  'L4.ok': sound('ridge'),
  'L4.gravityPossible': site('tern', 'gutter flow line 18 in lower', 'caution', (copy) => { copy.site.candidateOutlets[0]!.level = 29.82; }),
  'L4.gravityShort': sound('tern'),
  'L4.fallEnough': sound('ridge'),
  'L4.fallSmall': part('pipe', 'ridge', 'P1', { invertUp: 29.85 }, 'caution', true),
  'L4.fallMissing': part('pipe', 'ridge', 'P1', { invertUp: 29.7 }, 'stop', true),
  'L5.ok': sound('tern'),
  'L5.freeboardThin': routedAs('0.8 in left in the design storm', 'caution', freeboardsOf(25, 0.8 * INCH)),
  'L5.freeboardShort': routedAs('0.4 in left in the design storm', 'stop', freeboardsOf(25, 0.4 * INCH)),
  'L5.overSill': routedAs('0.3 in over the sill in the design storm', 'stop', freeboardsOf(25, -0.3 * INCH, 12)),
  'L6.ok': sound('tern'),
  'L6.atSill': routedAs('0.3 in over the sill in the check storm', 'caution', freeboardsOf(100, -0.3 * INCH, 8)),
  'L6.overSill': routedAs('0.6 in over the sill in the check storm', 'stop', freeboardsOf(100, -0.6 * INCH, 20)),
  'P2.ok': sound('tern'),
  'P2.freeboardThin': routedAs('0.8 in left with the duty flow', 'caution', freeboardsOf(25, 0.8 * INCH)),
  'P2.freeboardShort': routedAs('0.4 in left with the duty flow', 'stop', freeboardsOf(25, 0.4 * INCH)),
  'P2.overSill': routedAs('0.3 in over the sill with the duty flow', 'stop', freeboardsOf(25, -0.3 * INCH, 12)),
  'L7.ok': sound('tern'),
  'L7.flush': part('channel', 'tern', 'CH1', { grateLevel: 30.3635 }, 'caution', true),
  'L7.low': part('channel', 'tern', 'CH1', { grateLevel: 30.36 }, 'caution', true),
  'L7.lip': part('channel', 'tern', 'CH1', { grateLevel: 30.35 }, 'stop', true),
  'L7.proud': part('channel', 'tern', 'CH1', { grateLevel: 30.38 }, 'stop', true),
  'L8.ok': sill('tern', 'step of 1 in kept', 'note', { landing: { kind: 'egress', before: INCH, after: INCH } }),
  'L8.overCode': sill('tern', 'step of 2 in kept at the egress door', 'caution', { landing: { kind: 'egress', before: 2 * INCH, after: 2 * INCH } }),
  'L8.higher': sill('tern', 'step grows from 1 to 1.4 in', 'stop', { landing: { kind: 'egress', before: INCH, after: 1.4 * INCH } }, true),
};
