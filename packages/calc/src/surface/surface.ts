import type { Position } from '../document/document.ts';

export type { Position };

/** A surveyed spot of the ground [m]. */
export interface SurveyPoint { readonly id: string; readonly x: number; readonly y: number; readonly level: number }

/** A line along which the ground bends (top or toe of a bank, gutter line, edge of a slab), with its levels [m]. */
export interface SurveyBreakline { readonly id: string; readonly points: readonly { readonly x: number; readonly y: number; readonly level: number }[] }

/** A line that water does not cross. Where a vertex gives no level, the ground on each side of it has its own. */
export interface SurveyWall { readonly id: string; readonly points: readonly { readonly x: number; readonly y: number; readonly level?: number | undefined }[] }

export interface SurfaceInput {
  readonly points: readonly SurveyPoint[];
  readonly breaklines?: readonly SurveyBreakline[] | undefined;
  readonly walls?: readonly SurveyWall[] | undefined;
  /** Ring within which the ground counts; without it the hull of all points. Water leaves freely over it. */
  readonly boundary?: readonly { readonly x: number; readonly y: number }[] | undefined;
}

/** A place with its level [m]. */
export interface Spot extends Position { readonly level: number }

/** Twin of a half-edge at the edge of the surveyed ground: water leaves over it. */
export const OPEN_EDGE = -1;
/** Twin of a half-edge along a wall: water does not cross it. */
export const WALL_EDGE = -2;

/** Kinds of line that the triangulation keeps; a bit each. */
export const BREAKLINE = 1;
export const WALL = 2;
export const BOUNDARY = 4;

/**
 * The ground as triangles. A wall is a cut: on each side of it stand vertices of their own, so that nothing that
 * walks over the mesh can cross it. Half-edge e runs from vertex triangles[e] to the next corner of triangle floor(e/3),
 * counter-clockwise with y upwards.
 */
export interface Ground {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly level: readonly number[];
  /** Id of the surveyed spot at a vertex; null for the vertices of lines. */
  readonly pointId: readonly (string | null)[];
  readonly triangles: readonly number[];
  /** The half-edge on the other side, or OPEN_EDGE, or WALL_EDGE. */
  readonly twins: readonly number[];
  /** Which lines run along a half-edge: BREAKLINE, WALL, BOUNDARY added up, 0 for none. */
  readonly lines: readonly number[];
}

/** The half-edge after this one in its triangle. */
export const nextOf = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);
/** The half-edge before this one in its triangle. */
export const previousOf = (e: number): number => (e % 3 === 0 ? e + 2 : e - 1);

/** Limits of a survey [m]; ours. */
export const SURFACE_LIMITS = {
  /** Points and line vertices together. */
  mostPoints: 5000,
  /** Two places nearer than this are one place, and a place nearer than this to a line lies on it. */
  samePlace: 1e-4,
  /** Two levels at one place that differ by less are one level. */
  sameLevel: 1e-6,
  /** A measured place this near to a wall (1 ft) was taken at its foot, */
  wallReach: 0.3048,
  /** unless another place of the wall is this near to its foot. */
  footSpacing: 0.02,
  /** Largest coordinate and level. */
  farthest: 1e7,
} as const;
