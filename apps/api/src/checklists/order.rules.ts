import type { StoredFact } from '@yardfall/contracts';

export interface Placed {
  readonly stored: StoredFact;
  /** When it was recorded [ms], as the office's clock tells it: never before what it follows, never after it arrived. */
  readonly at: number;
}

/**
 * Facts in the order in which they were recorded, whatever the order of arrival: each after all that it names as seen and after what its phone
 * numbered before it, and otherwise by time. A loop (a broken phone) is cut where it is met.
 */
export function inOrderOfRecording(facts: readonly StoredFact[]): readonly Placed[] {
  const sorted = [...facts].sort(byPhone);
  const before = predecessors(sorted);
  const places = new Map<StoredFact, Place>();
  for (const one of sorted) place(one, before, places, new Set());
  return sorted
    .map((stored) => ({ stored, ...(places.get(stored) ?? { at: ownTime(stored), rank: 0 }) }))
    .sort((a, b) => a.at - b.at || a.rank - b.rank || byPhone(a.stored, b.stored))
    .map(({ stored, at }) => ({ stored, at }));
}

interface Place {
  readonly at: number;
  /** How many facts stand before it one after the other. */
  readonly rank: number;
}

type Before = ReadonlyMap<StoredFact, readonly StoredFact[]>;

function place(one: StoredFact, before: Before, places: Map<StoredFact, Place>, path: Set<StoredFact>): Place {
  const known = places.get(one);
  if (known !== undefined) return known;
  path.add(one);
  let [at, rank] = [ownTime(one), 0];
  for (const earlier of before.get(one) ?? []) {
    if (path.has(earlier)) continue;
    const its = place(earlier, before, places, path);
    at = Math.max(at, its.at);
    rank = Math.max(rank, its.rank + 1);
  }
  path.delete(one);
  const made = { at, rank };
  places.set(one, made);
  return made;
}

/** A phone whose clock runs ahead does not reach into the future. */
function ownTime({ fact, clockBehind, serverTime }: StoredFact): number {
  return Math.min(Date.parse(fact.deviceTime) + clockBehind * 1000, Date.parse(serverTime));
}

/** What a fact names as seen, and the one that its phone numbered before it. */
function predecessors(sorted: readonly StoredFact[]): Before {
  const byId = new Map(sorted.map((one) => [one.fact.id, one]));
  return new Map(sorted.map((one, index) => {
    const last = sorted[index - 1];
    const seen = one.fact.seen.flatMap((id) => byId.get(id) ?? []);
    return [one, last?.fact.deviceId === one.fact.deviceId ? [last, ...seen] : seen];
  }));
}

function byPhone({ fact: a }: StoredFact, { fact: b }: StoredFact): number {
  return compare(a.deviceId, b.deviceId) || a.seq - b.seq || compare(a.id, b.id);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
