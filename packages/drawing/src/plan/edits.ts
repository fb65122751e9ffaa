import type { Plan, PlanShape, Position, SpotLevel } from '@yardfall/calc';

type At = Position;

const withPoints = (shape: PlanShape, points: readonly At[]): PlanShape => ({ ...shape, points });
const leastPoints: Readonly<Record<PlanShape['kind'], number>> = { area: 3, line: 2, place: 1 };

/** One corner of a shape elsewhere. */
export function movePoint(shape: PlanShape, index: number, to: At): PlanShape {
  return withPoints(shape, shape.points.map((point, i) => (i === index ? to : point)));
}

/** A new corner on the side after corner `index`. */
export function addPoint(shape: PlanShape, index: number, at: At): PlanShape {
  return shape.kind === 'place' ? shape : withPoints(shape, [...shape.points.slice(0, index + 1), at, ...shape.points.slice(index + 1)]);
}

/** Without a corner; null when too few would be left to be a shape. */
export function removePoint(shape: PlanShape, index: number): PlanShape | null {
  return shape.points.length <= leastPoints[shape.kind] ? null : withPoints(shape, shape.points.filter((_, i) => i !== index));
}

export function moveShape(shape: PlanShape, by: At): PlanShape {
  return withPoints(shape, shape.points.map(({ x, y }) => ({ x: x + by.x, y: y + by.y })));
}

/** The place that lies `length` from a corner in the direction of another place; to the right when that is the same place. */
export function placeAt(from: At, toward: At, length: number): At {
  const long = Math.hypot(toward.x - from.x, toward.y - from.y);
  return long === 0 ? { x: from.x + length, y: from.y } : { x: from.x + ((toward.x - from.x) / long) * length, y: from.y + ((toward.y - from.y) / long) * length };
}

/** The place `length` from another in a direction, counted clockwise from straight up [degrees]. */
export function placeTowards(from: At, length: number, direction: number): At {
  const angle = (direction * Math.PI) / 180;
  return { x: from.x + length * Math.sin(angle), y: from.y + length * Math.cos(angle) };
}

/**
 * The side after corner `index` at a typed length. A line keeps its direction and takes what follows along;
 * in an outline of four square corners the opposite side goes along, so that it stays square; in any other only the next corner moves.
 */
export function setSide(shape: PlanShape, index: number, length: number): PlanShape {
  if (!(length > 0) || !Number.isFinite(length)) throw new RangeError(`a side must have a length, not ${length}`);
  const count = shape.points.length;
  const from = shape.points[index];
  const next = shape.points[(index + 1) % count];
  if (from === undefined || next === undefined || shape.kind === 'place') throw new RangeError(`the shape has no side ${index}`);
  const to = placeAt(from, next, length);
  const by = { x: to.x - next.x, y: to.y - next.y };
  const follows = (i: number): boolean => {
    if (shape.kind === 'line') return i > index;
    return i === (index + 1) % count || (isSquare(shape) && i === (index + 2) % count);
  };
  return withPoints(shape, shape.points.map((point, i) => (follows(i) ? { x: point.x + by.x, y: point.y + by.y } : point)));
}

function isSquare({ points }: PlanShape): boolean {
  if (points.length !== 4) return false;
  return points.every((corner, i) => {
    const before = points[(i + 3) % 4] ?? corner;
    const after = points[(i + 1) % 4] ?? corner;
    const product = (before.x - corner.x) * (after.x - corner.x) + (before.y - corner.y) * (after.y - corner.y);
    return Math.abs(product) <= 1e-6 * Math.hypot(before.x - corner.x, before.y - corner.y) * Math.hypot(after.x - corner.x, after.y - corner.y);
  });
}

/** A rectangle by its typed width and height, from its lower left corner. */
export function rectangle(from: At, width: number, height: number): At[] {
  return [from, { x: from.x + width, y: from.y }, { x: from.x + width, y: from.y + height }, { x: from.x, y: from.y + height }];
}

export interface Snapped {
  readonly at: At;
  /** corner and side: of another shape. square: at a right angle or in line with the last place. */
  readonly to: 'corner' | 'side' | 'square' | 'nothing';
}

export interface SnapOptions {
  /** How near a place must be to be taken [m]. */
  readonly reach: number;
  /** Places of the shape that is being drawn; the new one may stand square to them. */
  readonly path?: readonly At[];
  /** A shape that is not looked at: the one that moves. */
  readonly without?: string | null;
}

/** Where a place goes that was meant to meet what is drawn: a corner first, then a side, then a right angle. */
export function snap(at: At, shapes: readonly PlanShape[], { reach, path = [], without = null }: SnapOptions): Snapped {
  const others = shapes.filter(({ id }) => id !== without);
  const corner = nearestWithin(at, [...others.flatMap(({ points }) => points), ...path.slice(0, 1)], reach);
  if (corner !== null) return { at: corner, to: 'corner' };
  const side = nearestWithin(at, others.flatMap((shape) => sidesOf(shape).map(([a, b]) => footOn(a, b, at))), reach);
  if (side !== null) return { at: side, to: 'side' };
  const square = squareTo(at, path, reach);
  return square === null ? { at, to: 'nothing' } : { at: square, to: 'square' };
}

function nearestWithin(at: At, candidates: readonly At[], reach: number): At | null {
  let best: At | null = null;
  let least = reach;
  for (const place of candidates) {
    const away = Math.hypot(place.x - at.x, place.y - at.y);
    if (away <= least) [best, least] = [place, away];
  }
  return best;
}

function sidesOf({ kind, points }: PlanShape): (readonly [At, At])[] {
  const sides = points.slice(1).map((point, i) => [points[i] ?? point, point] as const);
  const [first, last] = [points[0], points.at(-1)];
  return kind === 'area' && first !== undefined && last !== undefined ? [...sides, [last, first]] : sides;
}

function footOn(a: At, b: At, at: At): At {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const long = ux * ux + uy * uy;
  const share = long === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - a.x) * ux + (at.y - a.y) * uy) / long));
  return { x: a.x + share * ux, y: a.y + share * uy };
}

/** In line with the last side or square to it; to the frame of the sheet for the first side. */
function squareTo(at: At, path: readonly At[], reach: number): At | null {
  const last = path.at(-1);
  if (last === undefined) return null;
  const before = path.at(-2);
  const direction = before === undefined ? { x: 1, y: 0 } : { x: last.x - before.x, y: last.y - before.y };
  const long = Math.hypot(direction.x, direction.y);
  if (long === 0) return null;
  const [ux, uy] = [direction.x / long, direction.y / long];
  const [dx, dy] = [at.x - last.x, at.y - last.y];
  const along = dx * ux + dy * uy;
  const across = dy * ux - dx * uy;
  if (Math.abs(across) <= reach && Math.abs(across) < Math.abs(along)) return { x: last.x + along * ux, y: last.y + along * uy };
  if (Math.abs(along) <= reach && Math.abs(along) < Math.abs(across)) return { x: last.x - across * uy, y: last.y + across * ux };
  return null;
}

/** Everything that was traced, when the known length of the picture is set right: what was drawn by it grows or shrinks with it. */
export function scalePlan(plan: Plan, spots: readonly SpotLevel[], times: number): { readonly shapes: PlanShape[]; readonly spots: SpotLevel[] } {
  const scaled = ({ x, y }: At): At => ({ x: x * times, y: y * times });
  return {
    shapes: plan.shapes.map((shape) => withPoints(shape, shape.points.map(scaled))),
    spots: spots.map((spot) => (spot.position === null ? spot : { ...spot, position: scaled(spot.position) })),
  };
}
