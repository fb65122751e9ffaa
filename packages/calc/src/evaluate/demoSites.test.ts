import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { answeredSite, printedSites, sitesMarkdown, withinShare } from '../testing/siteTable.ts';
import { demoSite, everySite, withPart } from '../testing/sites.ts';
import { evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 180_000 });

const sites = Object.keys(printedSites).map(answeredSite);

describe('demo sites', () => {
  test('each has its printed numbers, and there is one of every kind', () => {
    expect(Object.keys(printedSites).toSorted()).toEqual(everySite);
    const kinds = sites.map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === 'gravity').length).toBeGreaterThanOrEqual(2);
    expect(new Set(kinds)).toEqual(new Set(['pumped', 'gravity', 'referred', 'infiltration']));
  });

  test('SITES.md is up to date', () => {
    expect(readFileSync(new URL('../../SITES.md', import.meta.url), 'utf8')).toBe(sitesMarkdown(sites));
  });
});

describe.each(sites.map((site) => [site.name, site] as const))('%s', (_, site) => {
  test('gives what was printed within 5 %, or says why not', () => {
    const wrong = site.answers.filter(({ off, why }) => !(Math.abs(off) <= withinShare) && why === undefined)
      .map(({ what, printed, own, unit }) => `${what}: printed ${printed} ${unit}, engine ${own}`);
    expect(wrong).toEqual([]);
  });

  test('is of its kind: pumps, referral, infiltration', () => {
    const { results } = site.evaluation;
    expect(results.pumps.length > 0).toBe(site.kind === 'pumped');
    expect(results.referrals.length > 0).toBe(site.refers);
    expect(results.dryWells.length > 0).toBe(site.kind === 'infiltration');
    expect(results.outage === null).toBe(site.kind !== 'pumped');
  });

  test('is stopped only where the print says so, and loses no water', () => {
    const stops = site.evaluation.findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code);
    expect(stops.length > 0).toBe(site.exit === 2);
    expect(site.evaluation.massError).toBeLessThan(1e-6);
  });
});

describe('Sallow Bend', () => {
  const evaluation = evaluate(demoSite('sallow-bend'));

  test('goes to an engineer: each grave observation refers', () => {
    expect(evaluation.results.referrals).toEqual([
      'R.retainingWallOver4ft', 'R.leaningWall', 'R.slabOffset', 'R.voidUnderSlab', 'R.publicPipe', 'R.neighbourFill',
    ]);
    expect(evaluation.findings.find(({ code }) => code === 'R.waterOnDryDays')!.severity).toBe('caution');
  });

  test('has no quantities, since nothing is designed', () => {
    expect(evaluation.results.quantities).toEqual([]);
  });
});

describe('Ridgeback', () => {
  const evaluation = evaluate(demoSite('ridgeback'));

  test('needs no pump and is not stopped', () => {
    expect(evaluation.results.gravity[0]!.feasible).toBe(true);
    expect(evaluation.findings.filter(({ severity }) => severity === 'stop' || severity === 'refer')).toEqual([]);
  });
});

describe('Cutler Sands', () => {
  const { results } = evaluate(JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/cutler-sands.json', import.meta.url), 'utf8')) as Parameters<typeof evaluate>[0]);

  test('keeps the whole design storm in its stone, as the hand calculation has it: 160 cu ft of voids against 151 to 160 needed by the base alone', () => {
    const [run] = results.wells;
    const [well] = results.dryWells;
    expect(run!.overflowed).toBe(0);
    // The sides soak too, so less than the full store is used.
    const stored = (run!.highestLevel - 93.5 * 0.3048) * 80 * 0.3048 * 0.3048 * 0.4;
    expect(stored).toBeGreaterThan(0);
    expect(stored).toBeLessThan(well!.store);
    expect(run!.soaked).toBeGreaterThan(well!.store);
  });
});

describe('evaluate', () => {
  test.each(['tern-hollow', 'ridgeback', 'sallow-bend'] as const)('gives the same bytes twice: %s', (name) => {
    const bytes = () => createHash('sha256').update(JSON.stringify(evaluate(demoSite(name)))).digest('hex');
    expect(bytes()).toBe(bytes());
  });

  test('without a check valve the line runs back, fills again, and no water is lost', () => {
    const evaluation = evaluate(withPart<'checkValve'>(demoSite('tern-hollow'), 'V1', { present: false }), { band: false });
    expect(evaluation.massError).toBeLessThan(1e-6);
    expect(evaluation.findings.map(({ code }) => code)).toContain('N1.runBack');
    const plain = evaluate(demoSite('tern-hollow'), { band: false });
    expect(evaluation.results.storm!.starts).toBeGreaterThan(plain.results.storm!.starts);
  });
});
