import type { DesignDocument, Evaluation, Outlet } from '@yardfall/calc';
import type { DisplayList } from './display.ts';
import { drawBeside } from './section/beside.ts';
import { drawnX } from './section/cuts.ts';
import { drawBasin, drawCatchBasin, drawChannel, drawCleanout, drawJoining, drawPipe } from './section/collector.ts';
import { drawDischargeLine, drawOutlet, drawPumps } from './section/discharge.ts';
import { frameOf } from './section/frame.ts';
import { groundLine } from './section/ground.ts';
import { drawGround, drawHouse, drawLowSpot, drawSillLine, drawSpotLevels } from './section/house.ts';
import { layOut } from './section/layout.ts';
import type { Placed } from './section/follow.ts';
import { drawMarks } from './section/marks.ts';
import { defaultSectionOptions } from './section/options.ts';
import type { SectionOptions } from './section/options.ts';
import { Pen } from './section/pen.ts';
import { pinsOf, stationsOf } from './section/pins.ts';
import type { Scene } from './section/scene.ts';
import { drawBreaks, drawCandidates, drawRoof, drawScale, drawUtilities } from './section/site.ts';
import { drawSwale } from './section/swale.ts';
import { drawBasinWater, drawChannelWater, drawEnergyLines, drawPond, drawWaterTable } from './section/water.ts';

/** The long profile from the protected sill to the outlet, to scale in both axes. */
export function section(document: DesignDocument, evaluation: Evaluation | null, given: Partial<SectionOptions> = {}): DisplayList {
  const options = { ...defaultSectionOptions, ...given };
  const layout = layOut(document, options.lowSpot);
  const ground = groundLine(document, layout);
  const frame = frameOf(document, layout, ground, options);
  const pen = new Pen(frame, options.states, options.detail === 'mini');
  const scene: Scene = { document, evaluation, layout, ground, frame, options, pen };
  drawAll(scene);
  return {
    name: 'section',
    extent: frame.extent,
    exaggeration: frame.exaggeration,
    breaks: frame.map.cuts.map((cut) => ({ x: drawnX(frame.map, (cut.from + cut.to) / 2), from: cut.from, to: cut.to })),
    items: pen.items,
    key: pen.key,
    hits: pen.hits,
    handles: pen.handles,
    pins: pinsOf(scene),
    stations: stationsOf(frame),
  };
}

function drawAll(scene: Scene): void {
  drawGround(scene);
  drawHouse(scene);
  drawWaterTable(scene);
  drawCandidates(scene);
  drawRoof(scene);
  const chain = scene.layout.chain;
  chain.forEach((placed, index) => {
    if (placed.from <= scene.frame.to) drawPart(scene, placed, chain[index - 1] ?? null, chain[index + 1] ?? null);
  });
  for (const [index, placed] of scene.layout.roof.entries()) {
    if (placed.part.kind === 'outlet' && placed.from <= scene.frame.to) drawOutlet(scene, placed.part, placed, scene.layout.roof[index - 1]?.part ?? null);
  }
  for (const placed of scene.layout.joining) if (placed.from <= scene.frame.to) drawJoining(scene, placed);
  for (const placed of scene.layout.beside) if (placed.from <= scene.frame.to) drawBeside(scene, placed);
  drawBasinWater(scene);
  drawChannelWater(scene);
  drawPumps(scene);
  drawPond(scene);
  drawLowSpot(scene);
  drawSpotLevels(scene);
  drawUtilities(scene);
  drawEnergyLines(scene);
  drawSillLine(scene);
  drawBreaks(scene);
  drawMarks(scene);
  drawScale(scene);
}

function drawPart(scene: Scene, placed: Placed, before: Placed | null, after: Placed | null): void {
  const { part } = placed;
  switch (part.kind) {
    case 'channel':
      return drawChannel(scene, part, placed);
    case 'catchBasin':
      return drawCatchBasin(scene, part, placed);
    case 'pipe':
    case 'underdrain':
      return drawPipe(scene, part, placed);
    case 'cleanout':
      return drawCleanout(scene, part.id, placed.from, before?.part.kind === 'pipe' ? before.part.invertDown : scene.frame.extent.y0);
    case 'swale':
      return drawSwale(scene, part, placed, before?.part ?? null, after?.part ?? null);
    case 'basin':
      return drawBasin(scene, part, placed);
    case 'dischargeLine':
      return drawDischargeLine(scene, part, placed, outletOf(after));
    case 'outlet':
      return drawOutlet(scene, part, placed, before?.part ?? null);
    default:
      return undefined;
  }
}

const outletOf = (placed: Placed | null): Outlet | null => (placed?.part.kind === 'outlet' ? placed.part : null);
