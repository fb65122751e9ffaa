export const surveyEntryKinds = ['begun', 'benchMark', 'mode', 'reading', 'point', 'stageArea', 'drainTest', 'observation', 'diagnosis'] as const;
export type SurveyEntryKind = (typeof surveyEntryKinds)[number];

const single = { survey: 'begun', benchMark: 'benchMark', mode: 'mode', stageArea: 'stageArea' } as const;
const many = ['reading', 'point', 'drainTest', 'observation', 'diagnosis'] as const satisfies readonly SurveyEntryKind[];

/** The kind of an entry by its key; null when there is none of this name. */
export function entryKind(key: string): SurveyEntryKind | null {
  if (key in single) return single[key as keyof typeof single];
  return many.find((kind) => key.startsWith(`${kind}:`) && key.length > kind.length + 1) ?? null;
}

interface Keyed {
  readonly kind: SurveyEntryKind | 'struck';
  readonly entry: string;
  readonly value?: unknown;
}

/** The key names the thing that the value is about, so that two things never share an entry. */
export function entryFits({ kind, entry, value }: Keyed): boolean {
  const named = entryKind(entry);
  if (kind === 'struck') return named !== null && named !== 'begun';
  if (named !== kind) return false;
  const own = ownName(kind, value);
  // A survey that was typed at a desk may name a thing twice: the second is `reading:<id>#2`.
  return own === null || entry === `${kind}:${own}` || (entry.startsWith(`${kind}:${own}#`) && /#[1-9]\d{0,3}$/.test(entry));
}

function ownName(kind: SurveyEntryKind, value: unknown): string | null {
  if (typeof value !== 'object' || value === null) return null;
  if (kind === 'point' && 'point' in value) return String(value.point);
  return 'id' in value ? String(value.id) : null;
}
