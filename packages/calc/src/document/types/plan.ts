// The plan of the site: outlines, runs and places drawn over a picture or by typed dimensions. Metres, x to the right, y upwards.
import type { Position } from './site.ts';

/**
 * What is drawn on the plan. It computes nothing by itself: lengths and areas go from here into the catchments and parts
 * that a shape is tied to, as edits of the same document.
 */
export interface Plan {
  /** Picture that the plan is traced over; null when it is drawn by typed dimensions. */
  readonly picture: PlanPicture | null;
  /** Direction of north, clockwise from straight up [degrees], 0 to 360; null when it was not noted. */
  readonly north: number | null;
  readonly shapes: readonly PlanShape[];
}

/** A photo or site plan. Its lower left corner is the origin of the plan; `tie` says how long something in it really is. */
export interface PlanPicture {
  /** Id of the photo. */
  readonly photo: string;
  /** Size [pixels]. */
  readonly width: number;
  readonly height: number;
  /** Two places of the picture [pixels, from the upper left corner] and the true length between them [m]; null until it was given. */
  readonly tie: { readonly from: Position; readonly to: Position; readonly length: number } | null;
}

/** What an outline encloses. */
export const planAreaUses = ['house', 'roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour', 'septic', 'lot'] as const;
/** What runs along a line. */
export const planLineUses = ['wall', 'gutter', 'pipe', 'drain', 'utility', 'measure'] as const;
/** What stands at a place. */
export const planPlaceUses = ['sill', 'part', 'tree'] as const;

export type PlanUse = (typeof planAreaUses)[number] | (typeof planLineUses)[number] | (typeof planPlaceUses)[number];

export interface PlanShape {
  readonly id: string;
  readonly name: string;
  /** area: closed outline, the last place joins the first. line: a run from place to place. place: a single point. */
  readonly kind: 'area' | 'line' | 'place';
  readonly use: PlanUse;
  readonly points: readonly Position[];
  /** What it draws: id of a catchment, part, sill or utility; null when it stands for itself. */
  readonly of: string | null;
}
