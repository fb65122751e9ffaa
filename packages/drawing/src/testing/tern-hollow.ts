import type { DesignDocument, Outlet, Part } from '@yardfall/calc';
import { ft, gpm, inch } from './units.ts';

/** An invented patio below its door, drained by a channel, a basin and a small pump. */

const cleared = {
  outletTypeNamed: 'yes', ownerKnown: 'yes', permissionHeld: 'yes', notSanitarySewer: 'yes', notOntoNeighbour: 'yes',
  associationAgrees: 'notApplicable', rightOfWayPermit: 'notApplicable', noWetland: 'yes', clearOfSepticAndWell: 'yes', noEasementConflict: 'yes',
} as const;

const lid: Outlet = {
  id: 'O1', kind: 'outlet', name: 'Front lawn lid', drainsTo: null, outletKind: 'percolationTee',
  level: ft(99.8), waterLevel: ft(99.9), openingHead: ft(0.3), distanceToFoundation: ft(40), distanceToLotLine: ft(10),
  insideCatchment: false, groundLevel: ft(99.78), groundFallsAway: 0.02,
  pit: { area: inch(30) * inch(30), depth: inch(8), voids: 0.4, bottomLevel: ft(98.1) }, dryWell: null, exitDiameter: inch(4), exitGround: 'grass', ordinaryWater: null, returns: null, questions: cleared,
};

export const parts: readonly Part[] = [
  {
    id: 'G1', kind: 'gutter', name: 'Rear gutter', drainsTo: 'L1', width: inch(5), depth: inch(3.5), length: ft(40), slope: 0.005, overflowsTo: 'LS1',
  },
  { id: 'L1', kind: 'leader', name: 'Leaders', drainsTo: 'R1', diameter: inch(3), count: 2 },
  {
    id: 'R1', kind: 'roofLine', name: 'Roof line', drainsTo: 'O2', diameter: inch(4), length: ft(120), roughness: 0.01, bends90: 2, bends45: 1,
    unsealedJointLevel: ft(100.4),
  },
  { ...lid, id: 'O2', name: 'Roof lid', outletKind: 'emitter', pit: null },
  {
    id: 'C1', kind: 'channel', name: 'Channel at the slider', drainsTo: 'P1', lowSpot: 'LS1', length: ft(18), width: inch(4), depth: inch(5),
    shape: 'rectangular', bottomWidth: inch(4), steps: [],
    invertUp: ft(99.15), invertDown: ft(99.15), roughness: 0.011, grateLevel: ft(99.6),
    grate: { openAreaRatio: 0.3, slotWidth: inch(0.25), locked: true, loadClass: 'foot', clogging: 0.5 },
    outletSides: 1, outletDiameter: inch(4), surround: inch(4), use: 'foot',
  },
  {
    id: 'P1', kind: 'pipe', name: 'Pipe to basin', drainsTo: 'B1', diameter: inch(4), length: ft(14), invertUp: ft(99.15), invertDown: ft(99.0),
    roughness: 0.01, material: 'smoothSolid', joints: 'glued', coverMin: inch(6), underWheels: false, bends90: 0, bends45: 1, longSweep: true, cleanouts: 1,
  },
  {
    id: 'B1', kind: 'basin', name: 'Basin', drainsTo: null, diameter: inch(30), floorLevel: ft(96.05), rimLevel: ft(100.02), inletInvert: ft(99.0),
    offLevel: ft(96.5), onLevel: ft(97.4), alarmLevel: ft(97.75), marks: [], wall: 'solid', floatClearance: inch(4), floatKind: 'vertical',
    collarVolume: 0.19, emptyMass: 45, lidFixed: true,
  },
  {
    id: 'PU1', kind: 'pump', name: 'Pump A', drainsTo: 'CV1', basin: 'B1', curveName: 'A', solids: inch(0.5), minSubmergence: ft(0.3), role: 'duty',
    startLevel: null, power: 'mains', energy: null, inputPower: null,
    curve: [[50, 0.5], [43, 5], [34, 10], [19, 15], [0, 18]].map(([flow = 0, head = 0]) => ({ flow: gpm(flow), head: ft(head) })).reverse(),
  },
  { id: 'CV1', kind: 'checkValve', name: 'Check valve', drainsTo: 'D1', equivalentLength: ft(13.4), present: true },
  { id: 'W1', kind: 'weepHole', name: 'Weep hole', drainsTo: null, pump: 'PU1', diameter: inch(3 / 16) },
  {
    id: 'D1', kind: 'dischargeLine', name: 'Discharge line', drainsTo: 'O1', innerDiameter: inch(1.61), nominal: '1 1/2 in', length: ft(112),
    hazenWilliamsC: 140, fittings: [{ kind: 'bend90', count: 3, equivalentLength: ft(4) }, { kind: 'bend45', count: 2, equivalentLength: ft(2.1) }],
    highPoint: null, lowestSag: null, wallRoughness: 1.5e-6, coverMin: inch(10),
  },
  lid,
];

const catchment = { depressionStorage: 1, flowLength: 5, slope: 0.01, roughness: 0.013, loss: { method: 'volumetric' }, response: 'kinematic' } as const;

export const ternHollow: DesignDocument = {
  schema: 'yardfall.design', version: 2, title: 'Tern Hollow', seed: 1,
  site: {
    datum: { benchMark: 'Finished floor', level: ft(100) }, closure: null, lotArea: null,
    sills: [{ id: 'S1', name: 'Slider track', kind: 'door', level: ft(99.93), lowSpot: 'LS1', soilFall: null, landing: null }],
    spotLevels: [
      { id: 'x1', name: 'Patio at door', level: ft(99.85), station: ft(0.3), position: null },
      { id: 'x2', name: 'Low spot', level: ft(99.62), station: ft(6), position: null },
      { id: 'x3', name: 'Rim', level: ft(99.98), station: ft(11), position: null },
      { id: 'x4', name: 'Side yard', level: ft(100.1), station: ft(60), position: null },
    ],
    breaklines: [], walls: [], plan: null,
    lowSpots: [{
      id: 'LS1', name: 'Patio', rimLevel: ft(99.98), spillWidth: ft(6), spillsTo: null, existingLoss: 0, station: ft(6),
      stageArea: [[99.62, 20], [99.7, 140], [99.8, 300], [99.93, 640], [99.98, 900]].map(([level = 0, area = 0]) => ({ level: ft(level), area: area * 0.09290304 })),
    }],
    catchments: [
      { id: 'A1', name: 'Patio', surface: 'paving', area: 352 * 0.09290304, coefficient: 0.95, drainsTo: { kind: 'lowSpot', id: 'LS1' }, ...catchment },
      { id: 'A2', name: 'Roof', surface: 'roof', area: 560 * 0.09290304, coefficient: 0.95, drainsTo: { kind: 'part', id: 'G1' }, ...catchment },
      { id: 'A3', name: 'Lawn', surface: 'lawn', area: 1100 * 0.09290304, coefficient: 0.3, drainsTo: { kind: 'lowSpot', id: 'LS1' }, ...catchment },
    ],
    candidateOutlets: [
      { id: 'K1', name: 'Street gutter', kind: 'curb', level: ft(99.35), distance: ft(140), tailwater: 0, collectorInvert: ft(99.15) },
      { id: 'K2', name: 'Easement swale', kind: 'ditch', level: ft(99.4), distance: ft(150), tailwater: 0, collectorInvert: ft(99.15) },
    ],
    soil: { texture: 'sandyLoam', infiltrationRate: null, seasonalHighWaterTable: ft(97.6), gradeLevel: ft(99.95), frostDepth: null },
    existingDrains: [], utilities: [], observations: [],
  },
  rain: {
    table: {
      name: 'Demo Coast', source: 'Invented for the demonstration', illustrative: true, series: 'partialDuration',
      durations: [300, 3600], returnPeriods: [2, 100], depths: [[12.7, 24.1], [44.5, 107.2]], lower: null, upper: null,
    },
    allowance: 0, recorded: null, storm: { method: 'alternatingBlock', duration: 86400, block: 300 }, designReturnPeriod: 25, checkReturnPeriod: 100,
  },
  system: { parts },
  construction: {
    slabCuts: [{ id: 'sc1', name: 'Cut for the channel', length: ft(18), width: inch(14), thickness: inch(4), reinforcement: 'mesh', part: 'C1' }],
    trenches: [], electrical: null, restoration: { sodArea: 0, paverArea: 0 }, treesNear: false, poolWithin3m: false, trenchNearFooting: false, foundationWithin1ft: false,
  },
  limits: [],
  sources: { survey: null, rain: null },
};

/** The same patio with an open end that is low enough. */
export const gravityOnly: DesignDocument = {
  ...ternHollow,
  system: {
    parts: ternHollow.system.parts.flatMap((part) => {
      if (part.id === 'C1') return [part];
      if (part.id === 'P1') return [{ ...part, drainsTo: 'O1' }];
      return part.id === 'O1' && part.kind === 'outlet' ? [{ ...part, outletKind: 'ditch' as const, level: ft(99), waterLevel: ft(99.1), pit: null }] : [];
    }),
  },
};
