import type { LowSpot } from '../document/document.ts';

/**
 * Water held in a low spot below a level, from surveyed levels and areas.
 * Between two levels the hollow is a frustum: V = h/3 (A1 + A2 + sqrt(A1 A2)), the square root of the area growing evenly.
 * Above the highest level given the area stays as it is.
 *
 * @param lowSpot stage-area pairs [m, m2]
 * @param level   water level [m]
 * @returns volume [m3]
 * Source: geometry of the frustum, as used for excavations and ponds in surveying manuals
 */
export function pondVolume(lowSpot: LowSpot, level: number): number {
  const stages = lowSpot.stageArea;
  let volume = 0;
  for (let i = 1; i < stages.length; i += 1) {
    const low = stages[i - 1]!;
    const high = stages[i]!;
    if (level <= low.level) return volume;
    const rootLow = Math.sqrt(low.area);
    const full = high.level - low.level;
    const height = Math.min(level, high.level) - low.level;
    const rootHigh = rootLow + ((Math.sqrt(high.area) - rootLow) * height) / full;
    volume += (height / 3) * (low.area + rootHigh * rootHigh + rootLow * rootHigh);
  }
  const last = stages[stages.length - 1]!;
  return level > last.level ? volume + (level - last.level) * last.area : volume;
}

export function lowestPoint(lowSpot: LowSpot): number {
  return lowSpot.stageArea[0]!.level;
}

/**
 * Coefficient of the weir over the rim, q = C L h^1.5: 3.0 in ft^0.5/s, so 3.0 sqrt(0.3048) in m^0.5/s.
 * Source: broad-crested weir form of FHWA HEC-22; the value 3.0 is common practice for a yard's rim.
 */
export const rimWeirCoefficient = 3.0 * Math.sqrt(0.3048);

/** Flow over the rim of a low spot [m3/s] at a water level [m]. */
export function spillFlow(level: number, rimLevel: number, width: number): number {
  const head = level - rimLevel;
  return head > 0 ? rimWeirCoefficient * width * head * Math.sqrt(head) : 0;
}
