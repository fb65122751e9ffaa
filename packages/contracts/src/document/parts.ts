import type { Part } from '@yardfall/calc';
import { z } from 'zod';
import { finite, Level, text } from '../common.ts';

export const outletKinds = ['daylight', 'emitter', 'percolationTee', 'dryWell', 'curb', 'stormConnection', 'ditch'] as const;

const PartId = z.string().regex(/^[A-Za-z][A-Za-z0-9-]{0,39}$/);
const Length = finite(0, 5000);
const Small = finite(0, 20);
const Count = z.number().int().min(0).max(500);
const Roughness = finite(0, 1);
const Answer = z.enum(['yes', 'no', 'unknown', 'notApplicable']);

const Seepage = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('interceptor'), conductivity: finite(0, 1), fromTexture: z.boolean(), gradient: finite(0, 10), depth: Small }),
  z.strictObject({
    method: z.literal('relief'), conductivity: finite(0, 1), fromTexture: z.boolean(), waterAbove: Small, barrierBelow: finite(0, 100), reach: Length,
    sides: z.union([z.literal(1), z.literal(2)]),
  }),
]);

function part<K extends string, S extends z.ZodRawShape>(kind: K, shape: S) {
  return z.strictObject({ kind: z.literal(kind), id: PartId, name: text(120), drainsTo: PartId.nullable(), ...shape });
}

export const PartSchema = z
  .discriminatedUnion('kind', [
    part('gutter', { width: Small, depth: Small, length: Length, slope: finite(0, 1), overflowsTo: PartId }),
    part('leader', { diameter: Small, count: Count }),
    part('roofLine', { diameter: Small, length: Length, roughness: Roughness, bends90: Count, bends45: Count, unsealedJointLevel: Level }),
    part('channel', {
      lowSpot: PartId, length: Length, width: Small, depth: Small, shape: z.enum(['rectangular', 'trapezoidal', 'roundBottomed']), bottomWidth: Small,
      steps: z.array(z.strictObject({ at: Length, drop: Small })).max(100), invertUp: Level, invertDown: Level, roughness: Roughness, grateLevel: Level,
      grate: z.strictObject({ openAreaRatio: finite(0, 1), slotWidth: finite(0, 1), locked: z.boolean(), loadClass: z.enum(['foot', 'car', 'truck']), clogging: finite(0, 1) }),
      outletSides: z.union([z.literal(1), z.literal(2)]), outletDiameter: Small.nullable(), surround: finite(0, 2), use: z.enum(['foot', 'car']),
    }),
    part('catchBasin', { lowSpot: PartId, grateLevel: Level, gratePerimeter: Small, grateOpenArea: finite(0, 20), clogging: finite(0, 1), invertOut: Level, sumpDepth: Small }),
    part('pipe', {
      diameter: Small, length: Length, invertUp: Level, invertDown: Level, roughness: Roughness,
      material: z.enum(['smoothSolid', 'corrugatedSolid', 'perforated']), joints: z.enum(['glued', 'gasketed', 'pushFit']), coverMin: finite(-5, 20),
      underWheels: z.boolean(), bends90: Count, bends45: Count, longSweep: z.boolean(), cleanouts: Count,
    }),
    part('cleanout', { diameter: Small }),
    part('underdrain', { diameter: Small, length: Length, invertUp: Level, invertDown: Level, inflowPerLength: finite(0, 1), seepage: Seepage.nullable() }),
    part('swale', { length: Length, slope: finite(-1, 2), sideSlope: finite(0, 50), depth: Small, roughness: Roughness }),
    part('basin', {
      diameter: Small, floorLevel: Level, rimLevel: Level, inletInvert: Level, offLevel: Level, onLevel: Level, alarmLevel: Level,
      marks: z.array(z.strictObject({ level: Level, volume: finite(0, 1000) })).max(200),
      wall: z.enum(['solid', 'perforated']), floatClearance: finite(0, 5), floatKind: z.enum(['vertical', 'electronic', 'tether']),
      collarVolume: finite(0, 100), emptyMass: finite(0, 1e5), lidFixed: z.boolean(),
    }),
    part('pump', {
      basin: PartId, curveName: text(120), curve: z.array(z.strictObject({ flow: finite(0, 10), head: finite(0, 500) })).max(100),
      solids: finite(0, 1), minSubmergence: finite(0, 5), role: z.enum(['duty', 'standby']), startLevel: Level.nullable(), power: z.enum(['mains', 'battery']),
      energy: finite(0, 1e10).nullable(), inputPower: finite(0, 1e6).nullable(),
    }),
    part('checkValve', { equivalentLength: Length, present: z.boolean() }),
    part('weepHole', { pump: PartId, diameter: finite(0, 0.1) }),
    part('dischargeLine', {
      innerDiameter: Small, nominal: text(20), length: Length, hazenWilliamsC: finite(1, 300),
      fittings: z.array(z.strictObject({ kind: z.enum(['bend90', 'bend45', 'tee', 'ballValve']), count: Count, equivalentLength: Length })).max(30),
      highPoint: Level.nullable(), lowestSag: Level.nullable(), wallRoughness: finite(0, 0.1), coverMin: finite(-5, 20),
    }),
    part('outlet', {
      outletKind: z.enum(outletKinds), level: Level, waterLevel: Level, openingHead: finite(0, 10), distanceToFoundation: Length, distanceToLotLine: Length,
      insideCatchment: z.boolean(), groundLevel: Level, groundFallsAway: finite(-2, 2),
      pit: z.strictObject({ area: finite(0, 1000), depth: finite(0, 20), voids: finite(0, 1), bottomLevel: Level }).nullable(),
      dryWell: z
        .strictObject({
          area: finite(0, 10_000), perimeter: Length, depth: Small, voids: finite(0, 1), bottomLevel: Level, infiltrationRate: finite(0, 0.1),
          overflow: z.boolean(), overflowsTo: PartId.nullable(),
        })
        .nullable(),
      exitDiameter: Small.nullable(), exitGround: z.enum(['grass', 'denseGrass', 'stone']).nullable(), ordinaryWater: Level.nullable(),
      returns: z.strictObject({ lowSpot: PartId, share: finite(0, 1) }).nullable(),
      questions: z.strictObject({
        outletTypeNamed: Answer, ownerKnown: Answer, permissionHeld: Answer, notSanitarySewer: Answer, notOntoNeighbour: Answer,
        associationAgrees: Answer, rightOfWayPermit: Answer, noWetland: Answer, clearOfSepticAndWell: Answer, noEasementConflict: Answer,
      }),
    }),
  ])
  .meta({ id: 'Part' }) satisfies z.ZodType<Part>;
