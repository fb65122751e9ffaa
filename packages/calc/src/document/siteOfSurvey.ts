import { candidateOutlets, levelsByPoint, lowestOfRole, type SurveyedPoint } from '../levels/candidateOutlets.ts';
import type { LevelBook } from '../levels/levelBook.ts';
import { reduceLevelBook } from '../levels/reduceLevelBook.ts';
import type { ExistingDrain, LowSpot, Observation, Plan, Position, Site, SpotLevel, StageArea } from './document.ts';

/** A survey as it was recorded: book, roles, pins and tests. Lengths in meters. */
export interface SurveyRecord {
  readonly levelBook: Omit<LevelBook, 'closingOn'>;
  readonly points: readonly (SurveyedPoint & { readonly station: number | null })[];
  readonly stageArea: readonly StageArea[];
  readonly drainTests: readonly ExistingDrain[];
  readonly observations: readonly { readonly kind: string; readonly note: string }[];
  /** Where points stand on the plan. */
  readonly pins?: readonly (Position & { readonly point: string })[] | undefined;
}

const observationKinds = new Set<string>([
  'retainingWallOver4ft', 'leaningWall', 'slabOffset', 'voidUnderSlab', 'movingFooting', 'postTensionSlab', 'publicPipe', 'sewage', 'waterOnDryDays', 'externalFlood',
  'neighbourFill', 'lotLineDispute', 'septicNear', 'wetland',
] satisfies Observation['kind'][]);

/** A width to begin with where nobody has measured the rim yet: 6 ft (ours). */
const spillWidth = 1.8288;
/** Plan of a document reaches so far from its origin [m]. */
const farthest = 10_000;

const noSoil = { texture: 'not tested', infiltrationRate: null, seasonalHighWaterTable: null, frostDepth: null };
const emptyPlan: Plan = { picture: null, north: null, shapes: [] };

/** A yard of which nobody has measured anything. */
export const emptySite: Site = {
  datum: { benchMark: 'Finished floor', level: 30.48 }, closure: null, lotArea: null, sills: [], spotLevels: [], breaklines: [], walls: [], plan: null, lowSpots: [], catchments: [], candidateOutlets: [],
  soil: { ...noSoil, gradeLevel: 30.48 }, existingDrains: [], utilities: [], observations: [],
};

/**
 * The site of a design as a survey gives it: adjusted levels by point, sills, the low spot, outlets that can be judged, tests and
 * observations. A point that was pinned is a spot level with a place, and with the first of them the site has a plan.
 *
 * @param survey lengths and levels [m], areas [m2]
 * @param lowSpot id of the low spot that the sills belong to where the survey measured none; null leaves them out
 * @returns a site without surfaces and soil; ids are counted within each list
 */
export function siteOfSurvey(survey: SurveyRecord, lowSpot: string | null = null): Site {
  const { benchMark } = survey.levelBook;
  const reduced = reduceLevelBook({ ...survey.levelBook, closingOn: null });
  const levels = levelsByPoint(reduced);
  const lowSpots = lowSpotsOf(survey, levels);
  const spotLevels = spotsOf(survey, levels);
  const of = lowSpots[0]?.id ?? lowSpot;
  return {
    ...emptySite,
    datum: { benchMark: benchMark.name, level: benchMark.level },
    closure: reduced.misclosure === null ? null : { misclosure: reduced.misclosure, setUps: reduced.setUps },
    sills: of === null ? [] : named(survey, 'sill', levels).map(({ name, level }, i) => ({ id: `S${String(i + 1)}`, name, kind: 'door' as const, level, lowSpot: of, soilFall: null, landing: null })),
    spotLevels,
    plan: spotLevels.some(({ position }) => position !== null) ? emptyPlan : null,
    lowSpots,
    candidateOutlets: candidateOutlets(survey.points, levels),
    soil: { ...noSoil, gradeLevel: lowestOfRole(survey.points, 'floor', levels) ?? benchMark.level },
    existingDrains: survey.drainTests.map(({ name, diameter, hoseFlow, backedUpAfter, dyeSeen, cameraStop }, i) => ({ id: `E${String(i + 1)}`, name, diameter, hoseFlow, backedUpAfter, dyeSeen, cameraStop })),
    observations: survey.observations.filter(({ kind }) => observationKinds.has(kind)).map(({ kind, note }, i) => ({ id: `OB${String(i + 1)}`, kind: kind as Observation['kind'], note })),
  };
}

/** Points that are something, and points that were pinned, each with its level. */
function spotsOf({ points, pins = [] }: SurveyRecord, levels: ReadonlyMap<string, number>): SpotLevel[] {
  const placed = new Map(pins.filter(({ x, y }) => Math.abs(x) <= farthest && Math.abs(y) <= farthest).map(({ point, x, y }) => [point, { x, y }]));
  const stations = new Map(points.map(({ point, station }) => [point, station]));
  return [...new Set([...stations.keys(), ...placed.keys()])].flatMap((name, i) => {
    const level = levels.get(name);
    return level === undefined ? [] : [{ id: `V${String(i + 1)}`, name, level, station: stations.get(name) ?? null, position: placed.get(name) ?? null }];
  });
}

function lowSpotsOf(survey: SurveyRecord, levels: ReadonlyMap<string, number>): LowSpot[] {
  const top = survey.stageArea.at(-1);
  if (survey.stageArea.length < 2 || top === undefined) return [];
  const lowest = named(survey, 'lowSpot', levels)[0];
  const rimLevel = lowestOfRole(survey.points, 'rim', levels) ?? top.level;
  return [{ id: 'L1', name: lowest?.name ?? 'Low spot', stageArea: survey.stageArea, rimLevel, spillWidth, spillsTo: null, existingLoss: 0, station: lowest?.station ?? 0 }];
}

function named({ points }: SurveyRecord, role: string, levels: ReadonlyMap<string, number>) {
  return points.flatMap(({ point, role: its, station }) => {
    const level = levels.get(point);
    return its !== role || level === undefined ? [] : [{ name: point, level, station }];
  });
}
