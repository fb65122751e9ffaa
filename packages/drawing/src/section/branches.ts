import type { Part } from '@yardfall/calc';
import { follow, type Placed } from './follow.ts';

/** Drawn distance between things that stand at one place along the section [m], ours. */
const apart = 0.4;

/**
 * Parts that neither the main run nor the roof line holds: another channel, a second leader's pipe, an underdrain.
 * Each branch ends where the part that it joins begins, and starts at what feeds it; between them it is stretched or squeezed.
 */
export function placeBeside(parts: readonly Part[], chain: readonly Placed[], roof: readonly Placed[], lowSpot: number): Placed[] {
  const standing = new Map([...roof, ...chain].map((placed) => [placed.part.id, placed]));
  const seen = new Set([...standing.keys(), ...inBasin(parts, chain)]);
  const open = parts.filter((part) => !seen.has(part.id));
  const fed = new Set(open.map((part) => part.drainsTo));
  const heads = [...open.filter((part) => !fed.has(part.id)), ...open];
  const placed: Placed[] = [];
  let count = 0;
  for (const head of heads) {
    if (seen.has(head.id)) continue;
    count += 1;
    const feeder = [...roof, ...placed].find(({ part }) => part.drainsTo === head.id);
    const run = follow(parts, head, 0, seen);
    const last = run.at(-1);
    const target = standing.get(last?.part.drainsTo ?? '');
    const length = last?.to ?? 0;
    const start = feeder?.to ?? startOf(head, { target, length, lowSpot, count });
    const end = target === undefined ? start + length : Math.max(target.from, start);
    for (const entry of run) {
      const put = squeezed(entry, { start, end, length });
      placed.push(put);
      standing.set(put.part.id, put);
    }
  }
  return placed;
}

interface Branch {
  readonly target: Placed | undefined;
  readonly length: number;
  readonly lowSpot: number;
  readonly count: number;
}

function startOf(head: Part, { target, length, lowSpot, count }: Branch): number {
  const collects = head.kind === 'channel' || head.kind === 'catchBasin';
  if (collects || target === undefined) return lowSpot + count * apart;
  return Math.max(target.from - length, apart);
}

/** What has no length keeps its width; what runs fills the way to the part that it joins. */
function squeezed({ part, from, to }: Placed, { start, end, length }: { start: number; end: number; length: number }): Placed {
  const share = length > 0 ? (end - start) / length : 0;
  const at = start + from * share;
  const runs = part.kind === 'pipe' || part.kind === 'underdrain' || part.kind === 'swale' || part.kind === 'dischargeLine' || part.kind === 'roofLine';
  return { part, from: at, to: runs ? start + to * share : at + (to - from) };
}

/** Pumps of the main basin and what belongs to them are drawn with it. */
function inBasin(parts: readonly Part[], chain: readonly Placed[]): string[] {
  const basin = chain.find(({ part }) => part.kind === 'basin')?.part.id;
  const pumps = parts.filter((part) => part.kind === 'pump' && part.basin === basin).map(({ id }) => id);
  const weep = parts.find((part) => part.kind === 'weepHole' && part.pump === pumps[0]);
  return weep === undefined ? pumps : [...pumps, weep.id];
}
