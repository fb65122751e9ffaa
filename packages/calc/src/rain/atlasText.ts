import { CalcProblem } from '../common/problem.ts';

/** A point file has some four kilobytes; anything near this is another kind of file. */
const LARGEST_FILE = 1_000_000;

export interface Cell {
  readonly text: string;
  /** Column of its first character, from 1. */
  readonly column: number;
}

export interface Line {
  readonly number: number;
  readonly cells: readonly Cell[];
}

/** Bytes of a download as text: UTF-8 when they are that, else ISO-8859-1, which never fails. */
export function decodeAtlas(bytes: Uint8Array): string {
  if (bytes.length > LARGEST_FILE) throw new CalcProblem('rain.atlas.tooLarge', '1:1', { line: 1, column: 1, bytes: bytes.length });
  const text = new TextDecoder('utf-8').decode(bytes);
  if (!text.includes('\ufffd')) return text;
  let latin = '';
  for (const byte of bytes) latin += String.fromCharCode(byte);
  return latin;
}

/** Comma as the server writes it; a spreadsheet of another country saves semicolons or tabs. */
export function separatorOf(text: string): ',' | ';' | '\t' {
  const header = text.split(/\r\n|\r|\n/).find((line) => /by duration for/i.test(line)) ?? '';
  if (header.includes(';')) return ';';
  return header.includes('\t') ? '\t' : ',';
}

function splitLine(source: string, separator: string, line: number): Cell[] {
  const cells: Cell[] = [];
  let start = 0;
  let text = '';
  let quoted = false;
  for (let i = 0; i <= source.length; i += 1) {
    const char = source[i];
    if (char === '"') {
      if (quoted && source[i + 1] === '"') {
        text += '"';
        i += 1;
      } else quoted = !quoted;
    } else if (char === undefined || (char === separator && !quoted)) {
      const blank = /^["\s]*/.exec(source.slice(start, i))?.[0].length ?? 0;
      cells.push({ text: text.trim(), column: start + 1 + (text.trim() === '' ? 0 : blank) });
      text = '';
      start = i + 1;
    } else text += char;
  }
  if (quoted) throw new CalcProblem('rain.atlas.openQuote', `${line}:${start + 1}`, { line, column: start + 1 });
  while (cells.length > 0 && cells[cells.length - 1]?.text === '') cells.pop();
  return cells;
}

/** Lines with their cells; empty cells at the end of a line are dropped, quotes are taken off. */
export function atlasLines(text: string): Line[] {
  if (text.length > LARGEST_FILE) throw new CalcProblem('rain.atlas.tooLarge', '1:1', { line: 1, column: 1, bytes: text.length });
  const separator = separatorOf(text);
  return text.replace(/^\ufeff/, '').split(/\r\n|\r|\n/).map((source, i) => ({ number: i + 1, cells: splitLine(source, separator, i + 1) }));
}

export function atlasProblem(code: string, line: number, column: number, params: Readonly<Record<string, number | string>> = {}): CalcProblem {
  return new CalcProblem(`rain.atlas.${code}`, `${line}:${column}`, { line, column, ...params });
}
