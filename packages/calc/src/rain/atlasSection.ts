import { DAY, HOUR, MINUTE } from '../common/constants.ts';
import { atlasProblem } from './atlasText.ts';
import type { Cell, Line } from './atlasText.ts';

export interface AtlasSection {
  readonly kind: 'mean' | 'upper' | 'lower';
  readonly series: 'partialDuration' | 'annualMaximum';
  readonly periods: readonly number[];
  readonly durations: readonly number[];
  /** As printed. */
  readonly values: readonly (readonly number[])[];
  /** Where each row stands in the file. */
  readonly rows: readonly Line[];
}

const UNIT_SECONDS: Readonly<Record<string, number>> = { min: MINUTE, hr: HOUR, day: DAY };

/** Seconds of a label such as "5-min:", null when the line is not a row of the table. */
function durationOf(label: string): number | null {
  const match = /^(\d+)\s*-\s*(min|hr|day)s?\s*:?$/i.exec(label);
  const unit = UNIT_SECONDS[match?.[2]?.toLowerCase() ?? ''];
  return match?.[1] === undefined || unit === undefined ? null : Number(match[1]) * unit;
}

function numberOf(cell: Cell, line: number): number {
  // A point or, in a file saved with semicolons, a comma; thousands separators never occur.
  const text = cell.text.replace(',', '.');
  if (!/^\d+(\.\d*)?$|^\.\d+$/.test(text)) throw atlasProblem('notANumber', line, cell.column, { text: cell.text.slice(0, 40) });
  return Number(text);
}

function periodOf(cell: Cell, line: number, annual: boolean): number {
  const text = cell.text.replace(/^'/, '');
  const match = annual ? /^1\/(\d+)$/.exec(text) : /^(\d+)$/.exec(text);
  const period = Number(match?.[1]);
  if (!(period > 0)) throw atlasProblem('badPeriod', line, cell.column, { text: cell.text.slice(0, 40) });
  return period;
}

function headerOf(line: Line): { annual: boolean; periods: number[] } | null {
  const first = line.cells[0];
  const match = /^by duration for (ARI|AEP)/i.exec(first?.text ?? '');
  if (match === null) return null;
  const annual = match[1]?.toUpperCase() === 'AEP';
  const cells = line.cells.slice(1);
  const periods = cells.map((cell) => periodOf(cell, line.number, annual));
  if (periods.length === 0) throw atlasProblem('noPeriods', line.number, 1);
  cells.forEach((cell, i) => {
    if (i > 0 && (periods[i] ?? 0) <= (periods[i - 1] ?? 0)) throw atlasProblem('periodsNotRising', line.number, cell.column, { text: cell.text });
  });
  return { annual, periods };
}

function kindOf(lines: readonly Line[], header: number): AtlasSection['kind'] {
  for (let i = header - 1; i >= 0 && i >= header - 3; i -= 1) {
    const title = lines[i]?.cells[0]?.text ?? '';
    if (/UPPER BOUND/i.test(title)) return 'upper';
    if (/LOWER BOUND/i.test(title)) return 'lower';
  }
  return 'mean';
}

function readRow(line: Line, periods: readonly number[]): number[] {
  const cells = line.cells.slice(1);
  if (cells.length !== periods.length) {
    const column = cells[Math.min(cells.length, periods.length) - 1]?.column ?? 1;
    throw atlasProblem('cellCount', line.number, column, { found: cells.length, expected: periods.length });
  }
  const values = cells.map((cell) => numberOf(cell, line.number));
  values.forEach((value, i) => {
    if (i > 0 && value < (values[i - 1] ?? 0)) throw atlasProblem('notRising', line.number, cells[i]?.column ?? 1, { value });
  });
  return values;
}

function readSection(lines: readonly Line[], header: number, annual: boolean, periods: readonly number[]): AtlasSection {
  const durations: number[] = [];
  const values: number[][] = [];
  const rows: Line[] = [];
  for (let i = header + 1; i < lines.length; i += 1) {
    const line = lines[i];
    const label = line?.cells[0];
    if (line === undefined || label === undefined) break;
    const duration = durationOf(label.text);
    if (duration === null) throw atlasProblem('unknownDuration', line.number, label.column, { text: label.text.slice(0, 40) });
    if (duration <= (durations[durations.length - 1] ?? 0)) throw atlasProblem('durationsNotRising', line.number, label.column, { text: label.text });
    durations.push(duration);
    values.push(readRow(line, periods));
    rows.push(line);
  }
  if (durations.length < 2) throw atlasProblem('tooFewDurations', lines[header]?.number ?? 1, 1, { found: durations.length });
  return { kind: kindOf(lines, header), series: annual ? 'annualMaximum' : 'partialDuration', periods, durations, values, rows };
}

/** Every table of the file, in its order. */
export function atlasSections(lines: readonly Line[]): AtlasSection[] {
  const sections: AtlasSection[] = [];
  lines.forEach((line, i) => {
    const header = headerOf(line);
    if (header !== null) sections.push(readSection(lines, i, header.annual, header.periods));
  });
  return sections;
}
