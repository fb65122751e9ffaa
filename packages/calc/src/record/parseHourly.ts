import { INCH } from '../common/constants.ts';
import { MISSING, type Accumulation, type Gauge, type RainRecord } from './rainRecord.ts';
import { cellsOf, dayOf, eachLine, numberOf, recordProblem, type RecordCell } from './recordText.ts';
import { suspectedAccumulations } from './suspected.ts';

const HOURS = 24;
const NOT_THERE = -9999;
/** Placeholder of an hour inside an accumulation, from the older form of the same data. From memory. */
const INSIDE = 99999;
/** More in one hour than was ever measured: 305 mm, Holt, Missouri, 1947, from memory. */
const MOST_IN_AN_HOUR = 400;
const MOST_YEARS = 200;
const HUNDREDTH = INCH * 10;

/** What a long record needs to know of the gauge when its file does not say. */
export interface GaugeHint {
  readonly name?: string;
  readonly latitude?: number | null;
  readonly longitude?: number | null;
  readonly distance?: number | null;
}

interface Columns {
  readonly station: number;
  readonly date: number;
  readonly name: number;
  readonly latitude: number;
  readonly longitude: number;
  readonly value: readonly number[];
  readonly measured: readonly number[];
  readonly quality: readonly number[];
  readonly count: number;
}

function columnsOf(cells: readonly RecordCell[], line: number): Columns {
  const place = new Map(cells.map((cell, i) => [cell.text.toUpperCase(), i]));
  const hours = (suffix: string): number[] => Array.from({ length: HOURS }, (_, h) => place.get(`HR${String(h).padStart(2, '0')}${suffix}`) ?? -1);
  const value = hours('VAL');
  const station = place.get('STATION') ?? -1;
  const date = place.get('DATE') ?? -1;
  if (station < 0 || date < 0 || value.every((i) => i < 0)) throw recordProblem('notHourly', line, 1);
  const hour = value.findIndex((i) => i < 0);
  if (hour >= 0) throw recordProblem('hourMissing', line, 1, { hour });
  return {
    station, date, value, measured: hours('MF'), quality: hours('QF'), count: cells.length,
    name: place.get('NAME') ?? -1, latitude: place.get('LATITUDE') ?? -1, longitude: place.get('LONGITUDE') ?? -1,
  };
}

interface Day {
  readonly day: number;
  readonly values: Float64Array;
}

class HourlyReader {
  readonly days: Day[] = [];
  readonly accumulations: { from: number; to: number; depth: number; kind: 'flagged' }[] = [];
  rejected = 0;
  private columns: Columns | null = null;
  private first: readonly RecordCell[] = [];
  /** Hour at which an accumulation began, counted from the first day; -1 for none. */
  private since = -1;

  read(line: string, number: number): void {
    const cells = cellsOf(line, number);
    if (this.columns === null) {
      this.columns = columnsOf(cells, number);
      return;
    }
    const { columns } = this;
    if (cells.length !== columns.count) throw recordProblem('cellCount', number, cells[cells.length - 1]!.column, { found: cells.length, wanted: columns.count });
    const station = cells[columns.station]!;
    if (this.days.length === 0) this.first = cells;
    else if (station.text !== this.first[columns.station]!.text) throw recordProblem('otherStation', number, station.column, { text: station.text.slice(0, 40) });
    const date = cells[columns.date]!;
    const day = dayOf(date, number);
    const before = this.days[this.days.length - 1];
    if (before !== undefined && day <= before.day) throw recordProblem('notRising', number, date.column, { text: date.text });
    if (before !== undefined && day - this.days[0]!.day > MOST_YEARS * 366) throw recordProblem('tooLong', number, date.column);
    const values = new Float64Array(HOURS).fill(MISSING);
    this.days.push({ day, values });
    for (let h = 0; h < HOURS; h += 1) values[h] = this.hour(cells, columns, h, number, (day - this.days[0]!.day) * HOURS + h);
  }

  private hour(cells: readonly RecordCell[], columns: Columns, h: number, line: number, index: number): number {
    const cell = cells[columns.value[h]!]!;
    const raw = cell.text === '' ? NOT_THERE : numberOf(cell, line);
    if (raw < 0 && raw !== NOT_THERE) throw recordProblem('negative', line, cell.column, { value: raw });
    const flag = cells[columns.measured[h]!]?.text ?? '';
    const depth = raw === NOT_THERE || raw === INSIDE ? MISSING : raw * HUNDREDTH;
    if (flag === 'a') {
      this.since = index;
      return MISSING;
    }
    if (flag === 'A') {
      if (depth !== MISSING) this.accumulations.push({ from: this.since < 0 ? index : this.since, to: index, depth, kind: 'flagged' });
      this.since = -1;
      return MISSING;
    }
    if (this.since >= 0 || depth === MISSING) return MISSING;
    if ((cells[columns.quality[h]!]?.text ?? '') !== '') {
      this.rejected += 1;
      return MISSING;
    }
    if (depth > MOST_IN_AN_HOUR) throw recordProblem('tooMuch', line, cell.column, { value: raw });
    return depth;
  }

  gauge(hint: GaugeHint): Gauge {
    const { first } = this;
    const columns = this.columns!; // there is a day, so there was a head
    const text = (i: number): string => first[i]?.text ?? '';
    const degrees = (i: number): number | null => (text(i) !== '' && Number.isFinite(Number(text(i))) ? Number(text(i)) : null);
    const id = text(columns.station);
    return {
      id, name: text(columns.name) || hint.name || id,
      latitude: degrees(columns.latitude) ?? hint.latitude ?? null,
      longitude: degrees(columns.longitude) ?? hint.longitude ?? null, distance: hint.distance ?? null,
    };
  }
}

/**
 * Hourly rain from a station file of the NOAA NCEI Hourly Precipitation Data, version 2, as CSV: one row a day,
 * HRhhVal the hundredths of an inch in the hour that begins at hh, local standard time, with or without the flags beside it.
 *
 * A value of -9999, an empty one, a day without a row and an hour with a quality flag are missing, and missing is not dry.
 * The sum at the end of an accumulation (flags a to A) is kept apart: when in those hours it fell is not known.
 *
 * @param text of the file
 * @param hint name and place of the gauge where the file does not give them
 * Limits: throws record.* with line and column for anything that it cannot read whole
 * Source: NOAA NCEI, Cooperative Observer Network Hourly Precipitation Data version 2, readme; meaning of the flags a, A from memory
 * Checked against: fixtures/record/hourlyBeltsville.csv, totals and maxima of beltsville.json
 */
export function parseHourly(text: string, hint: GaugeHint = {}): RainRecord {
  const reader = new HourlyReader();
  eachLine(text, (line, number) => { reader.read(line, number); });
  const { days } = reader;
  const start = days[0]?.day;
  if (start === undefined) throw recordProblem('empty', 1, 1);
  const depths = new Float64Array((days[days.length - 1]!.day - start + 1) * HOURS).fill(MISSING);
  for (const { day, values } of days) depths.set(values, (day - start) * HOURS);
  const accumulations: Accumulation[] = [...reader.accumulations, ...suspectedAccumulations(depths, reader.accumulations)];
  return { gauge: reader.gauge(hint), step: 3600, startDay: start, depths, accumulations, rejected: reader.rejected };
}
