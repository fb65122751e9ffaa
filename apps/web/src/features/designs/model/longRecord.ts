import type { LongRecordResult, RecordNote } from '@yardfall/calc';

const answerCodes: ReadonlySet<string> = new Set(['record.with', 'record.withRange', 'record.withNever', 'record.without', 'record.withoutRange', 'record.withoutEstimate', 'record.withoutEstimateRange']);

/** A file of times and depths has no number of a station; the gauge is named again with its distance. */
const isUnnamed = ({ code, params }: RecordNote): boolean => code === 'record.gauge' && params['id'] === '';

/** What is said of the sills first, and what the record is worth apart from it. */
export function notesApart(notes: readonly RecordNote[]): { readonly answers: readonly RecordNote[]; readonly about: readonly RecordNote[] } {
  return { answers: notes.filter(({ code }) => answerCodes.has(code)), about: notes.filter((note) => !answerCodes.has(note.code) && !isUnnamed(note)) };
}

export interface CountRow {
  readonly year: number;
  readonly sill: string;
  /** Times in the year by the quoted ways, the fewest and the most; a dash where nothing was run. */
  readonly withSystem: string;
  readonly withoutSystem: string;
  /** Share of the year with readings. */
  readonly valid: number;
}

/** Years in which water would have reached a sill, with or without the system. Uniform rain is only a lower bound and is not counted. */
export function countRows({ quality, ways, sills }: Pick<LongRecordResult, 'quality' | 'ways' | 'sills'>): CountRow[] {
  return quality.years.flatMap(({ year, valid }, at) => sills.flatMap(({ sill }): CountRow[] => {
    const counts = (recordCase: 'system' | 'bare'): number[] => ways.filter((way) => way.recordCase === recordCase && way.way !== 'uniform').flatMap((way) => way.sills.find((one) => one.sill === sill)?.perYear[at] ?? []);
    const [withIt, withoutIt] = [counts('system'), counts('bare')];
    return [...withIt, ...withoutIt].some((count) => count > 0) ? [{ year, sill, withSystem: range(withIt), withoutSystem: range(withoutIt), valid }] : [];
  }));
}

function range(counts: readonly number[]): string {
  if (counts.length === 0) return '–';
  const [low, high] = [Math.min(...counts), Math.max(...counts)];
  return low === high ? String(low) : `${String(low)}–${String(high)}`;
}
