import type { Extent, Point } from '../display.ts';

/** Between drawing units and pixels; y grows upward in the drawing and downward on screen. */
export interface Projection {
  readonly width: number;
  readonly height: number;
  toPixels(point: Point): Point;
  toDrawing(point: Point): Point;
}

export function projection(extent: Extent, width: number, height: number): Projection {
  const sx = width / (extent.x1 - extent.x0);
  const sy = height / (extent.y1 - extent.y0);
  return {
    width,
    height,
    toPixels: ([x, y]) => [(x - extent.x0) * sx, (extent.y1 - y) * sy],
    toDrawing: ([px, py]) => [extent.x0 + px / sx, extent.y1 - py / sy],
  };
}

/** Pixels are written to a tenth: finer is not seen, and the file stays small. */
export const px = (value: number): number => {
  const rounded = Math.round(value * 10) / 10;
  return rounded === 0 ? 0 : rounded;
};

export const pathOf = (points: readonly Point[], closed: boolean): string =>
  points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('') + (closed ? 'Z' : '');
