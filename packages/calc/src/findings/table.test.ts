import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { findingCases } from '../testing/cases/index.ts';
import { findingFigures, findingsMarkdown } from '../testing/findingsMarkdown.ts';
import { findingsOfCase } from '../testing/staticFindings.ts';
import { findingCodes } from './codes.ts';
import { isReached } from './limit.ts';
import { limitIds, limits } from './limits.ts';
import { checkOfLimit, checkTable } from './table.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

/** The checks that the trade's list names, by group. */
const wanted = [...numbered('L', 8), ...numbered('D', 2), ...numbered('I', 5), ...numbered('C', 5), ...numbered('G', 9), ...numbered('B', 10), ...numbered('P', 8), ...numbered('E', 5), ...numbered('O', 10), ...numbered('N', 11), 'R', 'M', 'rain'];

function numbered(group: string, count: number): string[] {
  return Array.from({ length: count }, (_, index) => `${group}${index + 1}`);
}

describe('the table of checks', () => {
  test('has every check, each with codes and a source', () => {
    expect(checkTable.map(({ check }) => check).sort()).toEqual([...wanted].sort());
    for (const row of checkTable) {
      expect(row.codes.length).toBeGreaterThan(0);
      expect(row.limits.length > 0 || (row.source ?? '') !== '').toBe(true);
    }
    expect(checkTable.flatMap(({ codes }) => codes).sort()).toEqual([...findingCodes].sort());
  });

  test.each(limitIds)('%s is read by a check', (id) => {
    expect(checkOfLimit(id)).toBeDefined();
  });

  test.each(checkTable.map((row) => ({ row, check: row.check })))('$check gives only findings under its own limits', ({ row }) => {
    const known = row.limits.map((id) => (isReached(limits[id]) ? { pass: limits[id].pass, fail: limits[id].fail } : { pass: limits[id].pass }));
    const given = row.codes.flatMap((code) => findingsOfCase(findingCases[code]).filter((finding) => finding.check === row.check)).map(({ limit }) => limit).filter((limit) => Object.keys(limit).length > 0);
    expect(given.length > 0).toBe(row.limits.length > 0);
    expect(known).toEqual(expect.arrayContaining(given));
  });

  test('FINDINGS.md is up to date', () => {
    expect(readFileSync(new URL('../../FINDINGS.md', import.meta.url), 'utf8')).toBe(findingsMarkdown());
  });

  test('the figures that sentences may use are up to date', () => {
    expect(JSON.parse(readFileSync(new URL('../../fixtures/golden/findingFigures.json', import.meta.url), 'utf8'))).toEqual(findingFigures());
  });
});
