import type { Plan, Position, Site } from '@yardfall/calc';
import type { Extent, Point } from '../display.ts';

/** Least width and height of what a plan shows [m]: a yard, not a tile. */
const leastSpan = 6;
/** Room around everything drawn, as a share of it. */
const margin = 0.06;

/** Meters for one pixel of the picture; null while its length is not tied. */
export function pictureScale({ tie }: NonNullable<Plan['picture']>): number | null {
  return tie === null ? null : tie.length / Math.hypot(tie.to.x - tie.from.x, tie.to.y - tie.from.y);
}

/** Width at which a picture without a known length lies on the sheet [m], only so that it has a size there. */
const untiedWidth = 20;

/** Meters for one pixel of the picture as it lies on the sheet. */
export function shownScale(picture: NonNullable<Plan['picture']>): number {
  return pictureScale(picture) ?? untiedWidth / picture.width;
}

/** A place on the plan [m] as a place on the picture [pixels, from its upper left corner]. */
export function toPicture(picture: NonNullable<Plan['picture']>, scale: number, at: Position): Position {
  return { x: at.x / scale, y: picture.height - at.y / scale };
}

/** A place on the picture [pixels, from its upper left corner] as a place on the plan [m]. */
export function fromPicture(picture: NonNullable<Plan['picture']>, scale: number, at: Position): Position {
  return { x: at.x * scale, y: (picture.height - at.y) * scale };
}

/** Everything that the plan has a place for: shapes, spot levels, the picture. */
export function places(site: Pick<Site, 'plan' | 'spotLevels' | 'walls' | 'breaklines'>): Point[] {
  const drawn = [...(site.plan?.shapes ?? []), ...site.walls, ...site.breaklines].flatMap(({ points }) => points.map(({ x, y }): Point => [x, y]));
  const spots = site.spotLevels.flatMap(({ position }): Point[] => (position === null ? [] : [[position.x, position.y]]));
  const picture = site.plan?.picture ?? null;
  const corners: Point[] = picture === null ? [] : [[0, 0], [picture.width * shownScale(picture), picture.height * shownScale(picture)]];
  return [...drawn, ...spots, ...corners];
}

/** The stretch of ground that a picture of this size shows, at one scale in both directions, everything in it. */
export function planExtent(site: Pick<Site, 'plan' | 'spotLevels' | 'walls' | 'breaklines'>, width: number, height: number): Extent {
  const all = places(site);
  const xs = all.length === 0 ? [0] : all.map(([x]) => x);
  const ys = all.length === 0 ? [0] : all.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const wide = Math.max(x1 - x0, leastSpan) * (1 + 2 * margin);
  const high = Math.max(y1 - y0, leastSpan) * (1 + 2 * margin);
  const perPixel = Math.max(wide / Math.max(width, 1), high / Math.max(height, 1));
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2];
  const [halfWide, halfHigh] = [(perPixel * Math.max(width, 1)) / 2, (perPixel * Math.max(height, 1)) / 2];
  return { x0: cx - halfWide, x1: cx + halfWide, y0: cy - halfHigh, y1: cy + halfHigh };
}

/** The extent nearer (above 1) or farther about a place that stays where it is. */
export function zoomed(extent: Extent, times: number, about: Position): Extent {
  const near = (value: number, center: number): number => center + (value - center) / times;
  return { x0: near(extent.x0, about.x), x1: near(extent.x1, about.x), y0: near(extent.y0, about.y), y1: near(extent.y1, about.y) };
}

export function moved(extent: Extent, by: Position): Extent {
  return { x0: extent.x0 + by.x, x1: extent.x1 + by.x, y0: extent.y0 + by.y, y1: extent.y1 + by.y };
}
