import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fixtureRows, fixtureText } from './testing/fixtures.ts';

interface Case {
  readonly fixture: string;
  /** Id of a row of a JSON fixture; for a table, words of the test that reads it. */
  readonly case: string;
  readonly test: string;
  readonly tolerance: number;
  readonly why: string;
}
interface LeftOut {
  readonly leftOut: string;
}
interface Index {
  /** Every row of the published reference values: its cases, or why it has none. */
  readonly reference: readonly ({ readonly row: string } & (Case | LeftOut))[];
  /** Every reference data file, under the name that its copy has here. */
  readonly files: readonly ({ readonly file: string } & (Omit<Case, 'case'> | LeftOut))[];
  /** Checks of our own: demo sites and cases worked by hand. */
  readonly own: readonly Case[];
}

const index = JSON.parse(fixtureText('index.json')) as Index;
const expected = JSON.parse(fixtureText('reference-rows.json')) as { rows: { id: string; section: string }[]; files: string[] };
const folder = new URL('../fixtures/', import.meta.url);
/** `golden` holds our own results of the demo sites `sites` their tables and `documents` old designs, which prove nothing about a method. */
const stored = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.includes('/') && !/^(golden|documents|sites)\//.test(path));
const leftOut = (entry: object): entry is LeftOut => 'leftOut' in entry;
const cases: readonly Case[] = [...index.reference.filter((entry): entry is { row: string } & Case => !leftOut(entry)), ...index.own];
const isJson = (path: string): boolean => path.endsWith('.json');
const testText = (path: string): string => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');

describe('published values', () => {
  it('every reference row and data file is in the index, none twice without a case of its own, and nothing else is', () => {
    expect(new Set(index.reference.map(({ row }) => row))).toEqual(new Set(expected.rows.map(({ id }) => id)));
    expect(index.files.map(({ file }) => file)).toEqual(expected.files);
    const keys = cases.map((entry) => `${'row' in entry ? String(entry.row) : 'own'} ${entry.fixture} ${entry.case}`);
    expect(new Set(keys).size).toBe(keys.length);
    for (const row of index.reference.filter(leftOut)) expect(index.reference.filter((other) => other.row === row.row)).toHaveLength(1);
  });

  it('a row that is left out says why', () => {
    const entries: readonly object[] = [...index.reference, ...index.files];
    const reasons = entries.filter(leftOut).map((entry) => entry.leftOut);
    expect(reasons.filter((reason) => reason.length <= 30)).toEqual([]);
  });

  it('every row of a stored JSON fixture is a case, and every case of one is a row with that tolerance and reason', () => {
    const listed = new Set(cases.filter((entry) => isJson(entry.fixture)).map((entry) => `${entry.fixture} ${entry.case}`));
    const rows = stored.filter(isJson).flatMap((path) => fixtureRows(path).map((row) => `${path} ${row.id}`));
    expect([...listed].sort()).toEqual([...rows].sort());
    for (const entry of cases.filter(({ fixture }) => isJson(fixture))) {
      const row = fixtureRows(entry.fixture).find(({ id }) => id === entry.case);
      expect([entry.fixture, entry.case, entry.tolerance, entry.why]).toEqual([entry.fixture, row?.id, row?.tolerance, row?.why]);
      expect(row?.source.length).toBeGreaterThan(3);
    }
  });

  it('each case is read by the test that it names, by its name or with every row of its file', () => {
    for (const entry of cases) {
      expect(existsSync(new URL(entry.fixture, folder)), entry.fixture).toBe(true);
      const text = testText(entry.test);
      expect(text, entry.test).toContain(`'${entry.fixture}'`);
      const named = text.includes(`'${entry.case}'`) || (!isJson(entry.fixture) && text.includes(entry.case)) || (isJson(entry.fixture) && text.includes('fixtureRows('));
      expect(named, `${entry.case} in ${entry.test}`).toBe(true);
      expect(text, entry.test).not.toMatch(/\.(skip|only|todo)\b/);
      expect(entry.why.length).toBeGreaterThan(3);
    }
  });

  it('every data table is one of the reference files, is read by its test and says where it comes from', () => {
    const copies = index.files.flatMap((entry) => (leftOut(entry) ? [] : [entry]));
    expect(stored.filter((path) => path.endsWith('.csv')).sort()).toEqual(copies.map(({ fixture }) => fixture).sort());
    for (const { fixture, test, why } of copies) {
      expect(testText(test), test).toContain(`'${fixture}'`);
      expect(existsSync(new URL(fixture.replace('.csv', '.source.txt'), folder)), fixture).toBe(true);
      expect(why.length).toBeGreaterThan(3);
    }
  });
});
