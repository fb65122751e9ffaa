import { isObject } from './fields.ts';

/** Version of the design document that this package computes. */
export const documentVersion = 2;

type Json = Record<string, unknown>;

const each = (list: unknown, change: (item: Json) => Json): unknown =>
  Array.isArray(list) ? list.map((item: unknown) => (isObject(item) ? change(item) : item)) : list;
const within = (value: unknown, change: (item: Json) => Json): unknown => (isObject(value) ? change(value) : value);

/** Wall of smooth plastic pipe [m]. Source: Moody's chart for drawn tubing, 0.0015 mm. */
const smoothWall = 1.5e-6;

/** What each kind of part gained with version 2, as version 1 computed it. */
function partFromOne(part: Json): Json {
  switch (part['kind']) {
    case 'channel': return { ...part, shape: 'rectangular', bottomWidth: part['width'], steps: [] };
    case 'underdrain': return { ...part, seepage: null };
    case 'basin': return { ...part, marks: [] };
    case 'pump': return { ...part, startLevel: null, power: 'mains', energy: null, inputPower: null };
    case 'dischargeLine': return { ...part, lowestSag: null, wallRoughness: smoothWall };
    case 'outlet': return { ...part, dryWell: null, exitDiameter: null, exitGround: null, ordinaryWater: null, returns: null };
    default: return part;
  }
}

function siteFromOne(site: Json): Json {
  return {
    ...site, closure: null, lotArea: null, breaklines: [], walls: [], plan: null,
    sills: each(site['sills'], (sill) => ({ ...sill, soilFall: null, landing: null })),
    soil: within(site['soil'], (soil) => ({ ...soil, frostDepth: null })),
    spotLevels: each(site['spotLevels'], (spot) => ({ ...spot, position: null })),
    lowSpots: each(site['lowSpots'], (spot) => ({ ...spot, spillsTo: null })),
    catchments: each(site['catchments'], (catchment) => ({ ...catchment, loss: { method: 'volumetric' }, response: 'kinematic' })),
  };
}

function constructionFromOne(construction: Json): Json {
  return { ...construction, electrical: within(construction['electrical'], (supply) => ({ ...supply, burial: null, receptacleLevel: null })) };
}

/** Version 1 had one loss method, rectangular channels, cylindrical basins, mains pumps and no stores at outlets. */
function fromOne(document: Json): Json {
  return {
    ...document, version: 2, limits: [],
    site: within(document['site'], siteFromOne),
    rain: within(document['rain'], (rain) => ({ ...rain, recorded: null })),
    construction: within(document['construction'], constructionFromOne),
    system: within(document['system'], (system) => ({ ...system, parts: each(system['parts'], partFromOne) })),
  };
}

/**
 * A document of an earlier version in the shape of the present one, computing the same.
 * Anything else comes back as it is, for the check to judge: the present version, a newer one, no document at all.
 */
export function upgradeDocument(value: unknown): unknown {
  return isObject(value) && value['schema'] === 'yardfall.design' && value['version'] === 1 ? fromOne(value) : value;
}
