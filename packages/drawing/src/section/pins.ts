import type { DisplayList, Pin, Point } from '../display.ts';
import { drawnX } from './cuts.ts';
import type { Frame } from './frame.ts';
import type { Scene } from './scene.ts';

/** Photos at their point of the section, else at their part; none for what the window leaves out. */
export function pinsOf({ options, pen, frame }: Scene): Pin[] {
  return options.pins.flatMap(({ id, part, point }): Pin[] => {
    const at: Point | null = point === null ? (part === null ? null : pen.anchorOf(part)) : [point.station, point.level];
    return at === null || at[0] > frame.to ? [] : [{ id, at: pen.onSheet(at) }];
  });
}

export function stationsOf({ map, extent, from, to }: Frame): Point[] {
  const ends = [from, ...map.cuts.flatMap((cut) => [cut.from, cut.to]), to].map((station): Point => [drawnX(map, station), station]);
  const [first, last] = [ends[0] ?? [extent.x0, extent.x0], ends.at(-1) ?? [extent.x1, extent.x1]];
  // Beside both ends the drawing goes on at its true scale.
  return [[extent.x0, first[1] - (first[0] - extent.x0)], ...ends, [extent.x1, last[1] + (extent.x1 - last[0])]];
}

/** The true station at a drawn x [m]. */
export function stationAt({ stations = [] }: Pick<DisplayList, 'stations'>, x: number): number {
  const after = Math.max(1, stations.findIndex(([drawn], at) => at > 0 && drawn >= x));
  const [a, b] = [stations[after - 1], stations[after]];
  if (a === undefined || b === undefined) return x;
  return b[0] === a[0] ? b[1] : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
}
