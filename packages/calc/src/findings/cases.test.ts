import { describe, expect, test, vi } from 'vitest';
import type { Finding } from '../results/results.ts';
import { baseDocuments, type BaseName } from '../testing/cases/case.ts';
import { findingCases } from '../testing/cases/index.ts';
import { findingsOfCase, routedBase, staticFindings } from '../testing/staticFindings.ts';
import { findingCodes, remedyCodes } from './codes.ts';
import { applyRemedy } from './patch.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const grave = (findings: readonly Finding[]): string[] => [...new Set(findings.filter(({ severity }) => severity === 'stop' || severity === 'refer').map(({ code }) => code))];

const rows = findingCodes.map((code) => ({ code, item: findingCases[code] }));

describe('a case for every finding', () => {
  test.each(rows)('$code: $item.what', ({ code, item }) => {
    const found = findingsOfCase(item).filter((finding) => finding.code === code);
    expect(found.map(({ severity }) => severity)).toContain(item.severity);
    for (const { source, check } of found) {
      expect(source).not.toBe('');
      expect(code.startsWith(`${check}.`)).toBe(true);
    }
    expect(found.some(({ remedy }) => remedy !== null)).toBe(item.cured);
  });

  test.each(rows.filter(({ item }) => item.document !== baseDocuments[item.base]))('$code is silent on the sound site', ({ code, item }) => {
    const before = staticFindings(baseDocuments[item.base], routedBase(item.base)).filter((finding) => finding.code === code && finding.severity === item.severity);
    const after = findingsOfCase(item).filter((finding) => finding.code === code && finding.severity === item.severity);
    expect(before.length).toBeLessThan(after.length);
  });
});

describe('a remedy', () => {
  test.each(rows.filter(({ item }) => item.cured))('of $code clears it and stops nothing else', ({ code, item }) => {
    const before = findingsOfCase(item);
    const finding = before.find((each) => each.code === code && each.remedy !== null)!;
    expect(remedyCodes).toContain(finding.remedy!.code);
    const cured = applyRemedy(item.document, finding.remedy!);
    const after = findingsOfCase(item, cured);
    expect(after.filter((each) => each.code === code && each.at === finding.at)).toEqual([]);
    expect(grave(after).filter((each) => !grave(before).includes(each))).toEqual([...item.raises]);
  });
});

describe('a sound site', () => {
  const asked: Readonly<Record<BaseName, readonly string[]>> = {
    tern: ['rain.illustrative', 'D1.lidHigh', 'C1.nearFull', 'E5.short'], ridge: ['rain.illustrative', 'O7.unknown'], lawn: [], dry: [],
    under: ['rain.illustrative', 'D1.lidHigh', 'C1.nearFull', 'E5.short'],
  };

  test.each(Object.entries(asked))('%s has no stop, and only the cautions that are named', (base, cautions) => {
    const findings = staticFindings(baseDocuments[base as BaseName], routedBase(base as BaseName));
    expect(grave(findings)).toEqual([]);
    expect(findings.filter(({ severity }) => severity === 'caution').map(({ code }) => code)).toEqual(cautions);
  });
});
