import type { DisplayList, Item, LineItem, MarkItem, Point, PolygonItem, TextItem } from '../display.ts';

export function pointsOf(item: Item): readonly Point[] {
  return item.kind === 'line' || item.kind === 'polygon' ? item.points : [item.at];
}

export function texts(list: DisplayList, code: string): TextItem[] {
  return list.items.filter((item): item is TextItem => item.kind === 'text' && item.label.code === code);
}

export const marks = (list: DisplayList, mark: string): MarkItem[] =>
  list.items.filter((item): item is MarkItem => item.kind === 'mark' && item.mark === mark);

export const polygons = (list: DisplayList, part: string | null): PolygonItem[] =>
  list.items.filter((item): item is PolygonItem => item.kind === 'polygon' && item.part === part);

export const lines = (list: DisplayList, part: string | null): LineItem[] =>
  list.items.filter((item): item is LineItem => item.kind === 'line' && item.part === part);

export function only<T>(list: readonly T[]): T {
  const [first] = list;
  if (first === undefined || list.length !== 1) throw new Error(`expected one, found ${list.length}`);
  return first;
}

export function outside(list: DisplayList): Item[] {
  const { x0, x1, y0, y1 } = list.extent;
  const slack = 1e-9 * Math.max(Math.abs(x0), Math.abs(x1), Math.abs(y1), 1);
  return list.items.filter((item) => pointsOf(item).some(([x, y]) => !(x >= x0 - slack && x <= x1 + slack && y >= y0 - slack && y <= y1 + slack)));
}
