import { siteOfSurvey, type DesignDocument, type Site } from '@yardfall/calc';
import type { DraftOperation, Survey } from '@yardfall/contracts';
import { freeId } from './defaults.ts';
import { emptyPlan } from './plan/operations.ts';

type Source = Pick<Survey, 'id' | 'sha256' | 'content'>;

/** A survey that a draft has not been taken from as it is now, and the edits that would take it. */
export interface SurveyStanding {
  /** The draft was begun from this survey or an earlier one, so that the difference came up afterwards. */
  readonly isNewer: boolean;
  readonly operations: readonly DraftOperation[];
}

/** Levels nearer than this are the same [m]: the last digits of an adjustment. */
const same = 1e-6;

/** The newest survey first; null when the draft holds what it says, or was taken from just this one. */
export function surveyStanding(document: DesignDocument, surveys: readonly Source[], now: Date): SurveyStanding | null {
  const [newest] = surveys;
  const stamp = document.sources.survey;
  if (newest === undefined || stamp?.sha256 === newest.sha256) return null;
  const edits = siteOperations(document.site, siteOfSurvey(newest.content, document.site.lowSpots[0]?.id ?? null));
  if (edits.length === 0) return null;
  const taken = { ...document.sources, survey: { id: newest.id, sha256: newest.sha256, takenAt: now.toISOString() } };
  return { isNewer: stamp !== null, operations: [...edits, replace(['sources'], taken)] };
}

const replace = (path: readonly string[], value: unknown): DraftOperation => ({ kind: 'replace', path: [...path], value: value as never });
const add = (list: keyof Site, value: unknown): DraftOperation => ({ kind: 'add', path: ['site', list, '-'], value: value as never });

function isSame(a: unknown, b: unknown): boolean {
  return typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= same : JSON.stringify(a) === JSON.stringify(b);
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What the survey says of each thing by its name: its fields where they differ, or the thing where it is not there. What the survey does not know stays. */
function listed<T extends Named>(list: keyof Site, now: readonly T[], surveyed: readonly T[], fields: readonly (keyof T & string)[], prefix: string): DraftOperation[] {
  const taken: Named[] = [...now];
  return surveyed.flatMap((one): DraftOperation[] => {
    const known = now.find(({ name }) => name === one.name);
    if (known === undefined) {
      const fresh = { ...one, id: freeId(taken, prefix) };
      taken.push(fresh);
      return [add(list, fresh)];
    }
    return fields.filter((field) => one[field] !== null && !isSame(one[field], known[field])).map((field) => replace(['site', list, `@${known.id}`, field], one[field]));
  });
}

function siteOperations(site: Site, surveyed: Site): DraftOperation[] {
  const spot = surveyed.lowSpots[0];
  const known = site.lowSpots.find(({ name }) => name === spot?.name) ?? (site.lowSpots.length === 1 ? site.lowSpots[0] : undefined);
  const spots = spot === undefined ? [] : known === undefined ? [add('lowSpots', { ...spot, id: freeId(site.lowSpots, 'L') })]
    : (['stageArea', 'rimLevel'] as const).filter((field) => !isSame(spot[field], known[field])).map((field) => replace(['site', 'lowSpots', `@${known.id}`, field], spot[field]));
  const lowSpot = known?.id ?? (spot === undefined ? null : freeId(site.lowSpots, 'L'));
  return [
    ...(isSame(site.datum, surveyed.datum) ? [] : [replace(['site', 'datum'], surveyed.datum)]),
    ...(surveyed.closure === null || isSame(site.closure, surveyed.closure) ? [] : [replace(['site', 'closure'], surveyed.closure)]),
    ...(site.plan === null && surveyed.plan !== null ? [replace(['site', 'plan'], emptyPlan)] : []),
    ...spots,
    ...(lowSpot === null ? [] : listed('sills', site.sills, surveyed.sills.map((sill) => ({ ...sill, lowSpot })), ['level'], 'S')),
    ...listed('spotLevels', site.spotLevels, surveyed.spotLevels, ['level', 'station', 'position'], 'V'),
    ...listed('candidateOutlets', site.candidateOutlets, surveyed.candidateOutlets, ['level', 'distance', 'tailwater', 'collectorInvert'], 'K'),
    ...listed('existingDrains', site.existingDrains, surveyed.existingDrains, [], 'E'),
  ];
}
