import { SHARP_RIM_WEIR } from '../inlet/weir.ts';
import type { PondStore } from '../routing/model.ts';

/** Volumes this close are one cell of the storage table [m3]. */
const sameCell = 1e-12;

/**
 * Volume left after a time of spilling over the rim, with no other way in or out and a constant area.
 *
 *   A dh/dt = -C L h^1.5;  h(t) = h0 / (1 + C L sqrt(h0) t / (2 A))^2
 *
 * @param volume above the rim volume [m3]
 * @param time [s]
 * @returns volume [m3]; null while the level lies in another cell of the storage table than the rim, where the area is another
 * Source: integral of the weir form of FHWA HEC-22 over a store of constant area
 * Checked against: the same in one-second steps
 */
export function spilledDown(pond: PondStore, volume: number, time: number): number | null {
  const { storage, rimLevel, spillWidth } = pond;
  const rimVolume = storage.volume(rimLevel);
  const area = storage.area(rimLevel);
  const head = storage.level(volume) - rimLevel;
  if (head < 0 || Math.abs(rimVolume + area * head - volume) > sameCell) return null;
  const slower = 1 + (SHARP_RIM_WEIR * spillWidth * Math.sqrt(head) * time) / (2 * area);
  return rimVolume + (area * head) / (slower * slower);
}
