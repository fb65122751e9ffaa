import type { LowSpot } from '../document/document.ts';
import { SHARP_RIM_WEIR } from '../inlet/weir.ts';

export function lowestPoint(lowSpot: LowSpot): number {
  return lowSpot.stageArea[0]!.level;
}

/**
 * Flow over a rim [m3/s] at a water level [m]; the same as weirFlow, written out for the routing loop.
 * Source: weir form of FHWA HEC-22, 3.0 in US units, common practice
 */
export function spillFlow(level: number, rimLevel: number, width: number): number {
  const head = level - rimLevel;
  return head > 0 ? SHARP_RIM_WEIR * width * head * Math.sqrt(head) : 0;
}
