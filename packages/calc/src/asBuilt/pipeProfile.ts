import { requirePositive } from '../common/require.ts';
import { fullPipe } from '../pipe/manning.ts';
import { leastMoves } from './leastMoves.ts';
import { requireShots } from './requireShots.ts';

/** One invert shot in the open trench: `at` along the pipe from its upper end, `level` of the invert [m]. */
export interface PipeShot {
  readonly at: number;
  readonly level: number;
}

/** falls: at least as steep as asked; slack: falls, but less; flat: not at all; back: climbs. */
export type SegmentKind = 'falls' | 'slack' | 'flat' | 'back';

export interface BuiltSegment {
  readonly from: number;
  readonly to: number;
  /** Fall from its upper to its lower end [m], negative where it climbs. */
  readonly fall: number;
  readonly slope: number;
  readonly kind: SegmentKind;
}

/** A place from which water does not run off by itself. */
export interface Belly {
  /** Where it is deepest, and its depth there [m]. */
  readonly at: number;
  readonly depth: number;
  /** The hump that holds it. */
  readonly until: number;
}

/** What brings the pipe to a fall that is enough everywhere: a place and how far it is raised, negative for lowered [m]. */
export interface Correction {
  readonly shot: number;
  readonly at: number;
  readonly raise: number;
}

export interface BuiltProfile {
  readonly segments: readonly BuiltSegment[];
  readonly bellies: readonly Belly[];
  readonly corrections: readonly Correction[];
  /** Fall per length that decides what the pipe carries before it backs up; 0 or less where a hump is as high as its upper end. */
  readonly governingSlope: number;
  /** What it carries just full [m3/s]; 0 where nothing runs before it backs up. */
  readonly fullFlow: number;
}

/** Shots that differ by less than this are the same level [m]; a rod is read to 1.5 mm at best. */
const same = 1e-6;

/**
 * What the inverts of a laid pipe show: segments, bellies, what to move, and what it carries.
 *
 * Running just full, the line of pressure leaves the crown at the upper end and must pass every crown below it, so that
 * the least of (z0 - zi)/xi over the shots decides: the end for a pipe that sags or falls evenly, a hump for one that climbs.
 *
 * @param shots    at [m], rising; level [m]; two or more
 * @param diameter [m]
 * @param roughness Manning n
 * @param least    fall per length that is asked for [-], > 0
 * @throws CalcProblem for fewer than two shots or distances that do not rise
 * Limits: one size from end to end; entrance and bends are not counted
 * Source: Manning full flow with the line of pressure over the crowns (FHWA HEC-22, hydraulic grade line)
 * Checked against: asBuilt.test.ts: even pipes equal fullPipe; worked by hand for a belly and a hump
 */
export function builtProfile(shots: readonly PipeShot[], diameter: number, roughness: number, least: number): BuiltProfile {
  requireShots(shots);
  requirePositive({ diameter, roughness, least });
  const segments = shots.slice(1).map((shot, i) => segmentOf(shots[i]!, shot, least));
  const governingSlope = governing(shots);
  const moved = leastMoves(shots.map(({ at }) => at), shots.map(({ level }) => level), least);
  return {
    segments, governingSlope,
    bellies: belliesOf(shots),
    corrections: shots.flatMap(({ at, level }, shot) => (Math.abs(moved[shot]! - level) > same ? [{ shot, at, raise: moved[shot]! - level }] : [])),
    fullFlow: governingSlope > 0 ? fullPipe({ diameter, slope: governingSlope, roughness }).flow : 0,
  };
}

function segmentOf(upper: PipeShot, lower: PipeShot, least: number): BuiltSegment {
  const fall = upper.level - lower.level;
  const slope = fall / (lower.at - upper.at);
  const kind = fall < -same ? 'back' : fall <= same ? 'flat' : slope < least - 1e-9 ? 'slack' : 'falls';
  return { from: upper.at, to: lower.at, fall, slope, kind };
}

function governing([first, ...rest]: readonly PipeShot[]): number {
  return Math.min(...rest.map(({ at, level }) => (first!.level - level) / (at - first!.at)));
}

function belliesOf(shots: readonly PipeShot[]): Belly[] {
  const found: Belly[] = [];
  let hump = shots.length - 1;
  for (let i = shots.length - 2; i >= 0; i -= 1) {
    const depth = shots[hump]!.level - shots[i]!.level;
    if (depth <= same) {
      hump = i;
      continue;
    }
    const last = found[0];
    const until = shots[hump]!.at;
    if (last === undefined || last.until !== until) found.unshift({ at: shots[i]!.at, depth, until });
    else if (depth > last.depth - same) found[0] = { at: shots[i]!.at, depth, until };
  }
  return found;
}
