import type { CauseId } from './causes.ts';
import type { StepAnswer } from './types.ts';

/** What the survey and the tests say about where the water can go. */
export interface SystemFacts {
  readonly causes: readonly CauseId[];
  /** Answer of the level book for the best outlet; null before it is known. */
  readonly gravity: 'works' | 'tight' | 'cannotTell' | 'short' | null;
  /** Design infiltration rate [m/s] and depth of the seasonal water table under the bottom of a pit [m]; null when not tested. */
  readonly infiltration: number | null;
  readonly aboveWaterTable: number | null;
  readonly roofDrainsHere: boolean;
  /** Somebody may take the water somewhere. */
  readonly legalOutlet: boolean;
  readonly power: boolean;
}

export const systemKinds = ['divertRoof', 'reshape', 'clearPath', 'interceptor', 'channel', 'catchBasin', 'underDrain', 'toDaylight', 'dryWell', 'pump', 'floodproof', 'shootAgain', 'testSoil'] as const;
export type SystemKind = (typeof systemKinds)[number];

const INCH_PER_HOUR = 0.0254 / 3600;
/** New Jersey Stormwater BMP Manual, chapter 9.3 (2016): 0.5 to 10 in/h, 2 ft over the seasonal high water table. */
const soak = { least: 0.5 * INCH_PER_HOUR, most: 10 * INCH_PER_HOUR, above: 2 * 0.3048 } as const;

function collectors(named: ReadonlySet<CauseId>): SystemKind[] {
  const kinds: SystemKind[] = [];
  if (['lowSlab', 'flatSlab', 'smallInlet'].some((id) => named.has(id as CauseId))) kinds.push('channel');
  if (['surfaceUnnamed', 'blockedDrain', 'drainWithoutOutlet', 'drainBackFall'].some((id) => named.has(id as CauseId))) kinds.push('catchBasin');
  if (['highWaterTable', 'perchedOnClay', 'hillsideSeep', 'crawlWater', 'groundUnnamed'].some((id) => named.has(id as CauseId))) kinds.push('underDrain');
  return kinds;
}

/**
 * Height of a pit's bottom over the water [m], from the hole that was dug beside it: over the water that was seen, or at least over the
 * bottom of a hole that stayed dry. Null while the hole or the pit has no depth.
 */
export function pitOverWater(hole: StepAnswer | undefined): number | null {
  const { holeDepth, waterDepth, pitBottom } = hole?.figures ?? {};
  const depth = hole?.picks.includes('water') ? waterDepth : holeDepth;
  return depth === undefined || pitBottom === undefined ? null : depth - pitBottom;
}

function soaks({ infiltration, aboveWaterTable }: SystemFacts): boolean {
  return infiltration !== null && aboveWaterTable !== null && infiltration >= soak.least && infiltration <= soak.most && aboveWaterTable >= soak.above;
}

/**
 * From cause to kit, in the order in which it is tried: roof water away, the surface shaped, then collected,
 * by gravity, into the soil, by a pump, and floodproofing where nothing is legal or possible.
 */
export function systemChoice(facts: SystemFacts): SystemKind[] {
  const named = new Set(facts.causes);
  const list: SystemKind[] = [];
  if (facts.roofDrainsHere || named.has('roofWater')) list.push('divertRoof');
  if (named.has('blockedPath')) list.push('clearPath');
  if (named.has('lowSlab') || named.has('flatSlab')) list.push('reshape');
  if (named.has('runOn')) list.push('interceptor');
  const collected = collectors(named);
  if (collected.length === 0) return list;
  list.push(...collected);
  if (facts.legalOutlet && (facts.gravity === 'works' || facts.gravity === 'tight')) return [...list, 'toDaylight'];
  if (facts.legalOutlet && facts.gravity !== 'short') return [...list, 'shootAgain'];
  if (soaks(facts)) return [...list, 'dryWell'];
  if (facts.legalOutlet && facts.power) return [...list, 'pump'];
  if (facts.infiltration === null) return [...list, 'testSoil'];
  return [...list, 'floodproof'];
}
