import { readFileSync } from 'node:fs';

const folder = new URL('../../fixtures/', import.meta.url);

/** Bytes of a fixture, for files whose encoding is part of the case. */
export function fixtureBytes(path: string): Uint8Array {
  return readFileSync(new URL(path, folder));
}

export function fixtureText(path: string): string {
  return readFileSync(new URL(path, folder), 'utf8');
}

export interface FixtureRow {
  readonly id: string;
  /** Where the expected numbers come from. */
  readonly source: string;
  readonly given: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: number;
  readonly why: string;
}

/** Rows of a fixtures JSON file. */
export function fixtureRows(path: string): FixtureRow[] {
  const file = JSON.parse(fixtureText(path)) as { rows: FixtureRow[] };
  return file.rows;
}

export function fixtureRow(path: string, id: string): FixtureRow {
  const row = fixtureRows(path).find((r) => r.id === id);
  if (row === undefined) throw new Error(`no row ${id} in ${path}`);
  return row;
}

/** A named number of a row; a name that is not there fails the test instead of comparing undefined. */
export function given(row: FixtureRow, name: string): number {
  const value = row.given[name];
  if (value === undefined) throw new Error(`row ${row.id} gives no ${name}`);
  return value;
}

/** Cells of a line, whose quoted ones may hold commas. */
function csvCells(line: string): string[] {
  return (line.match(/("[^"]*"|[^,]*)(,|$)/g) ?? []).slice(0, line.endsWith(',') ? undefined : -1).map((cell) => cell.replace(/,$/, '').replaceAll('"', ''));
}

/** Rows of a CSV fixture as records of text. */
export function fixtureCsv(path: string): Record<string, string>[] {
  const [header, ...lines] = fixtureText(path).trim().split(/\r?\n/);
  const names = csvCells(header ?? '');
  return lines.map((line) => {
    const cells = csvCells(line);
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']));
  });
}
