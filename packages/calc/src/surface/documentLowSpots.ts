import type { LowSpot } from '../document/document.ts';
import type { Drainage, GroundLowSpot } from './lowSpots.ts';
import { stageAreaOf } from './stageTable.ts';
import type { Ground, Position, Spot } from './surface.ts';

/** What the ground tells of a low spot of a design document. */
export interface SurveyedLowSpot extends Pick<LowSpot, 'stageArea' | 'rimLevel'> {
  /** The low spot of the ground, in Drainage.lowSpots. */
  readonly index: number;
  /** The index that receives what escapes over the rim; null when it leaves the ground, or walls hold it. */
  readonly spillsTo: number | null;
  readonly bottom: Spot;
  readonly spillPoint: Position | null;
  /** The simple low spots within it: below their common rim their ponds are apart, and the table holds their sum. */
  readonly within: readonly number[];
}

function outermost(lowSpots: readonly GroundLowSpot[], index: number): number {
  let at = index;
  for (let parent = lowSpots[at]!.parent; parent !== null; parent = lowSpots[at]!.parent) at = parent;
  return at;
}

function simpleWithin(lowSpots: readonly GroundLowSpot[], index: number): number[] {
  const { children } = lowSpots[index]!;
  return children.length === 0 ? [index] : children.flatMap((child) => simpleWithin(lowSpots, child));
}

/**
 * The low spots of the ground as a design document takes them. Low spots that spill into each other are one, the
 * outermost, so that what spills never comes back.
 *
 * @param drainage from findLowSpots for the same ground
 * @param most rows of a stage-area table, at most
 * @returns levels [m], areas [m2]; where walls hold all the water the rim is the highest ground known. Level hollows
 * without depth are left out. Width of the spill, losses and stations are not of the ground and stay with the document.
 * Errors: surface.tooFewRows
 * Source: see findLowSpots and stageAreaOf
 */
export function documentLowSpots(ground: Ground, drainage: Drainage, most = 200): SurveyedLowSpot[] {
  const { lowSpots } = drainage;
  const deep = lowSpots.filter((spot) => spot.parent === null && spot.volume > 0 && spot.topLevel - spot.bottom.level > 1e-6);
  const named = new Set(deep.map(({ index }) => index));
  return deep.map((spot) => {
    const goal = spot.spillsTo === null ? null : outermost(lowSpots, spot.spillsTo);
    return {
      index: spot.index, bottom: spot.bottom, spillPoint: spot.spillPoint, rimLevel: spot.topLevel, stageArea: stageAreaOf(ground, spot, most),
      spillsTo: goal !== null && named.has(goal) ? goal : null, within: simpleWithin(lowSpots, spot.index),
    };
  });
}
