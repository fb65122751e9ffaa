import { LibraryInput, libraryKinds } from '@yardfall/contracts';
import type { CurvePoint } from '@yardfall/calc';
import { entryFields, figureOf, type EntryField } from './fields.ts';
import { clean, readWithUnit, roundest } from './units.ts';

/** The library as a sheet: one row an entry, one column a figure, each figure with its unit in its cell. */
const columns = ['kind', 'name', 'source', 'priceCode', ...new Set(libraryKinds.flatMap((kind) => entryFields[kind].map(({ name }) => name)))];

export type SheetRead =
  | { readonly ok: true; readonly entries: readonly LibraryInput[] }
  | { readonly ok: false; readonly code: 'library.sheetHead' | 'library.sheetKind' | 'library.sheetCell' | 'library.sheetEmpty'; readonly params: Readonly<Record<string, number | string>> };

export function writeSheet(entries: readonly LibraryInput[]): string {
  const rows = entries.map((entry) => columns.map((column) => {
    if (column === 'kind') return entry.content.kind;
    if (column === 'name' || column === 'source') return entry[column];
    if (column === 'priceCode') return entry.priceCode ?? '';
    const field = entryFields[entry.content.kind].find(({ name }) => name === column);
    return field === undefined ? '' : writeCell(field, figureOf(entry.content, column));
  }));
  return [columns, ...rows].map((row) => row.map(quoted).join(',')).join('\r\n') + '\r\n';
}

/** A text that a sheet would take for a formula begins with a blank. */
function quoted(text: string): string {
  const safe = /^[=+@\t]/.test(text) ? ` ${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function readSheet(text: string): SheetRead {
  const [head, ...rows] = cellsOf(text).filter((row) => row.some((cell) => cell.trim() !== ''));
  const place = new Map((head ?? []).map((name, at) => [name.replace(/^\ufeff/, '').trim(), at]));
  if (!place.has('kind') || !place.has('name')) return { ok: false, code: 'library.sheetHead', params: {} };
  if (rows.length === 0) return { ok: false, code: 'library.sheetEmpty', params: {} };
  const entries: LibraryInput[] = [];
  for (const [at, row] of rows.entries()) {
    const line = at + 2;
    const cell = (name: string): string => (row[place.get(name) ?? -1] ?? '').trim();
    const kind = libraryKinds.find((one) => one === cell('kind'));
    if (kind === undefined) return { ok: false, code: 'library.sheetKind', params: { line, text: cell('kind').slice(0, 40) } };
    const content: Record<string, unknown> = { kind };
    for (const field of entryFields[kind]) {
      const value = readCell(field, cell(field.name));
      if (value === undefined) return { ok: false, code: 'library.sheetCell', params: { line, column: field.name, text: cell(field.name).slice(0, 40) } };
      content[field.name] = value;
    }
    const entry = LibraryInput.safeParse({ name: cell('name'), source: cell('source'), priceCode: cell('priceCode') || null, content });
    if (!entry.success) return { ok: false, code: 'library.sheetCell', params: { line, column: String(entry.error.issues[0]?.path.at(-1) ?? ''), text: cell(String(entry.error.issues[0]?.path.at(-1) ?? '')).slice(0, 40) } };
    entries.push(entry.data);
  }
  return { ok: true, entries };
}

function writeCell(field: EntryField, value: unknown): string {
  switch (field.kind) {
    case 'curve': return (value as readonly CurvePoint[]).map(({ flow, head }) => `${roundest('flow', flow)} @ ${roundest('head', head)}`).join('; ');
    case 'yesNo': return value === true ? 'yes' : 'no';
    case 'choice': return String(value);
    case 'share':
    case 'number': return String(value);
    default: return value === null ? '' : roundest(field.kind, value as number);
  }
}

/** Undefined when it cannot be read. */
function readCell(field: EntryField, text: string): unknown {
  switch (field.kind) {
    case 'curve': return readPoints(text);
    case 'yesNo': return { yes: true, no: false }[text.toLowerCase()];
    case 'choice': return field.choices.includes(text) ? text : undefined;
    case 'share':
    case 'number': return /^\d*\.?\d+$/.test(text) ? clean(Number(text)) : undefined;
    default: return text === '' && field.optional === true ? null : (readWithUnit(field.kind, text) ?? undefined);
  }
}

function readPoints(text: string): CurvePoint[] | undefined {
  const points = text.split(';').map((point) => point.split('@').map((side) => side.trim())).map(([flow, head]) => ({ flow: readWithUnit('flow', flow ?? ''), head: readWithUnit('head', head ?? '') }));
  return points.flatMap(({ flow, head }) => (flow === null || head === null ? [] : [{ flow, head }])).length === points.length ? (points as CurvePoint[]) : undefined;
}

/** Rows of comma-separated cells; a quoted cell may hold commas, quotes and line ends. */
function cellsOf(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let inside = false;
  const close = (): void => { rows.at(-1)?.push(cell); cell = ''; };
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (inside && sign === '"' && text[at + 1] === '"') { cell += '"'; at += 1; }
    else if (sign === '"') inside = !inside;
    else if (!inside && sign === ',') close();
    else if (!inside && sign === '\n') { close(); rows.push([]); }
    else if (inside || sign !== '\r') cell += sign;
  }
  close();
  return rows;
}
