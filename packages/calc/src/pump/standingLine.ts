import { at, requireFinite, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';
import { highestUpTo, requireProfile, type LinePoint } from './lineProfile.ts';

export interface StandingLine {
  /** Water that runs back to the basin when the pump stops, that leaves at the outlet, and that stays [m3]. */
  readonly runBack: number;
  readonly runOut: number;
  readonly standing: number;
  /** Length of pipe that stands full less deep than the frost reaches [m]; 0 without a frost depth. */
  readonly exposed: number;
}

interface Piece {
  readonly from: LinePoint;
  readonly to: LinePoint;
}

function piecesOf(points: readonly LinePoint[]): Piece[] {
  const pieces: Piece[] = [];
  for (let i = 1; i < points.length; i += 1) pieces.push({ from: at(points, i - 1), to: at(points, i) });
  return pieces;
}

/** Highest level of the pipe from a point to the outlet. */
function highestFrom(points: readonly LinePoint[], x: number): number {
  let high = -Infinity;
  for (const point of points) if (point.x >= x) high = Math.max(high, point.level);
  return high;
}

/** Length of a piece that lies below a level. */
function lengthBelow({ from, to }: Piece, level: number): number {
  const low = Math.min(from.level, to.level);
  const high = Math.max(from.level, to.level);
  if (level <= low) return 0;
  if (level >= high) return to.x - from.x;
  return ((to.x - from.x) * (level - low)) / (high - low);
}

/**
 * What a discharge line does when the pump stops: every low stretch between two higher points keeps its water,
 * the rest runs to the side that is lower than the highest point.
 *
 * @param points of the line from the pump to the outlet [m]
 * @param innerDiameter [m], > 0
 * @param checkValve holds the water on the pump's side of the highest point
 * @param frostLevel level to which the ground freezes [m]; null where it does not
 * @returns volumes [m3] and the full length above the frost level [m]
 * Limits: air gets in at the outlet; a line that rises all the way runs back whole, one that is flat keeps nothing but its sags
 * Source: geometry; ours
 * Checked against: lines.test.ts, profiles worked by hand; volumes add up to the line's
 */
export function standingLine(points: readonly LinePoint[], innerDiameter: number, checkValve: boolean, frostLevel: number | null): StandingLine {
  requireProfile(points);
  requirePositive({ innerDiameter });
  const area = (PI / 4) * innerDiameter * innerDiameter;
  requireFinite({ area });
  const top = points.reduce((high, point) => (point.level > high.level ? point : high));
  let [back, out, standing, exposed] = [0, 0, 0, 0];
  for (const piece of piecesOf(points)) {
    const length = piece.to.x - piece.from.x;
    const pumpSide = piece.to.x <= top.x;
    const surface = Math.min(highestUpTo(points, piece.from.x), highestFrom(points, piece.to.x));
    const kept = pumpSide && checkValve ? length : lengthBelow(piece, surface);
    standing += kept;
    if (pumpSide) back += length - kept;
    else out += length - kept;
    if (frostLevel !== null) exposed += Math.max(0, kept - lengthBelow(piece, frostLevel));
  }
  return { runBack: back * area, runOut: out * area, standing: standing * area, exposed };
}
