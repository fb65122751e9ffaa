import type { Part, PartKind } from '@yardfall/calc';
import type { MessageCode } from '@yardfall/text';

/** How a field of a part is typed: levels and lengths the trade's way, the rest as figures or choices. */
export type FieldKind = 'level' | 'length' | 'size' | 'slope' | 'count' | 'figure' | 'yesNo' | 'curve' | { readonly choices: readonly string[] };

export interface PartField {
  /** Keys below the part. */
  readonly path: readonly string[];
  readonly kind: FieldKind;
  readonly label: MessageCode;
}

type Compact = readonly [name: string, kind: FieldKind];

const table: Record<PartKind, readonly Compact[]> = {
  gutter: [['width', 'size'], ['depth', 'size'], ['length', 'length'], ['slope', 'slope']],
  leader: [['diameter', 'size'], ['count', 'count']],
  roofLine: [['diameter', 'size'], ['length', 'length'], ['bends90', 'count'], ['bends45', 'count'], ['unsealedJointLevel', 'level']],
  channel: [
    ['length', 'length'], ['width', 'size'], ['depth', 'size'], ['invertUp', 'level'], ['invertDown', 'level'], ['grateLevel', 'level'],
    ['outletDiameter', 'size'], ['surround', 'size'], ['use', { choices: ['foot', 'car'] }], ['grate.locked', 'yesNo'],
    ['grate.loadClass', { choices: ['foot', 'car', 'truck'] }], ['grate.slotWidth', 'size'],
  ],
  catchBasin: [['grateLevel', 'level'], ['gratePerimeter', 'length'], ['invertOut', 'level'], ['sumpDepth', 'size']],
  pipe: [
    ['diameter', 'size'], ['length', 'length'], ['invertUp', 'level'], ['invertDown', 'level'], ['material', { choices: ['smoothSolid', 'corrugatedSolid', 'perforated'] }],
    ['joints', { choices: ['glued', 'gasketed', 'pushFit'] }], ['coverMin', 'size'], ['underWheels', 'yesNo'], ['bends90', 'count'], ['bends45', 'count'], ['cleanouts', 'count'],
  ],
  cleanout: [['diameter', 'size']],
  underdrain: [['diameter', 'size'], ['length', 'length'], ['invertUp', 'level'], ['invertDown', 'level']],
  swale: [['length', 'length'], ['slope', 'slope'], ['sideSlope', 'figure'], ['depth', 'size']],
  basin: [
    ['diameter', 'size'], ['floorLevel', 'level'], ['rimLevel', 'level'], ['inletInvert', 'level'], ['offLevel', 'level'], ['onLevel', 'level'], ['alarmLevel', 'level'],
    ['wall', { choices: ['solid', 'perforated'] }], ['floatKind', { choices: ['vertical', 'electronic', 'tether'] }], ['floatClearance', 'size'],
    ['collarVolume', 'figure'], ['lidFixed', 'yesNo'],
  ],
  pump: [['curveName', { choices: [] }], ['curve', 'curve'], ['solids', 'size'], ['minSubmergence', 'size']],
  checkValve: [['present', 'yesNo'], ['equivalentLength', 'length']],
  weepHole: [['diameter', 'size']],
  dischargeLine: [['innerDiameter', 'size'], ['length', 'length'], ['hazenWilliamsC', 'figure'], ['coverMin', 'size']],
  outlet: [
    ['outletKind', { choices: ['daylight', 'emitter', 'percolationTee', 'dryWell', 'curb', 'stormConnection', 'ditch'] }], ['level', 'level'], ['waterLevel', 'level'],
    ['openingHead', 'size'], ['distanceToFoundation', 'length'], ['distanceToLotLine', 'length'], ['insideCatchment', 'yesNo'], ['groundLevel', 'level'], ['groundFallsAway', 'slope'],
  ],
};

const labels: Record<string, MessageCode> = {
  width: 'designs.field.width', depth: 'designs.field.depth', length: 'designs.field.length', slope: 'designs.field.slope', diameter: 'designs.field.diameter',
  count: 'designs.field.count', bends90: 'designs.field.bends90', bends45: 'designs.field.bends45', unsealedJointLevel: 'designs.field.unsealedJointLevel',
  invertUp: 'designs.field.invertUp', invertDown: 'designs.field.invertDown', grateLevel: 'designs.field.grateLevel', outletDiameter: 'designs.field.outletDiameter',
  surround: 'designs.field.surround', use: 'designs.field.use', 'grate.locked': 'designs.field.grateLocked', 'grate.loadClass': 'designs.field.loadClass',
  'grate.slotWidth': 'designs.field.slotWidth', gratePerimeter: 'designs.field.gratePerimeter', invertOut: 'designs.field.invertOut', sumpDepth: 'designs.field.sumpDepth',
  material: 'designs.field.material', joints: 'designs.field.joints', coverMin: 'designs.field.coverMin', underWheels: 'designs.field.underWheels', cleanouts: 'designs.field.cleanouts',
  sideSlope: 'designs.field.sideSlope', floorLevel: 'designs.field.floorLevel', rimLevel: 'designs.field.rimLevel', inletInvert: 'designs.field.inletInvert',
  offLevel: 'designs.field.offLevel', onLevel: 'designs.field.onLevel', alarmLevel: 'designs.field.alarmLevel', wall: 'designs.field.wall', floatKind: 'designs.field.floatKind',
  floatClearance: 'designs.field.floatClearance', collarVolume: 'designs.field.collarVolume', lidFixed: 'designs.field.lidFixed', curve: 'designs.field.curve',
  solids: 'designs.field.solids', minSubmergence: 'designs.field.minSubmergence', present: 'designs.field.present', equivalentLength: 'designs.field.equivalentLength',
  innerDiameter: 'designs.field.innerDiameter', hazenWilliamsC: 'designs.field.hazenWilliamsC', outletKind: 'designs.field.outletKind', level: 'designs.field.level',
  waterLevel: 'designs.field.waterLevel', openingHead: 'designs.field.openingHead', distanceToFoundation: 'designs.field.distanceToFoundation',
  distanceToLotLine: 'designs.field.distanceToLotLine', insideCatchment: 'designs.field.insideCatchment', groundLevel: 'designs.field.groundLevel', groundFallsAway: 'designs.field.groundFallsAway',
};

export function fieldsOf(kind: PartKind): readonly PartField[] {
  return table[kind].flatMap(([name, fieldKind]) => {
    const label = labels[name];
    return label === undefined || (typeof fieldKind === 'object' && fieldKind.choices.length === 0) ? [] : [{ path: name.split('.'), kind: fieldKind, label }];
  });
}

export function fieldValue(part: Part, path: readonly string[]): unknown {
  return path.reduce<unknown>((at, key) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined), part);
}
