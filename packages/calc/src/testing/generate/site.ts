import type { Catchment, DrainsTo, LowSpot, Loss, Plan, PlanShape, Sill, Site, SpotLevel, StageArea, Surface } from '../../document/document.ts';
import { rounded, type Draw } from './draw.ts';

/** Level of the finished floor of a generated house; some jobs take their bench mark as zero, some stand below it. */
export interface Ground {
  readonly floor: number;
  readonly spots: readonly LowSpot[];
}

function stages(draw: Draw, bottom: number, rim: number): StageArea[] {
  const count = draw.whole(2, 6);
  let area = draw.between(0.2, 3);
  return Array.from({ length: count }, (_, i) => {
    const stage = { level: rounded(bottom + ((rim - bottom) * i) / (count - 1)), area };
    area = rounded(area * draw.between(1.2, 3) + draw.between(0.5, 6));
    return stage;
  });
}

export function generatedGround(draw: Draw): Ground {
  const floor = draw.pick([30.48, 100, 0, -2.5, 3.048]);
  const count = draw.pick([1, 1, 1, 2, 2, 3]);
  const spots = Array.from({ length: count }, (_, i): LowSpot => {
    const bottom = rounded(floor - draw.between(0.06, 0.35));
    const rim = rounded(bottom + draw.between(0.05, 0.3));
    return {
      id: `L${i + 1}`, name: `Low spot ${i + 1}`, stageArea: stages(draw, bottom, rim), rimLevel: rim, spillWidth: draw.between(0.5, 6),
      spillsTo: i > 0 && draw.chance(0.5) ? `L${draw.whole(1, i)}` : null, existingLoss: draw.chance(0.5) ? 0 : draw.between(0, 5e-4), station: draw.between(0.3, 6),
    };
  });
  return { floor, spots };
}

interface Character {
  readonly surface: Surface;
  readonly coefficient: readonly [number, number];
  readonly storage: readonly [number, number];
  readonly roughness: readonly [number, number];
}

/** Ranges as design guides print them for each surface; common practice, no single source. */
const characters: readonly Character[] = [
  { surface: 'roof', coefficient: [0.9, 1], storage: [0, 1], roughness: [0.011, 0.015] },
  { surface: 'paving', coefficient: [0.85, 0.98], storage: [0.5, 2], roughness: [0.011, 0.016] },
  { surface: 'lawn', coefficient: [0.1, 0.45], storage: [2, 5], roughness: [0.15, 0.4] },
  { surface: 'bed', coefficient: [0.05, 0.3], storage: [2, 6], roughness: [0.1, 0.4] },
  { surface: 'gravel', coefficient: [0.3, 0.7], storage: [1, 4], roughness: [0.02, 0.1] },
  { surface: 'permeablePaving', coefficient: [0.1, 0.5], storage: [2, 6], roughness: [0.012, 0.05] },
  { surface: 'neighbour', coefficient: [0.2, 0.6], storage: [1, 4], roughness: [0.05, 0.3] },
];
const soft: readonly Surface[] = ['lawn', 'bed', 'gravel', 'neighbour'];

function loss(draw: Draw, surface: Surface): Loss {
  if (!soft.includes(surface) || draw.chance(0.5)) return { method: 'volumetric' };
  switch (draw.whole(1, 3)) {
    case 1: return { method: 'curveNumber', curveNumber: draw.between(55, 95) };
    case 2: return { method: 'greenAmpt', conductivity: draw.between(2e-7, 2e-5), suctionHead: draw.between(0.05, 0.3), moistureDeficit: draw.between(0.05, 0.4) };
    default: {
      const final = draw.between(1e-6, 5e-6);
      return { method: 'horton', initial: rounded(final + draw.between(5e-6, 4e-5)), final, decay: draw.between(2e-4, 2e-3) };
    }
  }
}

/** One surface of the yard and where it drains. Above an acre, and only there, the unit hydrograph speaks. */
export function generatedCatchment(draw: Draw, id: string, drainsTo: DrainsTo, surface: Surface | null = null): Catchment {
  const character = characters.find((item) => item.surface === surface) ?? draw.pick(characters);
  const big = character.surface === 'neighbour' && draw.chance(0.05);
  const hard = character.surface === 'roof' || character.surface === 'paving';
  return {
    id, name: `Surface ${id}`, surface: character.surface, area: big ? draw.between(4100, 6000) : draw.between(4, hard ? 120 : 250),
    coefficient: draw.between(...character.coefficient), depressionStorage: draw.between(...character.storage), flowLength: draw.between(1, 30),
    slope: draw.between(0.005, character.surface === 'roof' ? 0.5 : 0.08), roughness: draw.between(...character.roughness), loss: loss(draw, character.surface),
    response: big ? 'unitHydrograph' : hard && draw.chance(0.4) ? 'instantaneous' : 'kinematic', drainsTo,
  };
}

function sills(draw: Draw, { floor, spots }: Ground): Sill[] {
  const count = draw.pick([0, 1, 1, 2, 3, 4]);
  return Array.from({ length: count }, (_, i) => {
    const spot = draw.pick(spots);
    const low = spot.stageArea[0]!.level;
    return {
      id: `S${i + 1}`, name: `Sill ${i + 1}`, kind: draw.pick(['door', 'garage', 'vent', 'equipment'] as const), level: rounded(Math.max(low + 0.03, floor - draw.between(0, 0.12))), lowSpot: spot.id,
      soilFall: draw.chance(0.5) ? draw.between(-0.02, 0.2) : null, landing: draw.chance(0.2) ? { kind: draw.pick(['egress', 'other'] as const), before: draw.between(0, 0.2), after: draw.between(0, 0.2) } : null,
    };
  });
}

function spotLevels(draw: Draw, { floor, spots }: Ground): SpotLevel[] {
  const placed = draw.chance(0.5);
  const count = draw.whole(0, 10);
  return Array.from({ length: count }, (_, i) => ({
    id: `V${i + 1}`, name: `Shot ${i + 1}`, level: rounded(i === 0 ? floor : draw.between(spots[0]!.stageArea[0]!.level, floor + 0.2)),
    station: draw.chance(0.6) ? draw.between(0, 30) : null, position: placed ? { x: draw.between(0, 25), y: draw.between(0, 18) } : null,
  }));
}

const textures = ['sand', 'loamy sand', 'sandy loam', 'loam', 'silt loam', 'clay loam', 'clay'];

/** A plan of what the document says; it draws no lot, so that sites of a seed stay what they were. */
const drawnPlan = (catchments: readonly Catchment[]): Plan => ({
  picture: { photo: '01900000-0000-7000-8000-000000000001', width: 1600, height: 1200, tie: { from: { x: 100, y: 900 }, to: { x: 1300, y: 900 }, length: 24 } }, north: 12,
  shapes: catchments.map(({ id, name, area }, index): PlanShape => ({
    id: `Z${index + 1}`, name, kind: 'area', use: 'lawn', of: id, points: [{ x: 0, y: 10 * index }, { x: 8, y: 10 * index }, { x: 8, y: 10 * index + area / 8 }, { x: 0, y: 10 * index + area / 8 }],
  })),
});

export function generatedSite(draw: Draw, ground: Ground, catchments: readonly Catchment[]): Site {
  const { floor, spots } = ground;
  const bottom = Math.min(...spots.map((spot) => spot.stageArea[0]!.level));
  const seen = draw.chance(0.06);
  return {
    datum: { benchMark: 'Finished floor', level: floor }, closure: draw.chance(0.5) ? { misclosure: draw.between(-0.004, 0.004), setUps: draw.whole(1, 6) } : null,
    lotArea: draw.chance(0.5) ? draw.between(300, 1500) : null, sills: sills(draw, ground), spotLevels: spotLevels(draw, ground),
    breaklines: [], walls: draw.chance(0.2) ? [{ id: 'Y1', name: 'Garden wall', points: [{ x: 0, y: 5 }, { x: 8, y: 5 }] }] : [],
    lowSpots: spots, catchments,
    candidateOutlets: Array.from({ length: draw.whole(0, 3) }, (_, i) => ({
      id: `K${i + 1}`, name: `Outlet ${i + 1}`, kind: draw.pick(['daylight', 'curb', 'ditch', 'stormConnection'] as const), level: rounded(bottom + draw.between(-1, 0.3)),
      distance: draw.between(5, 80), tailwater: draw.chance(0.3) ? draw.between(0, 0.2) : 0, collectorInvert: rounded(bottom - 0.15),
    })),
    soil: {
      texture: draw.pick(textures), infiltrationRate: draw.chance(0.5) ? draw.between(2e-6, 4e-5) : null,
      seasonalHighWaterTable: draw.chance(0.5) ? rounded(floor - draw.between(0.6, 3)) : null, gradeLevel: floor, frostDepth: draw.chance(0.4) ? draw.between(0, 1.2) : null,
    },
    existingDrains: draw.chance(0.3) ? [{ id: 'E1', name: 'Old drain', diameter: 0.1016, hoseFlow: draw.between(2e-4, 8e-4), backedUpAfter: draw.chance(0.7) ? draw.between(30, 900) : null, dyeSeen: draw.chance(0.5), cameraStop: draw.chance(0.5) ? draw.between(2, 20) : null }] : [],
    utilities: draw.chance(0.4) ? [{ id: 'U1', kind: draw.pick(['power', 'gas', 'water'] as const), name: 'Marked line', station: draw.between(1, 20), level: rounded(floor - draw.between(0.3, 0.9)), tolerance: 0.6096 }] : [],
    observations: seen ? [{ id: 'B1', kind: draw.pick(['neighbourFill', 'waterOnDryDays', 'leaningWall'] as const), note: 'Seen' }] : [],
    plan: spots.length > 1 ? drawnPlan(catchments) : null,
  };
}
