import { beforeAll, describe, expect, test, vi } from 'vitest';
import { FOOT } from '../common/constants.ts';
import type { BandResult, RankedInput } from '../results/decisions.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { Band, quantile } from './band.ts';
import { bandInputs, bandRanges, latinHypercube } from './bandInputs.ts';
import { rainFactors, rainLimits } from './bandModel.ts';
import { bandRanking } from './bandRanking.ts';
import { EvaluationContext } from './context.ts';
import { passes, protection } from './protectedStorm.ts';
import { whatIfOutage } from './whatIf.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const site = demoSite('tern-hollow');
const context = new EvaluationContext(site);
const band = new Band(context);

describe('draws', () => {
  test('take every slice of every input once', () => {
    const draws = latinHypercube(50, 4, 7);
    for (let input = 0; input < 4; input += 1) {
      expect(draws.map((draw) => Math.floor(draw[input]! * 50)).sort((a, b) => a - b)).toEqual(Array.from({ length: 50 }, (_, i) => i));
    }
    expect(latinHypercube(50, 4, 7)).toEqual(draws);
    expect(latinHypercube(50, 4, 8)).not.toEqual(draws);
  });

  test('cover every shot, surface and part of the document', () => {
    const inputs = bandInputs(site).map(({ input, at }) => `${input} ${at ?? ''}`.trim());
    expect(inputs).toEqual([
      'rain', 'coefficient paving', 'coefficient roof', 'coefficient lawn', 'sillShot S1', 'pondShot L1', 'rimShot L1', 'basinShot B1', 'invertShot', 'storage', 'pump', 'friction',
    ]);
  });

  test('move the rain between the limits of its table, block by block', () => {
    const limited = changed(site, (copy) => {
      const { table } = copy.rain;
      table.lower = table.depths.map((row, i) => row.map((depth) => depth * (i === 0 ? 0.9 : 0.8)));
      table.upper = table.depths.map((row) => row.map((depth) => depth * 1.3));
    });
    const storm = new EvaluationContext(limited).storm(25);
    const limits = rainLimits(limited, storm);
    const peak = storm.intensity.indexOf(Math.max(...storm.intensity));
    expect(limits.lower[peak]).toBeCloseTo(0.9, 9);
    expect(limits.upper[peak]).toBeCloseTo(1.3, 9);
    const factors = new Float64Array(storm.steps);
    const at = (share: number): number => { rainFactors(limits, share, [peak, peak + 1], factors); return factors[peak]!; };
    expect([0, 0.25, 0.5, 0.75, 1].map(at).map((value) => Math.floor(value * 1e6 + 0.5) / 1e6)).toEqual([0.9, 0.95, 1, 1.15, 1.3]);
  });
});

describe('ranking', () => {
  let result: BandResult;
  beforeAll(() => { result = bandRanking(band); });
  const swing = (input: RankedInput) => result.ranking.find((item) => item.input === input)!;

  test('has the document in the middle and every input once', () => {
    expect(result.middle).toBeCloseTo(context.sills[0]!.level - context.run(25, 'system', { mode: 'onTwin' }).maxPond[0]!, 9);
    expect(result.ranking).toHaveLength(bandInputs(site).length);
    for (const item of result.ranking) {
      expect(item.swing).toBeCloseTo(Math.abs(item.high - item.low), 12);
      expect((item.low - result.middle) * (item.high - result.middle)).toBeLessThanOrEqual(1e-12);
    }
  });

  test('moves each the right way, the shots of sill and low spot by their own height', () => {
    for (const input of ['rain', 'coefficient', 'pondShot'] as const) expect(swing(input).high, input).toBeLessThan(swing(input).low);
    for (const input of ['pump', 'friction', 'storage', 'sillShot'] as const) expect(swing(input).high, input).toBeGreaterThan(swing(input).low);
    expect(swing('sillShot').swing).toBeCloseTo(0.02 * FOOT, 9);
    expect(Math.abs(swing('pondShot').swing - 0.02 * FOOT)).toBeLessThan(5e-4);
    expect(swing('rain').swing).toBe(Math.max(...result.ranking.map((item) => item.swing)));
  });

  test('what decides comes first: an outlet within a shot of gravity, a rim within a shot of the sill', () => {
    const near = changed(site, (copy) => {
      const [outlet] = copy.site.candidateOutlets;
      outlet!.level = outlet!.collectorInvert - 0.005 * outlet!.distance - 2 * 0.0254 + 0.002;
    });
    const ranking = bandRanking(new Band(new EvaluationContext(near))).ranking;
    expect(ranking[0]!.decides).toBe('gravity');
    expect(ranking.filter((item) => item.decides === 'gravity').map(({ input }) => input).sort()).toEqual(['invertShot', 'outletShot', 'pondShot']);
    const bare = context.run(25, 'bare', { mode: 'onTwin' }).maxPond[0]!;
    const thin = changed(site, (copy) => { copy.site.sills[0]!.level = bare + 0.001; });
    expect(bandRanking(new Band(new EvaluationContext(thin))).ranking.find(({ input }) => input === 'rimShot')!.decides).toBe('need');
  });
});

describe('protected storm', () => {
  const found = protection(context, band)!;
  const { returnPeriods } = site.rain.table;

  test.each([['powerOn', 'system'], ['gutterOverflowing', 'gutterOverflowing']] as const)('%s is that of every storm tried with every draw', (name, inflowCase) => {
    const lower = returnPeriods.map((period) => {
      const values = band.draws.map((draw) => band.freeboards(period, draw, { inflowCase, outage: null })[0]!).sort((a, b) => a - b);
      return quantile(values, bandRanges.lowShare);
    });
    const first = lower.findIndex((value) => value < 0);
    const held = first < 0 ? returnPeriods.length : first;
    expect(found[name]).toEqual({
      returnPeriod: returnPeriods[held - 1] ?? null, wholeTable: first < 0, lower: held === 0 ? null : lower[held - 1], failsAt: first < 0 ? null : returnPeriods[first],
    });
  });

  test('is no larger without power or with the roof on the low spot', () => {
    const of = (item: { readonly returnPeriod: number | null } | null): number => item?.returnPeriod ?? 0;
    expect(of(found.powerOut)).toBeLessThanOrEqual(of(found.powerOn));
    expect(of(found.gutterOverflowing)).toBeLessThanOrEqual(of(found.powerOn));
    const period = found.powerOut!.failsAt!;
    const { from } = context.outageSearch(period).worst(whatIfOutage);
    const values = band.draws.map((draw) => band.freeboards(period, draw, { inflowCase: 'system', outage: [from, from + whatIfOutage] })[0]!).sort((a, b) => a - b);
    expect(quantile(values, bandRanges.lowShare)).toBeLessThan(0);
    expect(passes(band, period, { inflowCase: 'system', outage: [from, from + whatIfOutage] })).toBe(false);
  });

  test('counts no grate as more than half open', () => {
    const open = new EvaluationContext(changed(site, (copy) => {
      for (const part of copy.system.parts) if (part.kind === 'channel') part.grate.clogging = 1;
    }));
    expect(protection(open, new Band(open))).toEqual(found);
  });
});
