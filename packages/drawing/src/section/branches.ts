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
  const first = new Map<string, readonly Placed[]>();
  let count = 0;
  for (const head of heads) {
    if (seen.has(head.id)) continue;
    count += 1;
    const feeder = [...roof, ...placed].find(({ part }) => part.drainsTo === head.id);
    const run = follow(parts, head, 0, seen);
    const twin = first.get(shapeOf(run));
    if (twin !== undefined) {
      for (const [index, { part }] of run.entries()) {
        const same = twin[index];
        if (same !== undefined) placed.push({ ...same, part, twin: same.part.id });
      }
      continue;
    }
    const last = run.at(-1);
    const target = standing.get(last?.part.drainsTo ?? '');
    const length = last?.to ?? 0;
    const start = feeder?.to ?? startOf(head, { target, length, lowSpot, count });
    const end = target === undefined ? start + length : Math.max(target.from, start);
    const put = run.map((entry) => squeezed(entry, { start, end, length }));
    for (const entry of put) standing.set(entry.part.id, entry);
    placed.push(...put);
    first.set(shapeOf(run), put);
  }
  return placed;
}

/** Runs of one shape and at one set of levels, from as many leaders, are drawn once; ids and names do not matter. */
function shapeOf(run: readonly Placed[]): string {
  const free = run.at(-1)?.part.drainsTo === null;
  return JSON.stringify([free ? null : run, ...run.map(({ part: { id: _id, name: _name, drainsTo: _drainsTo, ...rest } }) => rest)]);
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
