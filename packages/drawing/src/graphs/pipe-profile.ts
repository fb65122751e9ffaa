import type { BuiltProfile, BuiltSegment, PipeShot } from '@yardfall/calc';
import type { DisplayList, Extent, Item, PolygonItem } from '../display.ts';
import { type Label, label } from '../labels.ts';
import { GraphPen } from './axis.ts';

export interface PipeProfileGiven {
  /** The pipe as designed [m]. */
  readonly designed: { readonly length: number; readonly invertUp: number; readonly invertDown: number };
  readonly shots: readonly PipeShot[];
  readonly built: Pick<BuiltProfile, 'segments' | 'bellies'>;
}

/** One laid pipe from its upper end, as designed and as shot: x along it, y level, heights drawn larger. Each segment says how it falls; water that stays is drawn. */
export function pipeProfile({ designed, shots, built }: PipeProfileGiven, { width, height }: { readonly width: number; readonly height: number }): DisplayList {
  const pen = new GraphPen();
  const extent = frameOf(designed, shots);
  for (const belly of built.bellies) pen.items.push(waterIn(shots, belly));
  pen.line('ink', [[0, designed.invertUp], [designed.length, designed.invertDown]], 'thin', 'dash');
  for (const segment of built.segments) {
    const good = segment.kind === 'falls';
    const [from, to] = [levelAt(shots, segment.from), levelAt(shots, segment.to)];
    pen.line(good ? 'ink' : 'sill', [[segment.from, from], [segment.to, to]], 'bold', good ? 'solid' : 'dot');
    pen.text(good ? 'ink' : 'sill', [(segment.from + segment.to) / 2, (from + to) / 2], wordsOf(segment), 'above', good ? 2 : 0.5);
  }
  for (const [n, { at, level }] of shots.entries()) pen.text('ink', [at, level], label('drawing.profile.shot', { n: n + 1 }), 'below', 0.8);
  const exaggeration = (extent.x1 - extent.x0) / width / ((extent.y1 - extent.y0) / height);
  return { name: 'section', extent, exaggeration, breaks: [], items: pen.items as Item[], key, hits: [], handles: [] };
}

const key = [
  { label: label('drawing.key.asDesigned'), symbol: { kind: 'line', role: 'ink', weight: 'thin', dash: 'dash' } },
  { label: label('drawing.key.asBuilt'), symbol: { kind: 'line', role: 'ink', weight: 'bold', dash: 'solid' } },
] as const;

function frameOf(designed: PipeProfileGiven['designed'], shots: readonly PipeShot[]): Extent {
  const levels = [designed.invertUp, designed.invertDown, ...shots.map(({ level }) => level)];
  const ends = [0, designed.length, ...shots.map(({ at }) => at)];
  const [x1, low, high] = [Math.max(...ends), Math.min(...levels), Math.max(...levels)];
  // An inch is seen even where the pipe lies flat.
  const rise = Math.max(high - low, 0.0254);
  return { x0: -0.06 * x1, x1: 1.06 * x1, y0: low - 0.45 * rise, y1: high + 0.45 * rise };
}

function levelAt(shots: readonly PipeShot[], at: number): number {
  return shots.find((shot) => shot.at === at)?.level ?? 0;
}

function wordsOf({ kind, fall, slope }: BuiltSegment): Label {
  if (kind === 'back') return label('drawing.profile.back', { rise: -fall });
  if (kind === 'flat') return label('drawing.profile.flat');
  return label(kind === 'slack' ? 'drawing.profile.slack' : 'drawing.profile.falls', { slope });
}

/** The water that stays behind a hump, up to its level. */
function waterIn(shots: readonly PipeShot[], { at, depth, until }: BuiltProfile['bellies'][number]): PolygonItem {
  const level = levelAt(shots, at) + depth;
  const end = shots.findIndex((shot) => shot.at === until);
  let first = end;
  while (first > 0 && (shots[first - 1]?.level ?? Infinity) < level) first -= 1;
  const [before, after] = [shots[first - 1], shots[first]];
  const start = before === undefined || after === undefined || before.level === after.level ? null : before.at + ((before.level - level) / (before.level - after.level)) * (after.at - before.at);
  const wet = shots.slice(first, end + 1).map((shot): [number, number] => [shot.at, shot.level]);
  return { kind: 'polygon', part: null, role: 'water', state: 'plain', points: [...(start === null ? [] : [[start, level] as const]), ...wet], hatch: 'water', outlined: true };
}
