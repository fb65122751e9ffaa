import type { DiagnosisAnswers, FoldedEntry, FoldedSurvey, SurveyEntry } from '@yardfall/contracts';
import type { FieldBook, PointRole, Shot, ShotKind } from './fieldBook.ts';

type Reading = SurveyEntry<'reading'>;
type PointEntry = SurveyEntry<'point'>;

const isReading = (entry: FoldedEntry): entry is Reading => entry.kind === 'reading';
const isPoint = (entry: FoldedEntry): entry is PointEntry => entry.kind === 'point' && !entry.struck;

/** A line typed at a desk may hold a foresight and the next backsight; by thumb they are two looks. */
function sightsOf({ value }: Reading): readonly (readonly [ShotKind, number])[] {
  const kinds = ['foresight', 'backsight', 'intermediate', 'direct'] as const;
  return kinds.flatMap((kind) => { const sight = value[kind]; return sight === null ? [] : [[kind, sight] as const]; });
}

function shotsOf(entry: Reading, points: ReadonlyMap<string, PointEntry['value']>, waiting: ReadonlySet<string>): Shot[] {
  const { value, key, struck } = entry;
  const named = points.get(value.point);
  const role: PointRole = named?.role ?? 'other';
  const waits = waiting.has(key) || waiting.has(`point:${value.point}`);
  return sightsOf(entry).map(([kind, sight], n) => ({
    id: n === 0 ? value.id : `${value.id}#${String(n + 1)}`, entry: key, kind, point: value.point, role, value: sight, struck,
    distance: named?.distance ?? null, tailwater: named?.tailwater ?? null, photoIds: value.photoIds, pin: value.pin, inOffice: !waits,
  }));
}

/**
 * The level book of a survey as phones and desk made it.
 * @param waiting keys of the entries that are on this phone and not yet in the office
 */
export function bookOf({ content, entries }: FoldedSurvey, rod: number, waiting: ReadonlySet<string>): FieldBook {
  const points = new Map(entries.filter(isPoint).map(({ value }) => [value.point, value]));
  return { mode: content.levelBook.mode, benchMark: content.levelBook.benchMark, rod, shots: entries.filter(isReading).flatMap((entry) => shotsOf(entry, points, waiting)) };
}

/** What was answered at each step of the diagnosis; a photo alone is no answer. */
export function answersOf({ entries }: FoldedSurvey): DiagnosisAnswers {
  const says = ({ value: { picks, figures } }: SurveyEntry<'diagnosis'>) => picks.length > 0 || Object.keys(figures).length > 0;
  return Object.fromEntries(entries.flatMap((entry) => (entry.kind === 'diagnosis' && !entry.struck && says(entry) ? [[entry.key.slice('diagnosis:'.length), entry.value]] : [])));
}

/** Behind every line of the book, struck ones too. */
export function nextPlace({ entries }: FoldedSurvey): number {
  return entries.filter(isReading).reduce((last, { value }) => Math.max(last, value.place), 0) + 1;
}
