import { describe, expect, test, vi } from 'vitest';
import { findingCodes, type Finding } from '@yardfall/calc';
import { findingCases } from '../../calc/src/testing/cases/index.ts';
import { findingsOfCase } from '../../calc/src/testing/staticFindings.ts';
import { isMessageCode, render } from './render.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

/** Every sentence finds its figures in the finding that it is made for, and so does that of the remedy. */
describe('what is said of a finding', () => {
  const say = (code: string, params: Finding['params']): string[] => {
    const key = `findings.${code}`;
    if (!isMessageCode(key)) throw new Error(key);
    return (['en', 'es'] as const).flatMap((language) => (['us', 'metric'] as const).map((units) => render(language, units, key, params)));
  };

  test.each(findingCodes)('%s', (code) => {
    const found = findingsOfCase(findingCases[code]).filter((finding) => finding.code === code);
    expect(found.length).toBeGreaterThan(0);
    for (const { params, remedy } of found) {
      for (const sentence of [...say(code, params), ...(remedy === null ? [] : say(remedy.code, remedy.params))]) expect(sentence).not.toMatch(/undefined|NaN|\{|\}/);
    }
  });
});
