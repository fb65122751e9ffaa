import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { candidateStation } from './candidates.ts';
import { clipLine, levelAt } from './ground.ts';
import { box } from './scene.ts';
import type { Scene } from './scene.ts';

/** Shapes of the house that the document does not describe [m], ours. */
const wallThickness = 0.2;
const floorThickness = 0.1;
const footingDepth = 0.45;
const slabBeyondChannel = 0.45;
const assumedSlabThickness = 0.1;

export function drawHouse(scene: Scene): void {
  const { layout, frame, pen } = scene;
  const sill = layout.sill;
  if (sill === null) return;
  const inside = frame.extent.x0;
  const top = frame.extent.y1;
  const wall = Math.min(wallThickness, -inside * 0.6);
  const footing = Math.max(sill.level - footingDepth, frame.extent.y0);
  pen.shape(null, 'slab', [
    [inside, sill.level], [0, sill.level], [0, footing], [-wall, footing], [-wall, sill.level - floorThickness], [inside, sill.level - floorThickness],
  ], 'concrete');
  const opens = sill.kind === 'door' || sill.kind === 'garage';
  if (opens) {
    pen.line(sill.id, 'ink', [[-wall * 0.65, sill.level], [-wall * 0.65, top]], 'thin');
    pen.line(sill.id, 'ink', [[-wall * 0.35, sill.level], [-wall * 0.35, top]], 'thin');
  } else pen.shape(sill.id, 'ink', box(-wall, 0, sill.level + 0.1, top), 'none');
  pen.hit(sill.id, box(inside, 0, sill.level - 0.05, top));
  pen.anchor(sill.id, [-wall / 2, sill.level + 10 * frame.my]);
}

/** The protected level: a line across the low spot, lettered first. */
export function drawSillLine(scene: Scene): void {
  const { layout, frame, pen } = scene;
  if (layout.sill === null) return;
  const basin = layout.chain.find(({ part }) => part.kind === 'basin');
  const reach = Math.min(basin?.from ?? Math.max((layout.lowSpot?.station ?? 2) * 2.2, 3), frame.to);
  const { id, level, name } = layout.sill;
  pen.line(id, 'sill', [[frame.extent.x0, level], [reach, level]], 'normal', 'chain');
  // In the room there is no ground and no leader in its way; a phone has no room beside the wall.
  const room = -frame.extent.x0;
  const at = room > 90 * frame.mx ? frame.extent.x0 + 44 * frame.mx : Math.min(reach, frame.mx * 26);
  pen.level(id, 'sill', [at, level], label('drawing.sill', { name, level }), 'above', 0, 'level');
}

export function slabEnd(scene: Scene): number {
  const { document, layout } = scene;
  const paved = document.site.catchments.some(({ surface }) => surface === 'paving' || surface === 'permeablePaving');
  if (!paved || layout.lowSpot === null) return 0;
  const after = layout.chain[1]?.part.id;
  const cut = document.construction.slabCuts.find(({ part }) => part === after);
  const collector = layout.chain[0];
  const edge = collector?.to ?? layout.lowSpot.station;
  return Math.min(edge + (cut?.length ?? slabBeyondChannel), layout.chain.find(({ part }) => part.kind === 'basin')?.from ?? Infinity);
}

export function drawGround(scene: Scene): void {
  const { ground, frame, pen, document } = scene;
  const end = slabEnd(scene);
  const last = Math.max(frame.to, ground.at(-1)?.[0] ?? 0) + frame.mx * 60;
  const start = scene.layout.sill === null ? frame.extent.x0 : 0;
  const band = frame.my * 12;
  drawSoil(scene, clipLine(ground, end, last), band);
  if (start < 0) drawSoil(scene, clipLine(ground, start, 0), band);
  if (end > 0) {
    const thickness = document.construction.slabCuts[0]?.thickness ?? assumedSlabThickness;
    const top = clipLine(ground, 0, end);
    pen.shape(null, 'slab', [...top, ...below(top, thickness)], 'concrete');
  }
}

const below = (points: readonly Point[], depth: number): Point[] => points.map(([x, y]): Point => [x, y - depth]).reverse();

function drawSoil(scene: Scene, line: readonly Point[], band: number): void {
  scene.pen.shape(null, 'ground', [...line, ...below(line, band)], 'soil', false);
  scene.pen.line(null, 'ground', line, 'normal');
}

export function drawLowSpot(scene: Scene): void {
  const { layout, pen, frame } = scene;
  const spot = layout.lowSpot;
  if (spot === null) return;
  const level = spot.stageArea[0]?.level ?? levelAt(scene.ground, spot.station);
  if (layout.chain[0]?.part.kind !== 'channel') {
    pen.level(spot.id, 'ground', [spot.station, level], label('drawing.lowSpot', { name: spot.name, level }), 'above', 1);
  }
  pen.anchor(spot.id, [spot.station - 30 * frame.mx, level + 8 * frame.my]);
}

/** Shots along the section; where a part stands at the same place its own level speaks. */
export function drawSpotLevels(scene: Scene): void {
  const { document, layout, pen, frame } = scene;
  const candidates = document.site.candidateOutlets.map((outlet) => candidateStation(document, layout, outlet));
  const taken = [layout.sill === null ? Infinity : 0, layout.lowSpot?.station ?? Infinity, ...candidates, ...layout.chain.flatMap(({ from, to }) => [from, to])];
  for (const spot of document.site.spotLevels) {
    if (spot.station === null || spot.station < frame.from || spot.station > frame.to) continue;
    if (taken.some((station) => Math.abs(station - (spot.station ?? 0)) < 0.15)) continue;
    pen.text(null, 'ground', [spot.station, spot.level], label('drawing.spot', { name: spot.name, level: spot.level }), 'above', 5);
  }
}
