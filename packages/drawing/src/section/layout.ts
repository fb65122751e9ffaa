import type { DesignDocument, LowSpot, Part, Sill } from '@yardfall/calc';
import { placeBeside } from './branches.ts';
import { follow, type Placed } from './follow.ts';
import { upperLevel } from './swale.ts';

export interface Layout {
  readonly sill: Sill | null;
  readonly lowSpot: LowSpot | null;
  /** Collector to outlet, in the order in which the water meets them. */
  readonly chain: readonly Placed[];
  /** Roof water: leader, sealed line and lid, behind the section plane. */
  readonly roof: readonly Placed[];
  /** Pipes that join the chain from outside the section plane. */
  readonly joining: readonly Placed[];
  /** Every other part: it stands beside the section plane, and its place along it is not to scale. */
  readonly beside: readonly Placed[];
  readonly end: number;
}

const wallClearance = 0.06;
const leaderSpacing = 0.25;
/** A level is read to a hundredth of a foot [m]. */
const levelTolerance = 0.003;

const isCollector = (part: Part): boolean => part.kind === 'channel' || part.kind === 'catchBasin';
const isRoof = (part: Part): boolean => part.kind === 'gutter' || part.kind === 'leader' || part.kind === 'roofLine';

export function layOut(document: DesignDocument, lowSpotId: string | null = null): Layout {
  const { lowSpots, sills } = document.site;
  const wanted = lowSpotId ?? sills[0]?.lowSpot ?? null;
  const lowSpot = lowSpots.find((spot) => spot.id === wanted) ?? lowSpots[0] ?? null;
  const sill = lowestSill(sills, lowSpot);
  const chain = placeChain(document, lowSpot);
  const roof = placeRoof(document.system.parts, new Set(chain.map((placed) => placed.part.id)));
  const joining = placeJoining(document.system.parts, chain, roof);
  const beside = placeBeside(document.system.parts, chain, roof, lowSpot?.station ?? 0.3);
  const end = Math.max(lowSpot?.station ?? 0, ...[...chain, ...roof, ...beside].map((placed) => placed.to));
  return { sill, lowSpot, chain, roof, joining, beside, end };
}

function lowestSill(sills: readonly Sill[], lowSpot: LowSpot | null): Sill | null {
  const near = sills.filter((sill) => lowSpot === null || sill.lowSpot === lowSpot.id);
  const pool = near.length > 0 ? near : sills;
  return pool.reduce<Sill | null>((lowest, sill) => (lowest === null || sill.level < lowest.level ? sill : lowest), null);
}

function headOf(parts: readonly Part[], lowSpot: LowSpot | null): Part | null {
  const collector = parts.find((part) => (part.kind === 'channel' || part.kind === 'catchBasin') && part.lowSpot === lowSpot?.id);
  if (collector !== undefined) return collector;
  const fed = new Set(parts.map((part) => part.drainsTo));
  const heads = parts.filter((part) => !fed.has(part.id) && !isRoof(part));
  return heads.find(isCollector) ?? heads.find((part) => part.kind !== 'weepHole' && part.kind !== 'outlet') ?? null;
}

function placeChain(document: DesignDocument, lowSpot: LowSpot | null): Placed[] {
  const { parts } = document.system;
  const head = headOf(parts, lowSpot);
  return follow(parts, head, startOf(document, head, lowSpot?.station ?? 0), new Set());
}

/** A swale that nothing feeds begins where the ground has come down to its own upper level; all else begins at the low spot. */
function startOf({ site, system }: DesignDocument, head: Part | null, lowSpot: number): number {
  const outlet = head?.kind === 'swale' ? system.parts.find(({ id }) => id === head.drainsTo) : undefined;
  if (head?.kind !== 'swale' || outlet?.kind !== 'outlet') return lowSpot;
  const level = upperLevel(head, outlet);
  const shots = site.spotLevels.flatMap((shot): [number, number][] => (shot.station === null || shot.station < lowSpot ? [] : [[shot.station, shot.level]]));
  const reached = shots.sort((a, b) => a[0] - b[0]).find(([, y]) => y <= level + levelTolerance);
  return reached?.[0] ?? lowSpot;
}

/** Leaders side by side at the wall, each gutter over its own; then their buried lines with their lids. */
function placeRoof(parts: readonly Part[], taken: ReadonlySet<string>): Placed[] {
  const leaders = parts.filter((part) => part.kind === 'leader');
  const stations = new Map(leaders.map((part, index) => [part.id, wallClearance + index * leaderSpacing]));
  const at = (part: Part, station: number): Placed => ({ part, from: station, to: station });
  const placed = [
    ...parts.filter((part) => part.kind === 'gutter').map((part) => at(part, stations.get(part.drainsTo ?? '') ?? wallClearance)),
    ...leaders.map((part) => at(part, stations.get(part.id) ?? wallClearance)),
  ];
  const seen = new Set([...taken, ...placed.map(({ part }) => part.id)]);
  for (const head of parts.filter((part) => part.kind === 'roofLine')) placed.push(...follow(parts, head, wallClearance, seen));
  return placed;
}

function placeJoining(parts: readonly Part[], chain: readonly Placed[], roof: readonly Placed[]): Placed[] {
  const used = new Set([...chain, ...roof].map((placed) => placed.part.id));
  return parts.flatMap((part) => {
    if (used.has(part.id) || (part.kind !== 'pipe' && part.kind !== 'underdrain')) return [];
    const target = chain.find((placed) => placed.part.id === part.drainsTo);
    return target === undefined ? [] : [{ part, from: target.from, to: target.from }];
  });
}
