import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fixtureRows, fixtureText } from './testing/fixtures.ts';

interface IndexRow {
  readonly row: string;
  readonly fixture: string;
  readonly test: string;
  readonly tolerance: number;
  readonly why: string;
}

const { rows } = JSON.parse(fixtureText('index.json')) as { rows: IndexRow[] };
const folder = new URL('../fixtures/', import.meta.url);
/** `golden` holds our own results of the demo sites, which prove nothing about a method. */
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => !path.startsWith('golden/'));

describe('published values', () => {
  it('every fixture row is in the index, and every index row is a fixture row', () => {
    const listed = rows.filter((r) => r.fixture.endsWith('.json')).map((r) => `${r.fixture} ${r.row}`);
    const stored = files.filter((path) => path.endsWith('.json') && path !== 'index.json').flatMap((path) => fixtureRows(path).map((r) => `${path} ${r.id}`));
    expect([...listed].sort()).toEqual([...stored].sort());
    expect(new Set(listed).size).toBe(listed.length);
  });

  it('tolerances and reasons are those of the rows', () => {
    for (const entry of rows.filter((r) => r.fixture.endsWith('.json'))) {
      const row = fixtureRows(entry.fixture).find((r) => r.id === entry.row);
      expect([entry.fixture, entry.row, entry.tolerance, entry.why]).toEqual([entry.fixture, row?.id, row?.tolerance, row?.why]);
      expect(entry.why.length).toBeGreaterThan(3);
      expect(row?.source.length).toBeGreaterThan(3);
    }
  });

  it('each row is used by the test that it names', () => {
    for (const entry of rows) {
      const test = readFileSync(new URL(`../${entry.test}`, import.meta.url), 'utf8');
      expect(test, entry.test).toContain(entry.fixture);
      expect(test, entry.test).not.toMatch(/\.(skip|only|todo)\b/);
    }
  });

  it('every data table is in the index and says where it comes from', () => {
    for (const path of files.filter((p) => p.endsWith('.csv'))) {
      expect(rows.some((r) => r.fixture === path), path).toBe(true);
      expect(existsSync(new URL(path.replace('.csv', '.source.txt'), folder)), path).toBe(true);
    }
  });
});
