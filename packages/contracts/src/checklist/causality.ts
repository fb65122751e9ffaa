import type { FieldFact, StoredFact } from '../checklists.ts';

/** As much of a fact as tells what was known when it was recorded. */
export interface Linked {
  readonly id: string;
  readonly seen: readonly string[];
}

/** A fact with its verdict: only kept ones count, but the others still tell what was known when. */
export type JudgedFact = Pick<StoredFact, 'fact' | 'verdict'> & Partial<Pick<StoredFact, 'clockBehind' | 'by' | 'memberId'>>;

/** For every fact the ids that it follows, directly or through others. Cycles (a broken phone) are walked once. */
function followed(facts: readonly { readonly fact: Linked }[]): ReadonlyMap<string, ReadonlySet<string>> {
  const direct = new Map<string, readonly string[]>();
  // Two facts may bear one id (a broken phone): then the id follows what either follows.
  for (const { fact } of facts) direct.set(fact.id, [...(direct.get(fact.id) ?? []), ...fact.seen]);
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

export type Follows<F extends Linked = FieldFact> = (later: F, earlier: F) => boolean;

/** True when `later` follows `earlier` and not the other way round. */
export function causality<F extends Linked>(facts: readonly { readonly fact: F }[]): Follows<F> {
  const known = followed(facts);
  const names = (a: F, b: F): boolean => known.get(a.id)?.has(b.id) ?? false;
  return (later, earlier) => names(later, earlier) && !names(earlier, later);
}

/** The facts of a set that no other of the set follows. */
export function heads<F extends Linked>(facts: readonly F[], follows: (later: F, earlier: F) => boolean): readonly F[] {
  return facts.filter((fact) => !facts.some((other) => other.id !== fact.id && follows(other, fact)));
}
