import type { FoundReport, LineHit } from './found.ts';

export interface FoundSaid {
  readonly kind: FoundReport['kind'];
  readonly part: string | null;
  readonly measure: number | null;
  readonly note: string;
  readonly photoIds: readonly string[];
  readonly hit: LineHit | null;
}
export type FoundAdded = Omit<FoundSaid, 'kind'> & { readonly kind: FoundSaid['kind'] | null };

/** A report with what was added to it, in that order: the later word counts, words and photos come together, and who said that a line was hit is not unsaid. */
export function withAdded(report: FoundSaid, added: readonly FoundAdded[]): FoundSaid {
  return added.reduce<FoundSaid>((now, more) => ({
    kind: more.kind ?? now.kind, part: more.part ?? now.part, measure: more.measure ?? now.measure,
    note: [now.note, more.note].filter((words) => words !== '').join('\n'), photoIds: [...new Set([...now.photoIds, ...more.photoIds])], hit: harder(now.hit, more.hit),
  }), report);
}

const weight: Readonly<Record<LineHit, number>> = { no: 0, line: 1, danger: 2 };

function harder(a: LineHit | null, b: LineHit | null): LineHit | null {
  if (a === null || b === null) return a ?? b;
  return weight[b] > weight[a] ? b : a;
}

export function isHit(hit: LineHit | null | undefined): boolean {
  return hit === 'line' || hit === 'danger';
}
