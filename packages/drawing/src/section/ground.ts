import type { DesignDocument } from '@yardfall/calc';
import type { Point } from '../display.ts';
import type { Layout } from './layout.ts';

/** Two shots nearer than this along the section are one place [m]. */
const samePlace = 0.02;

/** Ground along the section from the wall outward, in true stations. */
export function groundLine(document: DesignDocument, layout: Layout): Point[] {
  const { site } = document;
  const points: Point[] = [];
  const add = (station: number, level: number): void => {
    if (!points.some(([x]) => Math.abs(x - station) < samePlace)) points.push([station, level]);
  };
  if (layout.lowSpot !== null) add(layout.lowSpot.station, layout.lowSpot.stageArea[0]?.level ?? layout.lowSpot.rimLevel);
  for (const spot of site.spotLevels) if (spot.station !== null && spot.station >= 0) add(spot.station, spot.level);
  for (const { part, from, to } of layout.chain) {
    if (part.kind === 'basin') {
      add(from - 0.3, site.soil.gradeLevel);
      add(to + 0.3, site.soil.gradeLevel);
    }
    if (part.kind === 'outlet') add((from + to) / 2, part.groundLevel);
  }
  const sorted = points.sort((a, b) => a[0] - b[0]);
  return closeEnds(sorted, layout, site.soil.gradeLevel);
}

function closeEnds(sorted: Point[], layout: Layout, grade: number): Point[] {
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return [[0, grade], [Math.max(layout.end, 5), grade]];
  const head: Point[] = first[0] > samePlace ? [[0, startLevel(first, layout)]] : [];
  return [...head, ...sorted];
}

/** Without a shot at the wall the ground is taken level with the nearest one, and under the sill. */
function startLevel(first: Point, layout: Layout): number {
  const sill = layout.sill?.level;
  return sill === undefined ? first[1] : Math.min(first[1], sill);
}

export function levelAt(line: readonly Point[], station: number): number {
  const first = line[0];
  if (first === undefined) throw new RangeError('a line without points has no level');
  let before = first;
  for (const point of line) {
    if (point[0] >= station) {
      if (point[0] === before[0]) return point[1];
      const share = (station - before[0]) / (point[0] - before[0]);
      return before[1] + share * (point[1] - before[1]);
    }
    before = point;
  }
  return before[1];
}

/** The piece of the line between two stations, with its ends cut exactly. */
export function clipLine(line: readonly Point[], from: number, to: number): Point[] {
  const inside = line.filter(([x]) => x > from && x < to);
  return [[from, levelAt(line, from)], ...inside, [to, levelAt(line, to)]];
}
