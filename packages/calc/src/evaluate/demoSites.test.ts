import { createHash } from 'node:crypto';
import { describe, expect, test, vi } from 'vitest';
import { FOOT, GALLON_PER_MINUTE } from '../common/constants.ts';
import { demoSite, withPart } from '../testing/sites.ts';
import { evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

describe('Ridgeback, by gravity to the roadside swale', () => {
  const evaluation = evaluate(demoSite('ridgeback'));

  test('carries its 105 gpm in a 4 in pipe of about 135 gpm, 78 % full', () => {
    // Source: the trade's worked example of Ridgeback (ours).
    const [pipe] = evaluation.results.pipes;
    expect(pipe!.designFlow / GALLON_PER_MINUTE).toBeCloseTo(105, 0);
    expect(Math.abs(pipe!.fullFlow / GALLON_PER_MINUTE - 135)).toBeLessThanOrEqual(1);
    expect(Math.abs(pipe!.share - 0.78)).toBeLessThanOrEqual(0.01);
  });

  test('needs 2.8 in at free ends of two 5 in channels', () => {
    const channel = evaluation.results.channels.find((item) => item.returnPeriod === 25)!;
    expect(channel.depthFreeFrictionless / (FOOT / 12)).toBeCloseTo(2.8, 1);
  });

  test('needs no pump and is not stopped', () => {
    expect(evaluation.results.pumps).toEqual([]);
    expect(evaluation.results.outage).toBeNull();
    expect(evaluation.results.gravity[0]!.feasible).toBe(true);
    expect(evaluation.findings.filter(({ severity }) => severity === 'stop' || severity === 'refer')).toEqual([]);
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
