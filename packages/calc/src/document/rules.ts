import type { Loss, PartKind, Seepage } from './document.ts';
import type { Rules } from './fields.ts';

/** Field rules of every object in the document. They say what can be computed with, not what is good practice. */
export const rootRules: Rules = {
  schema: 'text', version: 'count', title: 'text', seed: 'count', site: 'object', rain: 'object', system: 'object', construction: 'object', limits: 'list', sources: 'object',
};
export const siteRules: Rules = {
  datum: 'object', closure: 'object?', lotArea: 'positive?', sills: 'list', spotLevels: 'list', breaklines: 'list', walls: 'list', lowSpots: 'list', catchments: 'list', candidateOutlets: 'list', soil: 'object',
  existingDrains: 'list', utilities: 'list', observations: 'list', plan: 'object?',
};
export const datumRules: Rules = { benchMark: 'text', level: 'level' };
export const closureRules: Rules = { misclosure: 'any', setUps: 'count' };
export const sillRules: Rules = { id: 'text', name: 'text', kind: 'text', level: 'level', lowSpot: 'text', soilFall: 'any?', landing: 'object?' };
export const landingRules: Rules = { kind: 'text', before: 'any', after: 'any' };
export const spotLevelRules: Rules = { id: 'text', name: 'text', level: 'level', station: 'any?', position: 'object?' };
export const positionRules: Rules = { x: 'any', y: 'any' };
export const breakpointRules: Rules = { x: 'any', y: 'any', level: 'level' };
export const lineRules: Rules = { id: 'text', name: 'text', points: 'list' };
export const lowSpotRules: Rules = {
  id: 'text', name: 'text', stageArea: 'list', rimLevel: 'level', spillWidth: 'positive', spillsTo: 'text?', existingLoss: 'flow', station: 'any',
};
export const stageAreaRules: Rules = { level: 'level', area: 'nonNegative' };
export const catchmentRules: Rules = {
  id: 'text', name: 'text', surface: 'text', area: 'nonNegative', coefficient: 'share', depressionStorage: 'nonNegative',
  flowLength: 'positive', slope: 'nonNegative', roughness: 'positive', loss: 'object', response: 'text', drainsTo: 'object',
};
export const lossRules: Readonly<Record<Loss['method'], Rules>> = {
  volumetric: { method: 'text' },
  curveNumber: { method: 'text', curveNumber: 'positive' },
  greenAmpt: { method: 'text', conductivity: 'positive', suctionHead: 'nonNegative', moistureDeficit: 'share' },
  horton: { method: 'text', initial: 'nonNegative', final: 'nonNegative', decay: 'positive' },
};
export const candidateRules: Rules = {
  id: 'text', name: 'text', kind: 'text', level: 'level', distance: 'nonNegative', tailwater: 'nonNegative', collectorInvert: 'level',
};
export const soilRules: Rules = { texture: 'text', infiltrationRate: 'nonNegative?', seasonalHighWaterTable: 'level?', gradeLevel: 'level', frostDepth: 'nonNegative?' };
export const existingDrainRules: Rules = {
  id: 'text', name: 'text', diameter: 'positive', hoseFlow: 'flow', backedUpAfter: 'nonNegative?', dyeSeen: 'flag', cameraStop: 'nonNegative?',
};
export const utilityRules: Rules = { id: 'text', kind: 'text', name: 'text', station: 'any?', level: 'level?', tolerance: 'nonNegative' };
export const planRules: Rules = { picture: 'object?', north: 'nonNegative?', shapes: 'list' };
export const pictureRules: Rules = { photo: 'text', width: 'positive', height: 'positive', tie: 'object?' };
export const tieRules: Rules = { from: 'object', to: 'object', length: 'positive' };
export const shapeRules: Rules = { id: 'text', name: 'text', kind: 'text', use: 'text', points: 'list', of: 'text?' };
export const observationRules: Rules = { id: 'text', kind: 'text', note: 'text' };

export const rainRules: Rules = { table: 'object', allowance: 'share', storm: 'object', recorded: 'object?', designReturnPeriod: 'positive', checkReturnPeriod: 'positive' };
export const tableRules: Rules = { name: 'text', source: 'text', illustrative: 'flag', series: 'text', durations: 'list', returnPeriods: 'list', depths: 'list' };
export const stormRules: Rules = { method: 'text', duration: 'positive', block: 'positive' };
export const recordedRules: Rules = { name: 'text', source: 'text', step: 'positive', depths: 'list' };
export const limitRules: Rules = { limit: 'text', pass: 'any', fail: 'any', by: 'text', at: 'text', why: 'text' };

const base: Rules = { id: 'text', name: 'text', kind: 'text', drainsTo: 'text?' };

export const partRules: Readonly<Record<PartKind, Rules>> = {
  gutter: { ...base, width: 'positive', depth: 'positive', length: 'positive', slope: 'nonNegative', overflowsTo: 'text' },
  leader: { ...base, diameter: 'positive', count: 'count' },
  roofLine: {
    ...base, diameter: 'positive', length: 'positive', roughness: 'positive', bends90: 'count', bends45: 'count', unsealedJointLevel: 'level',
  },
  channel: {
    ...base, lowSpot: 'text', length: 'positive', width: 'positive', depth: 'positive', shape: 'text', bottomWidth: 'positive', steps: 'list', invertUp: 'level', invertDown: 'level',
    roughness: 'positive', grateLevel: 'level', grate: 'object', outletSides: 'count', outletDiameter: 'positive?', surround: 'nonNegative', use: 'text',
  },
  catchBasin: {
    ...base, lowSpot: 'text', grateLevel: 'level', gratePerimeter: 'positive', grateOpenArea: 'positive', clogging: 'share', invertOut: 'level',
    sumpDepth: 'nonNegative',
  },
  pipe: {
    ...base, diameter: 'positive', length: 'positive', invertUp: 'level', invertDown: 'level', roughness: 'positive', material: 'text', joints: 'text',
    coverMin: 'nonNegative', underWheels: 'flag', bends90: 'count', bends45: 'count', longSweep: 'flag', cleanouts: 'count',
  },
  cleanout: { ...base, diameter: 'positive' },
  underdrain: { ...base, diameter: 'positive', length: 'positive', invertUp: 'level', invertDown: 'level', inflowPerLength: 'nonNegative', seepage: 'object?' },
  swale: { ...base, length: 'positive', slope: 'nonNegative', sideSlope: 'positive', depth: 'positive', roughness: 'positive' },
  basin: {
    ...base, diameter: 'positive', floorLevel: 'level', rimLevel: 'level', inletInvert: 'level', offLevel: 'level', onLevel: 'level', alarmLevel: 'level', marks: 'list',
    wall: 'text', floatClearance: 'nonNegative', floatKind: 'text', collarVolume: 'nonNegative', emptyMass: 'nonNegative', lidFixed: 'flag',
  },
  pump: {
    ...base, basin: 'text', curveName: 'text', curve: 'list', solids: 'nonNegative', minSubmergence: 'nonNegative', role: 'text', startLevel: 'level?', power: 'text',
    energy: 'positive?', inputPower: 'positive?',
  },
  checkValve: { ...base, equivalentLength: 'nonNegative', present: 'flag' },
  weepHole: { ...base, pump: 'text', diameter: 'positive' },
  dischargeLine: {
    ...base, innerDiameter: 'positive', nominal: 'text', length: 'positive', hazenWilliamsC: 'positive', fittings: 'list', highPoint: 'level?', lowestSag: 'level?',
    wallRoughness: 'positive', coverMin: 'nonNegative',
  },
  outlet: {
    ...base, outletKind: 'text', level: 'level', waterLevel: 'level', openingHead: 'nonNegative', distanceToFoundation: 'nonNegative',
    distanceToLotLine: 'nonNegative', insideCatchment: 'flag', groundLevel: 'level', groundFallsAway: 'any', pit: 'object?', dryWell: 'object?',
    exitDiameter: 'positive?', exitGround: 'text?', ordinaryWater: 'level?', returns: 'object?', questions: 'object',
  },
};

export const grateRules: Rules = { openAreaRatio: 'share', slotWidth: 'positive', locked: 'flag', loadClass: 'text', clogging: 'share' };
export const curveRules: Rules = { flow: 'flow', head: 'nonNegative' };
export const fittingRules: Rules = { kind: 'text', count: 'count', equivalentLength: 'nonNegative' };
export const markRules: Rules = { level: 'level', volume: 'nonNegative' };
export const stepRules: Rules = { at: 'nonNegative', drop: 'nonNegative' };
export const returnRules: Rules = { lowSpot: 'text', share: 'share' };
export const dryWellRules: Rules = {
  area: 'positive', perimeter: 'positive', depth: 'positive', voids: 'share', bottomLevel: 'level', infiltrationRate: 'nonNegative', overflow: 'flag', overflowsTo: 'text?',
};
export const seepageRules: Readonly<Record<Seepage['method'], Rules>> = {
  interceptor: { method: 'text', conductivity: 'positive', fromTexture: 'flag', gradient: 'nonNegative', depth: 'positive' },
  relief: {
    method: 'text', conductivity: 'positive', fromTexture: 'flag', waterAbove: 'nonNegative', barrierBelow: 'nonNegative', reach: 'positive', sides: 'count',
  },
};
export const pitRules: Rules = { area: 'positive', depth: 'positive', voids: 'share', bottomLevel: 'level' };

export const constructionRules: Rules = {
  slabCuts: 'list', trenches: 'list', electrical: 'object?', restoration: 'object', treesNear: 'flag', poolWithin3m: 'flag', trenchNearFooting: 'flag',
  foundationWithin1ft: 'flag',
};
export const slabCutRules: Rules = { id: 'text', name: 'text', length: 'positive', width: 'positive', thickness: 'positive', reinforcement: 'text', part: 'text' };
export const trenchRules: Rules = { id: 'text', name: 'text', length: 'positive', width: 'positive', depth: 'positive', soil: 'text', part: 'text' };
export const electricalRules: Rules = {
  dedicatedCircuit: 'flag', gfci: 'flag', extensionCord: 'flag', alarm: 'text', backup: 'text', runLength: 'nonNegative', current: 'nonNegative',
  conductorResistance: 'nonNegative', voltage: 'positive', burial: 'object?', receptacleLevel: 'level?',
};
export const burialRules: Rules = { method: 'text', depth: 'nonNegative' };
export const restorationRules: Rules = { sodArea: 'nonNegative', paverArea: 'nonNegative' };
