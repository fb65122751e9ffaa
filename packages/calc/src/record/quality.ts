import { HOUR } from '../common/constants.ts';
import { dayNumber, dateOf, timeText } from './calendar.ts';
import { MISSING, readingsPerDay, type RainRecord } from './rainRecord.ts';
import { coarseSpans } from './suspected.ts';

/** Share of a year's readings that must be there before its maximum counts. Source: ours, stated with every result. */
export const COMPLETE_SHARE = 0.95;
const HOURS_PER_YEAR = 8766;

export interface RecordYear {
  readonly year: number;
  /** Share of the calendar year's readings that are there [-]. */
  readonly valid: number;
  readonly complete: boolean;
  /** Rain of the readings that are there [mm]. */
  readonly depth: number;
}

/** A span of the record, in its own clock; `to` is the end of its last reading. */
export interface RecordSpan {
  readonly from: string;
  readonly to: string;
  readonly hours: number;
}

export interface RecordQuality {
  readonly from: string;
  readonly to: string;
  readonly years: readonly RecordYear[];
  readonly completeYears: number;
  /** Time with readings, in years of 365.25 days. */
  readonly observedYears: number;
  readonly gaps: readonly RecordSpan[];
  readonly missingHours: number;
  /** Spans in which the gauge knew only tenths of an inch. */
  readonly coarse: readonly RecordSpan[];
  readonly accumulations: readonly (RecordSpan & { readonly depth: number; readonly kind: 'flagged' | 'suspected' })[];
  readonly rejected: number;
}

/** First reading of each calendar year that the record touches, with the end as last entry. */
export function yearStarts(record: RainRecord): { readonly year: number; readonly from: number; readonly to: number }[] {
  const perDay = readingsPerDay(record);
  const days = record.depths.length / perDay;
  const years: { year: number; from: number; to: number }[] = [];
  for (let day = record.startDay; day < record.startDay + days;) {
    const { year } = dateOf(day);
    const end = Math.min(dayNumber(year + 1, 1, 1), record.startDay + days);
    years.push({ year, from: (day - record.startDay) * perDay, to: (end - record.startDay) * perDay });
    day = end;
  }
  return years;
}

export function spanOf(record: RainRecord, from: number, to: number): RecordSpan {
  const minutes = record.step / 60;
  const start = record.startDay * 1440;
  return { from: timeText(start + from * minutes), to: timeText(start + (to + 1) * minutes), hours: ((to + 1 - from) * record.step) / HOUR };
}

function gapsOf(record: RainRecord): RecordSpan[] {
  const gaps: RecordSpan[] = [];
  let from = -1;
  for (let i = 0; i <= record.depths.length; i += 1) {
    const missing = i < record.depths.length && record.depths[i] === MISSING;
    if (missing && from < 0) from = i;
    if (!missing && from >= 0) {
      gaps.push(spanOf(record, from, i - 1));
      from = -1;
    }
  }
  return gaps;
}

/**
 * What a record holds and what it lacks: years, gaps, spans of a coarse gauge, sums over several hours.
 * A year is complete with 95 % of its readings. Source: ours.
 * Checked against: fixtures/record/beltsville.json
 */
export function recordQuality(record: RainRecord): RecordQuality {
  const { depths } = record;
  let observed = 0;
  const years = yearStarts(record).map(({ year, from, to }): RecordYear => {
    let there = 0;
    let depth = 0;
    for (let i = from; i < to; i += 1) {
      if (depths[i] === MISSING) continue;
      there += 1;
      depth += depths[i]!;
    }
    observed += there;
    const all = (dayNumber(year + 1, 1, 1) - dayNumber(year, 1, 1)) * readingsPerDay(record);
    return { year, valid: there / all, complete: there >= COMPLETE_SHARE * all, depth };
  });
  const whole = spanOf(record, 0, depths.length - 1);
  const perHour = HOUR / record.step;
  return {
    from: whole.from, to: whole.to, years, completeYears: years.filter(({ complete }) => complete).length, observedYears: observed / perHour / HOURS_PER_YEAR,
    gaps: gapsOf(record), missingHours: (depths.length - observed) / perHour,
    coarse: coarseSpans(depths).map(({ from, to }) => spanOf(record, from, to)),
    accumulations: record.accumulations.map(({ from, to, depth, kind }) => ({ ...spanOf(record, from, to), depth, kind })), rejected: record.rejected,
  };
}
