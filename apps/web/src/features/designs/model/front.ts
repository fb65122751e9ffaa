import { OptionSpace, type Choice, type CostIndex, type DesignDocument, type OptionPoint, type OptionsFront } from '@yardfall/calc';

/** An answered search as the office stored it. */
export interface OptionsOutcome {
  readonly front: OptionsFront;
  readonly choices: readonly Choice[];
  readonly cost: { readonly kind: 'money' | 'order'; readonly index: CostIndex; readonly unpriced: readonly string[] };
}

export interface OptionsAsked {
  readonly document: DesignDocument;
  readonly asked: { readonly entries: readonly { readonly choice: string; readonly alternative: string; readonly part: string; readonly entry: string; readonly sha256: string }[] };
}

/** Points from the cheapest on; a later one protects more. */
export function ordered(front: OptionsFront): OptionPoint[] {
  return front.points.toSorted((a, b) => a.cost - b.cost || a.lower - b.lower);
}

/**
 * The three marks on the line: the cheapest that passes, the one that gains most height for its price from there, and the one that protects most.
 * Places in the ordered points, each at most once; fewer where the line is short.
 */
export function threeMarks(points: readonly OptionPoint[]): number[] {
  const passing = points.map((point, at) => ({ point, at })).filter(({ point }) => point.passes);
  const [start] = passing;
  if (start === undefined) return [];
  const most = passing.reduce((best, one) => (one.point.lower > best.point.lower ? one : best));
  const gain = ({ point }: typeof start): number => (point.lower - start.point.lower) / Math.max(point.cost - start.point.cost, 1e-9);
  const between = passing.filter((one) => one !== start && one !== most && one.point.lower > start.point.lower).toSorted((a, b) => gain(b) - gain(a));
  return [...new Set([start, ...between.slice(0, 1), most])].map(({ at }) => at).toSorted((a, b) => a - b);
}

/** The design of a point, each part from the library with its stamp. */
export function documentOfPoint({ document, asked }: OptionsAsked, { choices, cost }: OptionsOutcome, point: OptionPoint, now: Date): DesignDocument {
  const digits = choices.map(({ id, alternatives }) => Math.max(0, alternatives.findIndex((one) => one.id === point.picks[id])));
  const made = new OptionSpace(document, choices, cost.index).documentOf(digits);
  const taken = asked.entries.filter(({ choice, alternative }) => point.picks[choice] === alternative);
  if (taken.length === 0) return made;
  const kept = (document.sources.library ?? []).filter(({ part }) => !taken.some((one) => one.part === part));
  const library = [...kept, ...taken.map(({ entry, part, sha256 }) => ({ id: entry, sha256, takenAt: now.toISOString(), part }))];
  return { ...made, sources: { ...made.sources, library } };
}

/** What a point picks besides what is drawn: choice and the name of its alternative. */
export function picksOf(choices: readonly Choice[], point: OptionPoint): { readonly choice: Choice; readonly name: string; readonly isDrawn: boolean }[] {
  return choices.flatMap((choice) => {
    const alternative = choice.alternatives.find(({ id }) => id === point.picks[choice.id]);
    return alternative === undefined ? [] : [{ choice, name: alternative.name, isDrawn: alternative.id === 'drawn' }];
  });
}
