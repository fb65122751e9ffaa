import { CalcProblem } from '../common/problem.ts';
import { realDay } from './calendar.ts';

/** A hundred years of five-minute readings; anything longer is another kind of file. */
const LARGEST_FILE = 400_000_000;

export interface RecordCell {
  readonly text: string;
  /** Column of its first character, from 1. */
  readonly column: number;
}

export function recordProblem(code: string, line: number, column: number, params: Readonly<Record<string, number | string>> = {}): CalcProblem {
  return new CalcProblem(`record.${code}`, `${line}:${column}`, { line, column, ...params });
}

/** Calls back with each line that holds anything and its number from 1. */
export function eachLine(text: string, visit: (line: string, number: number) => void): void {
  if (text.length > LARGEST_FILE) throw recordProblem('tooLarge', 1, 1, { characters: text.length });
  let start = text.startsWith('\ufeff') ? 1 : 0;
  for (let number = 1; start <= text.length; number += 1) {
    const found = text.indexOf('\n', start);
    const end = found < 0 ? text.length : found;
    const line = text.slice(start, end);
    if (line.trim() !== '') visit(line, number);
    start = end + 1;
  }
}

/** Cells of a line of comma-separated values; quotes and the blanks around a cell are taken off, a carriage return at its end among them. */
export function cellsOf(line: string, number: number): RecordCell[] {
  const cells: RecordCell[] = [];
  let at = 0;
  while (at <= line.length) {
    if (line[at] === '"') {
      let text = '';
      let i = at + 1;
      for (; i < line.length; i += 1) {
        if (line[i] !== '"') text += line[i];
        else if (line[i + 1] === '"') {
          text += '"';
          i += 1;
        } else break;
      }
      if (i >= line.length) throw recordProblem('openQuote', number, at + 1);
      cells.push({ text: text.trim(), column: at + 2 });
      const comma = line.indexOf(',', i);
      at = comma < 0 ? line.length + 1 : comma + 1;
    } else {
      const comma = line.indexOf(',', at);
      const end = comma < 0 ? line.length : comma;
      cells.push({ text: line.slice(at, end).trim(), column: at + 1 });
      at = end + 1;
    }
  }
  return cells;
}

/** Day number of a date written as 2006-01-31. */
export function dayOf(cell: RecordCell, line: number): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(cell.text);
  const day = match === null ? null : realDay(Number(match[1]), Number(match[2]), Number(match[3]));
  if (day === null) throw recordProblem('badDate', line, cell.column, { text: cell.text.slice(0, 40) });
  return day;
}

export function numberOf(cell: RecordCell, line: number): number {
  const value = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(cell.text) ? Number(cell.text) : Number.NaN;
  if (!Number.isFinite(value)) throw recordProblem('notANumber', line, cell.column, { text: cell.text.slice(0, 40) });
  return value;
}
