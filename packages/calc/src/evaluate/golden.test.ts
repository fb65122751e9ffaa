import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { demoSite, type SiteName } from '../testing/sites.ts';
import { calcVersion, evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

interface Golden {
  readonly calcVersion: string;
  readonly sha256: string;
  readonly freeboards: readonly (readonly [sill: string, returnPeriod: number, onTwin: number, lower: number])[];
  readonly findings: readonly string[];
}

/**
 * The demo sites' results as they were when this version was made; bench/writeGolden.ts writes them.
 * They change only together with `calcVersion`, since issued revisions tell by it which numbers they carry.
 */
describe('results of the demo sites', () => {
  test.each<SiteName>(['tern-hollow', 'ridgeback', 'sallow-bend'])('%s is as this version gave it', (name) => {
    const golden = JSON.parse(readFileSync(new URL(`../../fixtures/golden/${name}.json`, import.meta.url), 'utf8')) as Golden;
    const evaluation = evaluate(demoSite(name));
    expect(golden.calcVersion).toBe(calcVersion);
    expect(evaluation.results.freeboards.map(({ sill, returnPeriod, onTwin, lower }) => [sill, returnPeriod, onTwin, lower])).toEqual(golden.freeboards);
    expect(evaluation.findings.map(({ severity, code, at }) => `${severity} ${code} ${at ?? ''}`.trim())).toEqual(golden.findings);
    expect(createHash('sha256').update(JSON.stringify(evaluation)).digest('hex')).toBe(golden.sha256);
  });
});
