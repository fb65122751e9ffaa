import { describe, expect, test, vi } from 'vitest';
import { checkDocument } from '../document/check.ts';
import { IndependentRun } from '../testing/independentRun.ts';
import { routedSites } from '../testing/routedSites.ts';
import { buildModel } from './buildModel.ts';
import { stormInflow } from './inflow.ts';
import { runStorm } from './run.ts';
import { stormRunoff } from './storm.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 600_000 });

/**
 * The router beside a general-purpose integration of the same yards (Gragg-Bulirsch-Stoer extrapolation at 1e-9, formulas
 * written apart from the router, floats by bisection).
 */
const levelTolerance = 5e-4;
const volumeTolerance = 1e-3;
/** A way that takes less than this share of the inflow is measured against this share: a trickle over a rim. */
const leastShare = 1e-3;
/** A rise that turns this close to a float may start a pump in one of the two and not in the other [m]. */
const grazingReach = 1e-3;

/** Cases in which a level turns within a millimetre of a float that it does not pass: name and return period. There the starts are not compared. */
const grazing: readonly string[] = [];

const cases: readonly (readonly [string, number])[] = [
  ...Object.keys(routedSites).map((name) => [name, 100] as const), ['gravity against standing water', 10], ['a dry well that fills and runs over', 10],
];

describe('the router beside an independent integration', () => {
  test.each(cases)('%s, %i years', (name, returnPeriod) => {
    const document = routedSites[name]!();
    checkDocument(document);
    const routed = runStorm(buildModel(document), stormInflow(document, stormRunoff(document, returnPeriod), 'system'), { mode: 'real' });
    const exact = new IndependentRun(document, returnPeriod).run();
    routed.maxPond.forEach((level, i) => { expect(Math.abs(level - exact.maxPond[i]!)).toBeLessThan(levelTolerance); });
    if (routed.maxBasin.length > 0) expect(Math.abs(routed.maxBasin[0]! - exact.maxBasin)).toBeLessThan(levelTolerance);
    if (routed.maxWell.length > 0) expect(Math.abs(routed.maxWell[0]! - exact.maxWell)).toBeLessThan(levelTolerance);
    const starts = routed.events.filter(({ kind }) => kind === 'pumpOn').length;
    if (exact.nearestGraze < grazingReach) expect(grazing).toContain(`${name}, ${returnPeriod}`);
    else expect(starts).toBe(exact.starts.length);
    const { volumes } = routed;
    const pairs = [
      [volumes.inflow, exact.inflow], [volumes.pumped, exact.pumped], [volumes.spilled, exact.spilled], [volumes.drained + volumes.lid, exact.drained],
      [volumes.soaked, exact.soaked], [volumes.overflowed, exact.overflowed],
    ] as const;
    for (const [ours, other] of pairs) expect(Math.abs(ours - other)).toBeLessThanOrEqual(volumeTolerance * Math.max(other, leastShare * exact.inflow));
    expect(routed.massError).toBeLessThan(1e-6);
  });

  test('the six yards use every way that water can take', () => {
    const seen = { pumped: false, spilled: false, spilledBetween: false, drained: false, soaked: false, overflowed: false };
    for (const [name, returnPeriod] of cases) {
      const document = routedSites[name]!();
      const { volumes } = runStorm(buildModel(document), stormInflow(document, stormRunoff(document, returnPeriod), 'system'), { mode: 'real' });
      for (const key of Object.keys(seen) as (keyof typeof seen)[]) if (volumes[key] > 0.01) seen[key] = true;
    }
    expect(Object.values(seen).every((value) => value)).toBe(true);
  });
});
