import { INCH } from '../common/constants.ts';
import { realDay } from './calendar.ts';
import { MISSING, type RainRecord } from './rainRecord.ts';
import type { GaugeHint } from './parseHourly.ts';
import { cellsOf, eachLine, numberOf, recordProblem, type RecordCell } from './recordText.ts';

/** Length of one row of a file [min]. */
export type SeriesMinutes = 5 | 15 | 60;
/**
 * More in so many minutes than was ever measured: 63 mm in five, Porto Bello, 1911; 198 mm in fifteen, Plumb Point, 1916;
 * 305 mm in an hour, Holt, 1947. All from memory.
 */
const MOST_IN_A_STEP: Readonly<Record<SeriesMinutes, number>> = { 5: 80, 15: 240, 60: 400 };
const MOST_YEARS = 110;

interface Head {
  readonly time: number;
  readonly depth: number;
  readonly millimeters: number;
  readonly count: number;
}

function headOf(cells: readonly RecordCell[], line: number): Head {
  const time = cells.findIndex(({ text }) => /^(date|time)/i.test(text));
  const depth = cells.findIndex(({ text }) => /depth|rain|precip/i.test(text));
  if (time < 0 || depth < 0 || time === depth) throw recordProblem('notSeries', line, 1);
  const unit = /(?:^|[^a-z])(mm|millimeters?|in|inch|inches)(?:[^a-z]|$)/i.exec(cells[depth]!.text)?.[1]?.toLowerCase();
  if (unit === undefined) throw recordProblem('noUnit', line, cells[depth]!.column);
  return { time, depth, millimeters: unit.startsWith('m') ? 1 : INCH * 1000, count: cells.length };
}

/** Step since 1970 of a time written as 2006-01-31T14:05 or with a blank, with or without whole seconds. */
function stepOf(cell: RecordCell, line: number, minutes: SeriesMinutes): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::00(?:\.0+)?)?$/.exec(cell.text);
  const day = match === null ? null : realDay(Number(match[1]), Number(match[2]), Number(match[3]));
  const hour = Number(match?.[4]);
  const minute = Number(match?.[5]);
  if (day === null || hour > 23 || minute > 59) throw recordProblem('badTime', line, cell.column, { text: cell.text.slice(0, 40) });
  if (minute % minutes !== 0) throw recordProblem('offGrid', line, cell.column, { text: cell.text });
  return day * (1440 / minutes) + (hour * 60 + minute) / minutes;
}

/** How long the rows of a file are, by the minutes at which they begin: five unless all stand on quarters, or on hours. */
export function seriesMinutes(text: string): SeriesMinutes {
  let quarters = true;
  let hours = true;
  eachLine(text, (line) => {
    const minute = /\d{4}-\d{2}-\d{2}[T ]\d{2}:(\d{2})/.exec(line)?.[1];
    if (minute === undefined) return;
    quarters &&= Number(minute) % 15 === 0;
    hours &&= minute === '00';
  });
  return hours ? 60 : quarters ? 15 : 5;
}

/**
 * Rain from comma-separated times and depths. The head names both columns and the unit of the depth,
 * `time,depth (mm)` or `time,rain in`; a time is the beginning of its row in standard time.
 * A time without a row and a row without a depth are missing, and missing is not dry.
 *
 * @param text of the file
 * @param hint name and place of the gauge
 * @param minutes length of a row: a quarter of an hour is laid evenly over its three times five minutes, so its bursts are lost; an hour stays one
 * Limits: throws record.* with line and column for anything that it cannot read whole
 * Source: plain form of ours
 */
export function parseSeries(text: string, hint: GaugeHint = {}, minutes: SeriesMinutes = 5): RainRecord {
  const perDay = 1440 / minutes;
  let head: Head | null = null;
  const steps: number[] = [];
  const values: number[] = [];
  eachLine(text, (line, number) => {
    const cells = cellsOf(line, number);
    if (head === null) {
      head = headOf(cells, number);
      return;
    }
    if (cells.length !== head.count) throw recordProblem('cellCount', number, cells[cells.length - 1]!.column, { found: cells.length, wanted: head.count });
    const time = cells[head.time]!;
    const step = stepOf(time, number, minutes);
    if (steps.length > 0 && step <= steps[steps.length - 1]!) throw recordProblem('notRising', number, time.column, { text: time.text });
    if (steps.length > 0 && step - steps[0]! > MOST_YEARS * 366 * perDay) throw recordProblem('tooLong', number, time.column);
    steps.push(step);
    values.push(depthOf(cells[head.depth]!, number, head.millimeters, MOST_IN_A_STEP[minutes]));
  });
  const first = steps[0];
  if (first === undefined) throw recordProblem('empty', 1, 1);
  const startDay = Math.floor(first / perDay);
  const days = Math.floor(steps[steps.length - 1]! / perDay) - startDay + 1;
  const share = minutes === 15 ? 3 : 1;
  const depths = new Float64Array(days * perDay * share).fill(MISSING);
  steps.forEach((step, i) => {
    const value = values[i]!;
    depths.fill(value === MISSING ? MISSING : value / share, (step - startDay * perDay) * share, (step - startDay * perDay + 1) * share);
  });
  return {
    gauge: { id: '', name: hint.name ?? '', latitude: hint.latitude ?? null, longitude: hint.longitude ?? null, distance: hint.distance ?? null },
    step: minutes === 60 ? 3600 : 300, startDay, depths, accumulations: [], rejected: 0,
  };
}

function depthOf(cell: RecordCell, line: number, millimeters: number, most: number): number {
  if (cell.text === '') return MISSING;
  const value = numberOf(cell, line) * millimeters;
  if (value < 0) throw recordProblem('negative', line, cell.column, { value });
  if (value > most) throw recordProblem('tooMuch', line, cell.column, { value });
  return value;
}
