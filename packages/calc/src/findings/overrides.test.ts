import { describe, expect, test, vi } from 'vitest';
import type { LimitOverride } from '../document/document.ts';
import { checkDocument } from '../document/check.ts';
import { baseDocuments } from '../testing/cases/case.ts';
import { changed } from '../testing/sites.ts';
import { routedBase, staticFindings } from '../testing/staticFindings.ts';
import { isReached } from './limit.ts';
import { limitIds, limits } from './limits.ts';
import { checkOverrides, isLooser, isOrdered, limitsInForce } from './overrides.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const set = (limit: string, pass: number, fail: number, why = 'our crew lays to a laser'): LimitOverride => ({ limit, pass, fail, by: 'Ines Calloway', at: '2031-03-04T15:30:00Z', why });
const problemOf = (overrides: readonly LimitOverride[]): { code: string; path: string } | null => {
  try {
    checkOverrides(overrides);
    return null;
  } catch (error) {
    return error as { code: string; path: string };
  }
};

describe('a limit that the company has set', () => {
  const { pass, fail } = limits.G1;

  test('is stricter without a reason, looser only with one', () => {
    expect(problemOf([set('G1', pass * 2, fail, '')])).toBeNull();
    expect(problemOf([set('G1', pass, fail, '')])).toBeNull();
    expect(problemOf([set('G1', pass / 2, fail, ' ')])).toMatchObject({ code: 'document.limitNeedsReason', path: '/limits/0/why' });
    expect(problemOf([set('G1', pass, fail / 2, '')])).toMatchObject({ code: 'document.limitNeedsReason' });
    expect(problemOf([set('B1', limits.B1.pass + 1, limits.B1.fail, '')])).toMatchObject({ code: 'document.limitNeedsReason' });
    expect(problemOf([set('B1', limits.B1.pass, limits.B1.fail + 1, '')])).toMatchObject({ code: 'document.limitNeedsReason' });
    expect(problemOf([set('B1', limits.B1.pass - 1, limits.B1.fail - 1, '')])).toBeNull();
    expect(problemOf([set('G1', pass / 2, fail)])).toBeNull();
  });

  test('is known, set once, and in order', () => {
    expect(problemOf([set('G1', pass, fail), set('G99', 1, 1)])).toMatchObject({ code: 'document.unknownId', path: '/limits/1/limit' });
    expect(problemOf([set('toString', 1, 1)])).toMatchObject({ code: 'document.unknownId' });
    expect(problemOf([set('G1', pass, fail), set('G1', pass, fail)])).toMatchObject({ code: 'document.duplicateId', path: '/limits/1/limit' });
    expect(problemOf([set('G1', fail, pass)])).toMatchObject({ code: 'document.limitOrder', path: '/limits/0/fail' });
    expect(problemOf([set('B1', 30, 15)])).toMatchObject({ code: 'document.limitOrder' });
  });

  test('is refused with the document', () => {
    expect(() => { checkDocument(changed(baseDocuments.tern, (copy) => { copy.limits = [set('G1', pass / 2, fail, '')]; })); }).toThrow('document.limitNeedsReason');
  });

  test('replaces pass and fail, and keeps sense, quantity and source', () => {
    const found = limitsInForce([set('G1', 0.02, 0.01)]);
    expect(found.G1).toEqual({ ...limits.G1, pass: 0.02, fail: 0.01, override: { by: 'Ines Calloway', at: '2031-03-04T15:30:00Z', why: 'our crew lays to a laser' } });
    expect(found.G2).toEqual({ ...limits.G2, override: null });
  });

  test('changes the verdict, the figures and the remedy of a finding, which says who, when and why', () => {
    const document = changed(baseDocuments.tern, (copy) => { copy.limits = [set('G1', 0.02, 0.01)]; });
    const finding = staticFindings(document, routedBase('tern')).find(({ check }) => check === 'G1')!;
    expect(finding).toMatchObject({ code: 'G1.small', severity: 'caution', params: { pass: 0.02, fail: 0.01 } });
    expect(finding.limit).toEqual({ pass: 0.02, fail: 0.01, by: 'Ines Calloway', at: '2031-03-04T15:30:00Z', why: 'our crew lays to a laser' });
    expect(finding.remedy!.params['slope']).toBe(0.02);
    const usual = staticFindings(baseDocuments.tern, routedBase('tern')).find(({ check }) => check === 'G1')!;
    expect(usual.limit).toEqual({ pass, fail });
  });

  test('lets a stop through where the company has loosened it', () => {
    const change = (own: boolean) => changed(baseDocuments.tern, (copy) => {
      Object.assign(copy.system.parts.find(({ id }) => id === 'P1')!, { coverMin: 0.09 });
      if (own) copy.limits = [set('G4Strong', 0.1524, 0.08, 'under a deck, nobody digs there')];
    });
    const severities = [false, true].map((own) => staticFindings(change(own), routedBase('tern')).find(({ check }) => check === 'G4')!.severity);
    expect(severities).toEqual(['stop', 'caution']);
  });
});

test.each(limitIds)('limit %s stands in order, has a source, and is not looser than itself', (id) => {
  const limit = limits[id];
  expect(isOrdered(id, limit)).toBe(true);
  expect(isLooser(id, limit)).toBe(false);
  expect(limit.source.length).toBeGreaterThan(3);
  expect(isReached(limit) || Math.abs(limit.fail) === 1e7).toBe(true);
});
