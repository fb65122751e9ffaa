import type { DesignDocument, RainTable } from '@yardfall/calc';
import { z } from 'zod';
import { finite, Id, Level, Sha256, text } from '../common.ts';
import { PartSchema, outletKinds } from './parts.ts';

const PartId = z.string().regex(/^[A-Za-z][A-Za-z0-9-]{0,39}$/);
const Name = text(120);
const Length = finite(0, 5000);
const list = <T extends z.ZodType>(item: T, max: number) => z.array(item).max(max);
const Depths = z.array(z.array(finite(0, 5000)).max(20)).max(40);

export const RainTableSchema = z
  .strictObject({
    name: Name,
    source: text(500),
    illustrative: z.boolean(),
    series: z.enum(['partialDuration', 'annualMaximum']),
    durations: list(finite(1, 86_400 * 60), 40),
    returnPeriods: list(finite(1, 1000), 20),
    depths: Depths,
    lower: Depths.nullable(),
    upper: Depths.nullable(),
  })
  .meta({ id: 'RainTable' }) satisfies z.ZodType<RainTable>;

const DrainsTo = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('lowSpot'), id: PartId }),
  z.strictObject({ kind: z.literal('part'), id: PartId }),
  z.strictObject({ kind: z.literal('offSite') }),
]);

const Position = z.strictObject({ x: finite(-10_000, 10_000), y: finite(-10_000, 10_000) });

const planUses = [
  'house', 'roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour', 'septic', 'lot', 'wall', 'gutter', 'pipe', 'drain', 'utility', 'measure', 'sill', 'part',
  'tree',
] as const;
const Pixel = z.strictObject({ x: finite(0, 100_000), y: finite(0, 100_000) });

const Plan = z.strictObject({
  picture: z
    .strictObject({ photo: Id, width: finite(1, 100_000), height: finite(1, 100_000), tie: z.strictObject({ from: Pixel, to: Pixel, length: finite(0.01, 5000) }).nullable() })
    .nullable(),
  north: finite(0, 360).nullable(),
  shapes: list(
    z.strictObject({
      id: PartId, name: Name, kind: z.enum(['area', 'line', 'place']), use: z.enum(planUses), points: z.array(Position).min(1).max(500),
      of: PartId.nullable(),
    }),
    300,
  ),
});

const Loss = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('volumetric') }),
  z.strictObject({ method: z.literal('curveNumber'), curveNumber: finite(1, 100) }),
  z.strictObject({ method: z.literal('greenAmpt'), conductivity: finite(0, 1), suctionHead: finite(0, 10), moistureDeficit: finite(0, 1) }),
  z.strictObject({ method: z.literal('horton'), initial: finite(0, 1), final: finite(0, 1), decay: finite(0, 1) }),
]);

const Site = z.strictObject({
  datum: z.strictObject({ benchMark: Name, level: Level }),
  closure: z.strictObject({ misclosure: finite(-100, 100), setUps: z.number().int().min(0).max(10_000) }).nullable(),
  lotArea: finite(0, 1e8).nullable(),
  sills: list(
    z.strictObject({
      id: PartId, name: Name, kind: z.enum(['door', 'garage', 'vent', 'equipment']), level: Level, lowSpot: PartId, soilFall: finite(-10, 10).nullable(),
      landing: z.strictObject({ kind: z.enum(['egress', 'other']), before: finite(-10, 10), after: finite(-10, 10) }).nullable(),
    }),
    20,
  ),
  spotLevels: list(z.strictObject({ id: PartId, name: Name, level: Level, station: finite(-1000, 5000).nullable(), position: Position.nullable() }), 1000),
  breaklines: list(z.strictObject({ id: PartId, name: Name, points: list(Position.extend({ level: Level }), 500) }), 200),
  walls: list(z.strictObject({ id: PartId, name: Name, points: list(Position, 500) }), 200),
  lowSpots: list(
    z.strictObject({
      id: PartId, name: Name, stageArea: list(z.strictObject({ level: Level, area: finite(0, 1e6) }), 200),
      rimLevel: Level, spillWidth: finite(0, 1000), spillsTo: PartId.nullable(), existingLoss: finite(0, 10), station: finite(-1000, 5000),
    }),
    10,
  ),
  catchments: list(
    z.strictObject({
      id: PartId, name: Name,
      surface: z.enum(['roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour']),
      area: finite(0, 1e6), coefficient: finite(0, 1), depressionStorage: finite(0, 100), flowLength: finite(0, 2000),
      slope: finite(0, 2), roughness: finite(0, 2), loss: Loss,
      response: z.enum(['kinematic', 'instantaneous', 'unitHydrograph']), drainsTo: DrainsTo,
    }),
    100,
  ),
  candidateOutlets: list(
    z.strictObject({ id: PartId, name: Name, kind: z.enum(outletKinds), level: Level, distance: Length, tailwater: finite(0, 20), collectorInvert: Level }),
    20,
  ),
  soil: z.strictObject({ texture: text(80), infiltrationRate: finite(0, 0.01).nullable(), seasonalHighWaterTable: Level.nullable(), gradeLevel: Level, frostDepth: finite(0, 10).nullable() }),
  existingDrains: list(
    z.strictObject({ id: PartId, name: Name, diameter: finite(0.01, 2), hoseFlow: finite(0, 0.05), backedUpAfter: finite(0, 86_400).nullable(), dyeSeen: z.boolean(), cameraStop: finite(0, 1000).nullable() }),
    20,
  ),
  utilities: list(
    z.strictObject({
      id: PartId, kind: z.enum(['power', 'gas', 'communication', 'water', 'reclaimed', 'sewer', 'private']), name: Name,
      station: finite(-1000, 5000).nullable(), level: Level.nullable(), tolerance: finite(0, 5),
    }),
    50,
  ),
  observations: list(
    z.strictObject({
      id: PartId,
      kind: z.enum([
        'retainingWallOver4ft', 'leaningWall', 'slabOffset', 'voidUnderSlab', 'movingFooting', 'postTensionSlab', 'publicPipe',
        'sewage', 'waterOnDryDays', 'externalFlood', 'neighbourFill', 'lotLineDispute', 'septicNear', 'wetland',
      ]),
      note: text(1000),
    }),
    50,
  ),
  plan: Plan.nullable(),
});

const Rain = z.strictObject({
  table: RainTableSchema,
  allowance: finite(0, 0.5),
  storm: z.strictObject({ method: z.enum(['alternatingBlock', 'nrcsI', 'nrcsIA', 'nrcsII', 'nrcsIII']), duration: finite(300, 86_400), block: finite(60, 3600) }),
  recorded: z.strictObject({ name: Name, source: text(500), step: finite(60, 86_400), depths: list(finite(0, 1000), 20_000) }).nullable(),
  designReturnPeriod: finite(1, 1000),
  checkReturnPeriod: finite(1, 1000),
});

const Construction = z.strictObject({
  slabCuts: list(
    z.strictObject({ id: PartId, name: Name, length: Length, width: finite(0, 100), thickness: finite(0, 2), reinforcement: z.enum(['none', 'mesh', 'bar']), part: PartId }),
    50,
  ),
  trenches: list(
    z.strictObject({ id: PartId, name: Name, length: Length, width: finite(0, 20), depth: finite(0, 10), soil: z.enum(['sand', 'loam', 'clay']), part: PartId }),
    50,
  ),
  electrical: z
    .strictObject({
      dedicatedCircuit: z.boolean(), gfci: z.boolean(), extensionCord: z.boolean(),
      alarm: z.enum(['differentCircuit', 'sameCircuitBattery', 'none']),
      backup: z.enum(['none', 'battery', 'secondPump', 'generatorInlet']),
      runLength: Length, current: finite(0, 200), conductorResistance: finite(0, 1), voltage: finite(0, 1000),
      burial: z.strictObject({ method: z.enum(['direct', 'conduit', 'gfciCable']), depth: finite(0, 10) }).nullable(), receptacleLevel: Level.nullable(),
    })
    .nullable(),
  restoration: z.strictObject({ sodArea: finite(0, 1e5), paverArea: finite(0, 1e5) }),
  treesNear: z.boolean(),
  poolWithin3m: z.boolean(),
  trenchNearFooting: z.boolean(),
  foundationWithin1ft: z.boolean(),
});

const stamp = { id: text(64, 1), sha256: Sha256, takenAt: z.iso.datetime({ offset: true }) };
const Stamp = z.strictObject(stamp).nullable();
const LibraryStamp = z.strictObject({ ...stamp, part: text(40, 1) });

export const DesignDocumentSchema = z
  .strictObject({
    schema: z.literal('yardfall.design'),
    version: z.literal(2),
    title: text(200),
    seed: z.number().int().min(0).max(2 ** 31 - 1),
    site: Site,
    rain: Rain,
    system: z.strictObject({ parts: list(PartSchema, 200) }),
    construction: Construction,
    limits: list(z.strictObject({ limit: text(40, 1), pass: finite(-1e7, 1e7), fail: finite(-1e7, 1e7), by: Name, at: z.iso.datetime({ offset: true }), why: text(500) }), 200),
    sources: z.strictObject({ survey: Stamp, rain: Stamp, library: list(LibraryStamp, 200).optional() }),
  })
  .meta({ id: 'DesignDocument' }) satisfies z.ZodType<DesignDocument>;
