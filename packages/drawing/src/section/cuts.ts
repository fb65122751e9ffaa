import type { Point } from '../display.ts';

/** A stretch [from, to] of true stations that is left out of the picture; `gap` is the drawn width of the break. */
export interface Cut {
  readonly from: number;
  readonly to: number;
}

export interface StationMap {
  readonly cuts: readonly Cut[];
  readonly gap: number;
}

export const noCuts: StationMap = { cuts: [], gap: 0 };

/** Drawn x of a true station: true scale outside the breaks, a narrow gap inside. */
export function drawnX(map: StationMap, station: number): number {
  let removed = 0;
  for (const cut of map.cuts) {
    if (station >= cut.to) removed += cut.to - cut.from - map.gap;
    else if (station > cut.from) {
      return cut.from - removed + ((station - cut.from) / (cut.to - cut.from)) * map.gap;
    }
  }
  return station - removed;
}

/** Whether a true station lies in a stretch that is not drawn. */
export function isCut(map: StationMap, station: number): boolean {
  return map.cuts.some((cut) => station > cut.from && station < cut.to);
}

/** Puts a vertex at both ends of each break, so that slopes stay true on either side. */
export function mapLine(map: StationMap, points: readonly Point[]): Point[] {
  const result: Point[] = [];
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before !== undefined) result.push(...crossings(map, before, point));
    if (!isCut(map, point[0])) result.push([drawnX(map, point[0]), point[1]]);
  });
  return result;
}

function crossings(map: StationMap, a: Point, b: Point): Point[] {
  const ends = map.cuts.flatMap((cut) => [cut.from, cut.to]);
  const low = Math.min(a[0], b[0]);
  const high = Math.max(a[0], b[0]);
  const between = ends.filter((station) => station > low && station < high);
  if (b[0] < a[0]) between.reverse();
  return between.map((station) => {
    const share = (station - a[0]) / (b[0] - a[0]);
    return [drawnX(map, station), a[1] + share * (b[1] - a[1])];
  });
}
