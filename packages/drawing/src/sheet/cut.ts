import type { DisplayList, Extent, Item, Point } from '../display.ts';

/** The part of a drawing between two drawn x, for one of several sheets; everything keeps its place in metres. */
export function cutAlong(display: DisplayList, from: number, to: number, extent: Extent): DisplayList {
  const last = to >= display.extent.x1;
  const holds = ([x]: Point): boolean => x >= from && (x < to || (last && x <= to));
  const items = display.items.flatMap((item): Item[] => {
    if (item.kind === 'text' || item.kind === 'mark') return holds(item.at) ? [item] : [];
    if (item.kind === 'line') return pieces(item.points, from, to).map((points) => ({ ...item, points }));
    const points = clipped(clipped(item.points, from, 1), to, -1);
    return points.length < 3 ? [] : [{ ...item, points }];
  });
  return { ...display, extent, items, hits: [], handles: [] };
}

const crossing = (a: Point, b: Point, x: number): Point => [x, a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];

/** The pieces of a line between two x; a line that leaves and comes back makes two. */
function pieces(points: readonly Point[], from: number, to: number): Point[][] {
  const result: Point[][] = [];
  let piece: Point[] = [];
  const close = (): void => {
    if (piece.length > 1) result.push(piece);
    piece = [];
  };
  const inside = ([x]: Point): boolean => x >= from && x <= to;
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before !== undefined) {
      const limits = before[0] < point[0] ? [from, to] : [to, from];
      for (const limit of limits) {
        if ((before[0] - limit) * (point[0] - limit) >= 0) continue;
        piece.push(crossing(before, point, limit));
        if (piece.length > 1 && !inside(point)) close();
      }
    }
    if (inside(point)) piece.push(point);
    else close();
  });
  close();
  return result;
}

/** A shape on one side of an upright line: `side` 1 keeps what is right of it. */
function clipped(points: readonly Point[], x: number, side: 1 | -1): Point[] {
  const holds = (point: Point): boolean => (point[0] - x) * side >= 0;
  return points.flatMap((point, index): Point[] => {
    const before = points.at(index - 1) ?? point;
    const cross = holds(before) === holds(point) ? [] : [crossing(before, point, x)];
    return holds(point) ? [...cross, point] : cross;
  });
}
