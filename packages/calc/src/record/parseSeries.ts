import { INCH } from '../common/constants.ts';
import { realDay } from './calendar.ts';
import { MISSING, type RainRecord } from './rainRecord.ts';
import type { GaugeHint } from './parseHourly.ts';
import { cellsOf, eachLine, numberOf, recordProblem, type RecordCell } from './recordText.ts';

const STEP_MINUTES = 5;
const PER_DAY = 1440 / STEP_MINUTES;
/** More in five minutes than was ever measured: 63 mm, Porto Bello, 1911, from memory. */
const MOST_IN_A_STEP = 80;
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

/** Five-minute step since 1970 of a time written as 2006-01-31T14:05 or with a blank, with or without whole seconds. */
function stepOf(cell: RecordCell, line: number): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::00(?:\.0+)?)?$/.exec(cell.text);
  const day = match === null ? null : realDay(Number(match[1]), Number(match[2]), Number(match[3]));
  const hour = Number(match?.[4]);
  const minute = Number(match?.[5]);
  if (day === null || hour > 23 || minute > 59) throw recordProblem('badTime', line, cell.column, { text: cell.text.slice(0, 40) });
  if (minute % STEP_MINUTES !== 0) throw recordProblem('offGrid', line, cell.column, { text: cell.text });
  return day * PER_DAY + (hour * 60 + minute) / STEP_MINUTES;
}

/**
 * Five-minute rain from comma-separated times and depths. The head names both columns and the unit of the depth,
 * `time,depth (mm)` or `time,rain in`; a time is the beginning of its five minutes in standard time.
 * A time without a row and a row without a depth are missing, and missing is not dry.
 *
 * @param text of the file
 * @param hint name and place of the gauge
 * Limits: throws record.* with line and column for anything that it cannot read whole
 * Source: plain form of ours
 */
export function parseSeries(text: string, hint: GaugeHint = {}): RainRecord {
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
    const step = stepOf(time, number);
    if (steps.length > 0 && step <= steps[steps.length - 1]!) throw recordProblem('notRising', number, time.column, { text: time.text });
    if (steps.length > 0 && step - steps[0]! > MOST_YEARS * 366 * PER_DAY) throw recordProblem('tooLong', number, time.column);
    steps.push(step);
    values.push(depthOf(cells[head.depth]!, number, head.millimeters));
  });
  const first = steps[0];
  if (first === undefined) throw recordProblem('empty', 1, 1);
  const startDay = Math.floor(first / PER_DAY);
  const days = Math.floor(steps[steps.length - 1]! / PER_DAY) - startDay + 1;
  const depths = new Float64Array(days * PER_DAY).fill(MISSING);
  steps.forEach((step, i) => { depths[step - startDay * PER_DAY] = values[i]!; });
  return {
    gauge: { id: '', name: hint.name ?? '', latitude: hint.latitude ?? null, longitude: hint.longitude ?? null, distance: hint.distance ?? null },
    step: 300, startDay, depths, accumulations: [], rejected: 0,
  };
}

function depthOf(cell: RecordCell, line: number, millimeters: number): number {
  if (cell.text === '') return MISSING;
  const value = numberOf(cell, line) * millimeters;
  if (value < 0) throw recordProblem('negative', line, cell.column, { value });
  if (value > MOST_IN_A_STEP) throw recordProblem('tooMuch', line, cell.column, { value });
  return value;
}
