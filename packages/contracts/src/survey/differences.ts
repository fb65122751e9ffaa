import canonicalize from 'canonicalize';
import type { SurveyFact, SurveyBase, PlacedReading } from '../surveyFacts.ts';
import { baseEntries, type PlainEntry } from './content.ts';
import type { FoldedEntry, FoldedSurvey } from './fold.ts';

/** A fact before a phone or a desk gives it its id, number and time. */
export type SurveyDraft = SurveyFact extends infer F ? (F extends SurveyFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'jobId' | 'surveyId'> : never) : never;

/**
 * The facts that lead from a survey as it stands to one that was typed as a whole: what is new or other is set, what is gone is struck.
 * Each knows of all that was said of its entry. Pins and photos stay with their readings. An entry that is not touched stays as it is,
 * also when it is disputed.
 */
export function differences(from: FoldedSurvey, to: SurveyBase): readonly SurveyDraft[] {
  const before = new Map(from.entries.map((entry) => [entry.key, entry]));
  const { benchMark, mode } = from.content.levelBook;
  const unsaid = new Map<string, unknown>(Object.entries({ benchMark, mode }).filter(([key]) => !before.has(key)));
  const after = placed(baseEntries(to).map((entry) => withAttachments(entry, before.get(entry.key))), before);
  const wanted = new Set(after.map(({ key }) => key));
  const isUnsaid = ({ key, value }: PlainEntry): boolean => unsaid.has(key) && canonicalize(unsaid.get(key)) === canonicalize(value);
  const set = after.filter((entry) => !isSame(entry, before.get(entry.key)) && !isUnsaid(entry)).map((entry) => draftOf(entry, before.get(entry.key)?.seen ?? []));
  const gone = from.entries.filter(({ key, kind, struck }) => !struck && kind !== 'diagnosis' && kind !== 'begun' && !wanted.has(key));
  return [...set, ...gone.map(({ key, seen }): SurveyDraft => ({ kind: 'struck', entry: key, seen: [...seen], reason: '' }))];
}

function draftOf({ kind, key, value }: PlainEntry, seen: readonly string[]): SurveyDraft {
  return { kind, entry: key, seen: [...seen], value } as SurveyDraft;
}

function isSame(entry: PlainEntry, before: FoldedEntry | undefined): boolean {
  return before !== undefined && !before.struck && canonicalize(before.value) === canonicalize(entry.value);
}

/** A desk types neither pins nor photos: what it corrects keeps those that it has. */
function withAttachments(entry: PlainEntry, before: FoldedEntry | undefined): PlainEntry {
  if (before === undefined || typeof before.value !== 'object' || !('photoIds' in before.value) || typeof entry.value !== 'object' || Array.isArray(entry.value)) return entry;
  const { pin, photoIds } = before.value;
  return { ...entry, value: { ...entry.value, pin, photoIds } } as PlainEntry;
}

type ReadingEntry = Extract<PlainEntry, { kind: 'reading' }>;

/** Readings that keep their order keep their places; new ones get places between their neighbors. Any other order is numbered anew. */
function placed(entries: readonly PlainEntry[], before: ReadonlyMap<string, FoldedEntry>): readonly PlainEntry[] {
  const readings = entries.filter((entry): entry is ReadingEntry => entry.kind === 'reading');
  const known = readings.map(({ key }) => placeOf(before.get(key)));
  const kept = known.filter((place) => place !== null);
  const inOrder = kept.every((place, index) => index === 0 || place > (kept[index - 1] ?? -Infinity));
  const places = new Map(readings.map(({ key }, index) => [key, inOrder ? between(known, index) : index + 1]));
  return entries.map((entry) => (entry.kind === 'reading' ? { ...entry, value: { ...entry.value, place: places.get(entry.key) ?? 0 } } : entry));
}

function placeOf(entry: FoldedEntry | undefined): PlacedReading['place'] | null {
  return entry?.kind === 'reading' ? entry.value.place : null;
}

/** The place of the reading at `index`: its own, or its share of the gap between the known ones around it. */
function between(known: readonly (number | null)[], index: number): number {
  const own = known[index] ?? null;
  if (own !== null) return own;
  let first = index;
  while (first > 0 && (known[first - 1] ?? null) === null) first -= 1;
  let end = index;
  while (end < known.length && (known[end] ?? null) === null) end += 1;
  const low = known[first - 1] ?? null;
  const high = known[end] ?? null;
  if (high === null) return (low ?? 0) + (index - first + 1);
  const from = low ?? high - (end - first + 1);
  return from + ((high - from) * (index - first + 1)) / (end - first + 1);
}
