import type { Basin, DesignDocument, Part } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { channelVolume, pipeVolume } from './conduitStorage.ts';
import { reach } from './waterways.ts';

/**
 * Water in a basin below a level [m3]: between calibrated marks by straight lines, the last of them going on above,
 * from the floor to the first mark; a cylinder without marks.
 * Source: marks measured by bucket; geometry
 */
export function basinVolume(basin: Basin, level: number): number {
  const { marks, floorLevel, diameter } = basin;
  const depth = level - floorLevel;
  if (depth <= 0) return 0;
  if (marks.length < 2) return 0.25 * PI * diameter * diameter * depth;
  const points = [{ level: floorLevel, volume: 0 }, ...marks];
  let i = points.length - 2;
  while (points[i]!.level > level) i -= 1;
  const a = points[i]!;
  const b = points[i + 1]!;
  const volume = a.volume + ((b.volume - a.volume) * (level - a.level)) / (b.level - a.level);
  return Math.max(0, volume);
}

/** Pipes and channels that fill as the level of a store at their lower end rises: those whose path reaches it before any other store. */
export function conduitsInto(document: DesignDocument, storeId: string, junctions: readonly Part[]): Part[] {
  return document.system.parts.filter((part) => {
    if (part.kind !== 'pipe' && part.kind !== 'channel') return false;
    return reach(document, part.id, junctions, true).end?.id === storeId;
  });
}

/** Water in conduits below a level surface [m3]. */
export function conduitsVolume(parts: readonly Part[], level: number): number {
  let volume = 0;
  for (const part of parts) {
    if (part.kind === 'pipe') volume += pipeVolume(part, level);
    else if (part.kind === 'channel') volume += channelVolume(part, level);
  }
  return volume;
}

/** Volume of a basin below a level, with the pipes and channels that drain to it and fill with it [m3]. */
export function basinSystemVolume(basin: Basin, conduits: readonly Part[], level: number): number {
  return basinVolume(basin, level) + conduitsVolume(conduits, level);
}
