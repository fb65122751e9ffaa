import type { FieldFact, StoredFact } from '../checklists.ts';

/** A fact with its verdict: only kept ones count, but the others still tell what was known when. */
export type JudgedFact = Pick<StoredFact, 'fact' | 'verdict'>;

/** For every fact the ids that it follows, directly or through others. Cycles (a broken phone) are walked once. */
export function followed(facts: readonly JudgedFact[]): ReadonlyMap<string, ReadonlySet<string>> {
  const direct = new Map(facts.map(({ fact }) => [fact.id, fact.seen]));
  return new Map(facts.map(({ fact }) => [fact.id, reach(fact.id, direct)]));
}

function reach(id: string, direct: ReadonlyMap<string, readonly string[]>): ReadonlySet<string> {
  const reached = new Set<string>();
  const open = [...(direct.get(id) ?? [])];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (reached.has(next)) continue;
    reached.add(next);
    open.push(...(direct.get(next) ?? []));
  }
  return reached;
}

export type Follows = (later: FieldFact, earlier: FieldFact) => boolean;

/** True when `later` follows `earlier` and not the other way round. */
export function causality(facts: readonly JudgedFact[]): Follows {
  const known = followed(facts);
  const names = (a: FieldFact, b: FieldFact): boolean => known.get(a.id)?.has(b.id) ?? false;
  return (later, earlier) => names(later, earlier) && !names(earlier, later);
}

/** The facts of a set that no other of the set follows. */
export function heads<F extends FieldFact>(facts: readonly F[], follows: Follows): readonly F[] {
  return facts.filter((fact) => !facts.some((other) => other.id !== fact.id && follows(other, fact)));
}
