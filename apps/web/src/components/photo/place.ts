import type { SectionPoint } from '@yardfall/contracts';
import type { section, SectionOptions, stationAt } from '@yardfall/drawing';
import type { PhotoNow } from '../../lib/photosNow.ts';

type DisplayList = ReturnType<typeof section>;
type Point = readonly [x: number, y: number];

/** To the millimetre: finer is not touched. */
const fine = (metres: number): number => Math.round(metres * 1000) / 1000;

/** The point of the section that stands at a place of its drawing, and the smallest part that lies under it. */
export function pointAt(display: Pick<DisplayList, 'extent' | 'hits' | 'stations'>, [x, y]: Point, station: typeof stationAt): { readonly point: SectionPoint; readonly part: string | null } {
  const { x0, x1, y0, y1 } = display.extent;
  const at: Point = [Math.min(x1, Math.max(x0, x)), Math.min(y1, Math.max(y0, y))];
  const under = display.hits.filter(({ points }) => isInside(points, at)).toSorted((a, b) => spread(a.points) - spread(b.points));
  return { point: { station: fine(station(display, at[0])), level: fine(at[1]) }, part: under[0]?.part ?? null };
}

/** By the number of sides that a ray to the right crosses. */
export function isInside(points: readonly Point[], [x, y]: Point): boolean {
  return points.reduce((inside, [ax, ay], at) => {
    const [bx, by] = points[(at + 1) % points.length] ?? [ax, ay];
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !inside : inside;
  }, false);
}

function spread(points: readonly Point[]): number {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
}

/** What a section needs of photos to place them. */
export function pinsOf(photos: readonly PhotoNow[]): SectionOptions['pins'] {
  return photos.filter(({ point, part }) => point !== null || part !== null).map(({ id, part, point }) => ({ id, part, point }));
}

/** Pins that a thumb could not tell apart stand together, under the first of them. */
export function gathered<P extends { readonly x: number }>(pins: readonly P[], apart: number): readonly (readonly P[])[] {
  return [...pins].sort((a, b) => a.x - b.x).reduce<(readonly P[])[]>((groups, pin) => {
    const last = groups.at(-1);
    const [first] = last ?? [];
    if (last === undefined || first === undefined || pin.x - first.x >= apart) return [...groups, [pin]];
    return [...groups.slice(0, -1), [...last, pin]];
  }, []);
}
