import { candidateOutlets, levelsByPoint, lowestOfRole, reduceLevelBook, upgradeDocument, type DesignDocument, type Observation, type RainTable, type Site, type SourceStamp } from '@yardfall/calc';
import type { SurveyContent } from '@yardfall/contracts';

export interface Taken<T> {
  readonly content: T;
  readonly stamp: SourceStamp;
}

const observationKinds = new Set<string>([
  'retainingWallOver4ft', 'leaningWall', 'slabOffset', 'voidUnderSlab', 'movingFooting', 'postTensionSlab', 'publicPipe', 'sewage', 'waterOnDryDays', 'externalFlood',
  'neighbourFill', 'lotLineDispute', 'septicNear', 'wetland',
] satisfies Observation['kind'][]);

/** A width to begin with where nobody has measured the rim yet: 6 ft (ours). */
const spillWidth = 1.8288;
const day = 86_400;
const fiveMinutes = 300;

/** A document that was sent, under the limits of the company and not under its own. */
export function underLimits(value: unknown, limits: DesignDocument['limits']): unknown {
  const document = upgradeDocument(value);
  return typeof document === 'object' && document !== null ? { ...document, limits } : document;
}

/** The document that a design begins with: copies of the levels and the rain of the job with their stamps, the limits of the company, and no part. */
export function startDocument(title: string, survey: Taken<SurveyContent> | null, rain: Taken<RainTable>, limits: DesignDocument['limits'] = []): DesignDocument {
  const { table, ...storm } = rainOf(rain.content);
  return {
    schema: 'yardfall.design', version: 2, title, seed: 1,
    site: survey === null ? emptySite : siteOf(survey.content),
    rain: { table, allowance: 0, recorded: null, ...storm },
    system: { parts: [] },
    construction: {
      slabCuts: [], trenches: [], electrical: null, restoration: { sodArea: 0, paverArea: 0 }, treesNear: false, poolWithin3m: false, trenchNearFooting: false, foundationWithin1ft: false,
    },
    limits,
    sources: { survey: survey?.stamp ?? null, rain: rain.stamp },
  };
}

const noSoil = { texture: 'not tested', infiltrationRate: null, seasonalHighWaterTable: null, frostDepth: null };
const emptySite: Site = {
  datum: { benchMark: 'Finished floor', level: 30.48 }, closure: null, lotArea: null, sills: [], spotLevels: [], breaklines: [], walls: [], plan: null, lowSpots: [], catchments: [], candidateOutlets: [],
  soil: { ...noSoil, gradeLevel: 30.48 }, existingDrains: [], utilities: [], observations: [],
};

function siteOf(content: SurveyContent): Site {
  const { benchMark } = content.levelBook;
  const reduced = reduceLevelBook({ ...content.levelBook, closingOn: null });
  const levels = levelsByPoint(reduced);
  const lowSpots = lowSpotsOf(content, levels);
  return {
    ...emptySite,
    datum: { benchMark: benchMark.name, level: benchMark.level },
    closure: reduced.misclosure === null ? null : { misclosure: reduced.misclosure, setUps: reduced.setUps },
    sills: lowSpots.length === 0 ? [] : named(content, 'sill', levels).map(({ name, level }, i) => ({ id: `S${String(i + 1)}`, name, kind: 'door' as const, level, lowSpot: 'L1', soilFall: null, landing: null })),
    spotLevels: content.points.flatMap((point, i) => {
      const level = levels.get(point.point);
      return level === undefined ? [] : [{ id: `V${String(i + 1)}`, name: point.point, level, station: point.station, position: null }];
    }),
    lowSpots,
    candidateOutlets: candidateOutlets(content.points, levels),
    soil: { ...noSoil, gradeLevel: lowestOfRole(content.points, 'floor', levels) ?? benchMark.level },
    existingDrains: content.drainTests.map(({ id: _, ...test }, i) => ({ id: `E${String(i + 1)}`, ...test })),
    observations: content.observations.filter(({ kind }) => observationKinds.has(kind)).map(({ kind, note }, i) => ({ id: `OB${String(i + 1)}`, kind: kind as Observation['kind'], note })),
  };
}

function lowSpotsOf(content: SurveyContent, levels: ReadonlyMap<string, number>): Site['lowSpots'] {
  const top = content.stageArea.at(-1);
  if (content.stageArea.length < 2 || top === undefined) return [];
  const lowest = named(content, 'lowSpot', levels)[0];
  const rimLevel = lowestOfRole(content.points, 'rim', levels) ?? top.level;
  return [{ id: 'L1', name: lowest?.name ?? 'Low spot', stageArea: content.stageArea, rimLevel, spillWidth, spillsTo: null, existingLoss: 0, station: lowest?.station ?? 0 }];
}

function named(content: SurveyContent, role: SurveyContent['points'][number]['role'], levels: ReadonlyMap<string, number>) {
  return content.points.flatMap(({ point, role: its, station }) => {
    const level = levels.get(point);
    return its !== role || level === undefined ? [] : [{ name: point, level, station }];
  });
}

/** 25 years for the door and 100 to look beyond (the trade's default), or the nearest that the table holds. */
function rainOf(table: RainTable): Omit<DesignDocument['rain'], 'allowance' | 'recorded'> {
  const block = Math.max(fiveMinutes, table.durations[0] ?? fiveMinutes);
  const longest = Math.min(day, table.durations.at(-1) ?? day);
  return {
    table, storm: { method: 'alternatingBlock', duration: Math.floor(longest / block) * block, block },
    designReturnPeriod: nearest(table.returnPeriods, 25), checkReturnPeriod: nearest(table.returnPeriods, 100),
  };
}

function nearest(periods: readonly number[], wanted: number): number {
  return periods.reduce((best, period) => (Math.abs(period - wanted) < Math.abs(best - wanted) ? period : best), periods[0] ?? wanted);
}
