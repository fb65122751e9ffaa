import { label } from '../labels.ts';
import { drawnMiddle, seenStation } from './breaks.ts';
import { candidateStation, showsCandidates } from './candidates.ts';
import { levelAt } from './ground.ts';
import type { Layout } from './layout.ts';
import { box } from './scene.ts';
import type { Scene } from './scene.ts';

/** Places to which water could run, and how far above or below them a pipe without a pump would end. */
export function drawCandidates(scene: Scene): void {
  const { document, evaluation, layout, frame, pen, options } = scene;
  if (!showsCandidates(options)) return;
  for (const outlet of document.site.candidateOutlets) {
    const station = candidateStation(document, layout, outlet);
    const half = 22 * frame.mx;
    // Where the designed outlet is this very place, it says its own level.
    if (!isDesigned(layout, station, outlet.level)) {
      pen.line(outlet.id, 'ink', [[station - half, outlet.level], [station + half, outlet.level]], 'bold');
      pen.level(outlet.id, 'ink', [station, outlet.level], label('drawing.candidate', { name: outlet.name, level: outlet.level }), 'below', 1);
    }
    pen.anchor(outlet.id, [station + half + 8 * frame.mx, outlet.level]);
    const answer = evaluation?.results.gravity.find((entry) => entry.outlet === outlet.id);
    if (answer === undefined) continue;
    if (answer.shortfall > 0) {
      const start = layout.chain[0]?.to ?? layout.lowSpot?.station ?? 0;
      pen.line(outlet.id, 'sill', [[start, outlet.collectorInvert], [station, answer.neededLevel]], 'thin', 'longDash');
      pen.legend('drawing.key.gravity', { kind: 'line', role: 'sill', weight: 'thin', dash: 'longDash' });
      pen.line(outlet.id, 'sill', [[station, answer.neededLevel], [station, outlet.level]], 'bold');
      pen.text(outlet.id, 'sill', [station, answer.neededLevel], label('drawing.shortfall', { height: answer.shortfall }), 'below', 1);
    } else {
      pen.text(outlet.id, 'sound', [station, outlet.level], label('drawing.toSpare', { height: -answer.shortfall }), 'below', 4);
    }
  }
}

const isDesigned = ({ chain }: Layout, station: number, level: number): boolean =>
  chain.some(({ part, from, to }) => part.kind === 'outlet' && Math.abs(part.level - level) < 0.005 && station > from - 1 && station < to + 1);

/** The document gives a roof line no depth [m], ours: half as deep as a pump line that would lie beside it, so that two lines are seen as two. */
export function roofLineDepth({ layout }: Scene): number {
  const line = layout.chain.map(({ part }) => part).find((part) => part.kind === 'dischargeLine');
  return line?.kind === 'dischargeLine' && Math.abs(line.coverMin - 0.3) < 0.15 ? line.coverMin / 2 : 0.3;
}

/** Where a roof line is lettered: past the basin, where no pipe of the house end runs over it. */
function clearStation({ layout, frame }: Scene, from: number, to: number): number {
  const basin = layout.chain.find(({ part }) => part.kind === 'basin')?.to ?? to;
  if (basin >= Math.min(to, frame.to)) return from + Math.min((to - from) * 0.5, frame.mx * 260);
  const open = Math.min(to, frame.to, frame.map.cuts.find((cut) => cut.from > basin)?.from ?? Infinity);
  return basin + Math.min((open - basin) * 0.5, frame.mx * 180);
}

/** Roof water leaves behind the section plane: dashed, with its own lid. */
export function drawRoof(scene: Scene): void {
  const { layout, frame, pen, ground } = scene;
  for (const { part, from, to } of layout.roof) {
    if (part.kind === 'leader') {
      const half = Math.max(part.diameter / 2, 2 * frame.mx);
      const foot = levelAt(ground, from);
      pen.body(part.id, 'ink', box(from - half, from + half, foot, frame.extent.y1), 'none');
      const same = layout.roof.flatMap(({ part: other }) => (other.kind === 'leader' && other.diameter === part.diameter ? [other] : []));
      if (same.at(-1)?.id === part.id) {
        const count = same.reduce((sum, other) => sum + other.count, 0);
        pen.text(part.id, 'ink', [from + half, frame.extent.y1 - 22 * frame.my], label('drawing.leader', { count, diameter: part.diameter }), 'right', 5);
      }
      pen.anchor(part.id, [from + 12 * frame.mx, frame.extent.y1 - 40 * frame.my]);
    } else if (part.kind === 'roofLine') {
      const depth = roofLineDepth(scene);
      const start = Math.min(levelAt(ground, from), part.unsealedJointLevel) - depth;
      const end = levelAt(ground, Math.min(to, frame.to)) - depth;
      pen.line(part.id, 'faint', [[from, levelAt(ground, from)], [from, start], [to, end]], 'thin', 'dash');
      pen.hit(part.id, [[from, start - 8 * frame.my], [to, end - 8 * frame.my], [to, end + 8 * frame.my], [from, start + 8 * frame.my]]);
      const near = seenStation(frame.map, clearStation(scene, from, to), from, Math.min(to, frame.to));
      pen.text(part.id, 'faint', [near, start + ((near - from) / Math.max(to - from, 1e-9)) * (end - start)], label('drawing.roofLine', { diameter: part.diameter, length: part.length }), 'above', 4);
      pen.anchor(part.id, [from + 20 * frame.mx, start]);
    } else if (part.kind === 'gutter') {
      // The eave is above the sheet: the gutter is tapped at the top of its leader.
      pen.hit(part.id, box(from - 12 * frame.mx, from + 12 * frame.mx, frame.extent.y1 - 26 * frame.my, frame.extent.y1));
      pen.anchor(part.id, [from - 14 * frame.mx, frame.extent.y1 - 14 * frame.my]);
    }
  }
}

export function drawUtilities(scene: Scene): void {
  const { document, frame, ground, pen, options } = scene;
  if (!options.utilities) return;
  for (const { id, kind, name, station, level, tolerance } of document.site.utilities) {
    if (station === null || level === null || station < frame.from || station > frame.to) continue;
    if (tolerance > 0 && options.detail === 'full' && level < levelAt(ground, station)) {
      // The machine stays out from the surface down to the line.
      const foot = level - 12 * frame.my;
      const [from, to] = [Math.max(station - tolerance, frame.from), Math.min(station + tolerance, frame.to)];
      pen.shape(id, 'watch', [[from, levelAt(ground, from)], [to, levelAt(ground, to)], [to, foot], [from, foot]], 'range', false);
      pen.legend('drawing.key.handDig', { kind: 'hatch', role: 'watch', hatch: 'range' });
    }
    const across = 5 * frame.mx;
    const up = 5 * frame.my;
    pen.shape(id, 'ink', [[station - across, level], [station, level - up], [station + across, level], [station, level + up]], 'paper');
    pen.text(id, 'ink', [station, level], label('drawing.utility', { name, kind, level }), 'right', 3);
    pen.anchor(id, [station + 3 * across, level]);
  }
}

export function drawBreaks(scene: Scene): void {
  const { frame, pen, options } = scene;
  for (const cut of frame.map.cuts) {
    pen.mark(null, 'faint', 'break', [(cut.from + cut.to) / 2, (frame.extent.y0 + frame.extent.y1) / 2]);
    if (options.detail === 'mini') continue;
    const x = drawnMiddle(frame.map, cut) + 8 * frame.mx;
    pen.items.push({
      kind: 'text', part: null, role: 'faint', state: 'plain', at: [x, frame.extent.y0 + 36 * frame.my], label: label('drawing.notDrawn', { length: cut.to - cut.from }),
      side: 'right', rank: 1, movable: true,
    });
  }
}

const footBars = [1, 2, 5, 10, 20, 50, 100].map((feet) => feet * 0.3048);
const metreBars = [0.25, 0.5, 1, 2, 5, 10, 20, 50];

/** Scale bar and the statement of the vertical exaggeration. */
export function drawScale(scene: Scene): void {
  const { frame, pen, options } = scene;
  // A sheet of paper has rulers and says its scales in the title block.
  if (options.detail === 'mini' || options.scale !== null) return;
  const bars = options.scaleUnit === 'foot' ? footBars : metreBars;
  const length = bars.filter((value) => value / frame.mx <= Math.min(180, options.width * 0.2)).at(-1) ?? bars[0] ?? 1;
  const x0 = frame.extent.x0 + 12 * frame.mx;
  const y = frame.extent.y0 + 14 * frame.my;
  const tick = 4 * frame.my;
  pen.items.push({
    kind: 'line', part: null, role: 'ink', state: 'plain', weight: 'thin', dash: 'solid',
    points: [[x0, y + tick], [x0, y], [x0 + length, y], [x0 + length, y + tick]],
  });
  const note = frame.exaggeration === 1 ? label('drawing.trueScale') : label('drawing.exaggeration', { times: frame.exaggeration });
  const at = (x: number, y1: number, text: ReturnType<typeof label>): void => {
    pen.items.push({ kind: 'text', part: null, role: 'ink', state: 'plain', at: [x, y1], label: text, side: 'right', rank: 0, movable: false });
  };
  at(x0 + length, y + 2 * frame.my, label('drawing.scaleBar', { length }));
  at(x0 + length + 58 * frame.mx, y + 2 * frame.my, note);
}
