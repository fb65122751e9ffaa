import { readFileSync } from 'node:fs';
import { evaluate, type DesignDocument } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { originOf, pathOf, into, back, workingOf } from './workings.ts';
import { whatIfTables } from './whatIfs.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const evaluation = evaluate(document);
const { results, workings } = evaluation;

/** What a JSON pointer of a result leads to. */
function at(pointer: string): unknown {
  return pointer.split('/').slice(1).reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], evaluation);
}

test('cases stand side by side: the bare site, the system, then what may fail, each in every storm', () => {
  const [table] = whatIfTables(document, results);
  expect(table?.storms).toEqual([2, 10, 25, 100]);
  expect(table?.rows.slice(0, 2).map((row) => row.case)).toEqual(['noSystem', 'system']);
  expect(new Set(table?.rows.map(({ key }) => key)).size).toBe(table?.rows.length);
  const kinds = new Set(results.whatIfs.map((item) => item.case));
  expect(new Set(table?.rows.map((row) => row.case))).toEqual(new Set([...kinds, 'system']));
  expect(table?.rows.every(({ cells }) => cells.length === 4 && cells.every((cell) => cell !== null))).toBe(true);
});

test('each number says where it stands, and has a working there', () => {
  for (const { rows } of whatIfTables(document, results)) {
    for (const cell of rows.flatMap(({ cells }) => cells)) {
      if (cell === null) continue;
      expect([at(cell.freeboardAt), at(cell.minutesAt)]).toEqual([cell.freeboard, cell.minutes]);
      expect(workingOf(workings, cell.freeboardAt)?.value).toBe(cell.freeboard);
    }
  }
});

test('only a power cut has a length', () => {
  const [table] = whatIfTables(document, results);
  expect(table?.rows.filter(({ outage }) => outage !== null).map((row) => [row.case, row.outage])).toEqual([['powerOut', 1800]]);
});

test('an evaluation without the what-ifs has no table', () => {
  expect(whatIfTables(document, { ...results, whatIfs: [] })).toEqual([]);
});

test('a symbol tells the part and the field that it was read from, or the number before it', () => {
  const place = document.system.parts.findIndex(({ kind }) => kind === 'channel');
  expect(pathOf(`/system/parts/${String(place)}/width`, document)).toEqual(['system', 'parts', `@${document.system.parts[place]?.id ?? ''}`, 'width']);
  expect(pathOf('/rain/table/depths/3/1', document)).toEqual(['rain', 'table', 'depths']);
  expect(originOf(null, document, workings)).toEqual({ kind: 'method' });
  expect(originOf('/results/storm/events', document, workings)).toEqual({ kind: 'run' });
  expect(originOf('/results/band/middle', document, workings)).toEqual({ kind: 'result', result: '/results/band/middle', code: 'band.middle' });
});

test('the way into workings leads back, and never round', () => {
  expect(back(into(['a'], 'b'))).toEqual(['a']);
  expect(into(['a', 'b', 'c'], 'a')).toEqual(['a']);
});
