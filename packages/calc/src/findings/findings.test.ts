import { describe, expect, test, vi } from 'vitest';
import { INCH, MINUTE } from '../common/constants.ts';
import type { DesignDocument } from '../document/document.ts';
import { evaluate } from '../evaluate/evaluate.ts';
import type { Finding } from '../results/results.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { findingCodes, remedyCodes } from './codes.ts';
import { judge, limits } from './limits.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const findingsOf = (document: DesignDocument): readonly Finding[] => evaluate(document, { band: false }).findings;

describe('findings of a whole evaluation', () => {
  const flooded = findingsOf(changed(demoSite('tern-hollow'), (copy) => { copy.site.catchments[0]!.area = 120; }));

  test('a patio four times as large stands over the sill, and it is said for how long', () => {
    const [design, check, pumped] = ['L5.overSill', 'L6.overSill', 'P2.overSill'].map((code) => flooded.find((finding) => finding.code === code));
    for (const finding of [design, check, pumped]) {
      expect(finding?.severity).toBe('stop');
      expect(finding!.params['duration']).toBeGreaterThan(0);
    }
  });

  test('the gravest come first', () => {
    const rank = { refer: 0, stop: 1, caution: 2, note: 3 };
    const ranks = flooded.map(({ severity }) => rank[severity]);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  test('every code given is in the list of codes, and every remedy too', () => {
    const all = [...flooded, ...(['tern-hollow', 'ridgeback', 'sallow-bend'] as const).flatMap((name) => findingsOf(demoSite(name)))];
    expect(all.map(({ code }) => code).filter((code) => !(findingCodes as readonly string[]).includes(code))).toEqual([]);
    expect(all.flatMap(({ remedy }) => remedy?.code ?? []).filter((code) => !(remedyCodes as readonly string[]).includes(code))).toEqual([]);
  });

  test('limits are judged at, within and beyond', () => {
    expect([1, 0.75, 0.5, 0.4].map((value) => judge(value * INCH, limits.L5))).toEqual(['pass', 'warn', 'warn', 'fail']);
    expect([15, 20, 30, 31].map((value) => judge(value, limits.B1))).toEqual(['pass', 'warn', 'warn', 'fail']);
    expect([30, 10, 9].map((value) => judge(value * MINUTE, limits.E5))).toEqual(['pass', 'warn', 'fail']);
  });
});
