import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';
import { PI } from '../math/constants.ts';

export interface TaperedBasin {
  readonly bottomDiameter: number;
  readonly topDiameter: number;
  readonly height: number;
}

const STRAIGHT = 1e-9;

function requireBasin(basin: TaperedBasin): void {
  requirePositive({ bottomDiameter: basin.bottomDiameter, topDiameter: basin.topDiameter, height: basin.height });
}

/**
 * Water in a molded basin that widens or narrows evenly.
 *
 *   V = pi/12 * h * (d0^2 + d0*d + d^2);  d = d0 + (d1 - d0)*h/H
 *
 * @param basin inside diameters at floor and top, height [m]
 * @param level h over the floor [m], 0 to H
 * @returns V [m3]
 * Limits: smooth walls; ribs take some percent, so use marks for the proof; throws basin.overTop above the top
 * Source: volume of a frustum, geometry
 * Checked against: basinArea for straight walls, 1e-12; the whole frustum by hand
 */
export function taperedVolume(basin: TaperedBasin, level: number): number {
  requireBasin(basin);
  requireNotNegative({ level });
  if (level > basin.height) throw new CalcProblem('basin.overTop', 'level', { level, height: basin.height });
  const d0 = basin.bottomDiameter;
  const d = d0 + ((basin.topDiameter - d0) * level) / basin.height;
  return (PI / 12) * level * (d0 * d0 + d0 * d + d * d);
}

/** Level at which a volume stands [m]; same limits and source, turned round. */
export function taperedLevel(basin: TaperedBasin, volume: number): number {
  requireBasin(basin);
  requireNotNegative({ volume });
  const most = taperedVolume(basin, basin.height);
  if (volume > most) throw new CalcProblem('basin.overTop', 'volume', { volume, most });
  const d0 = basin.bottomDiameter;
  const taper = (basin.topDiameter - d0) / basin.height;
  if (Math.abs(taper) < STRAIGHT) return volume / ((PI / 4) * d0 * d0);
  return (cbrt(d0 * d0 * d0 + (12 * taper * volume) / PI) - d0) / taper;
}
