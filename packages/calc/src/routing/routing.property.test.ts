import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { buildModel } from './buildModel.ts';
import { stormInflow } from './inflow.ts';
import type { RoutingModel } from './model.ts';
import { runStorm, type RunMode, type StormInflow } from './run.ts';
import { stormRunoff, type StormRunoff } from './storm.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const site = demoSite('tern-hollow');
const runs = { seed: 20250101, numRuns: 200 };

/** Generated sites: the demo site with other sizes of hollow, roof, lawn, basin, pipe, pump and rain; free outlet, no recirculation. */
const sizes = fc.record({
  hollow: fc.double({ min: 0.4, max: 3, noNaN: true }), lawn: fc.double({ min: 0, max: 4, noNaN: true }), roofOn: fc.boolean(),
  basin: fc.double({ min: 0.45, max: 1.2, noNaN: true }), pipe: fc.constantFrom(0.0762, 0.1016, 0.1524), pump: fc.double({ min: 0.4, max: 2.5, noNaN: true }),
  work: fc.double({ min: 0.12, max: 0.6, noNaN: true }), clogging: fc.double({ min: 0.05, max: 1, noNaN: true }), loss: fc.double({ min: 0, max: 3e-4, noNaN: true }),
  returnPeriod: fc.constantFrom(2, 10, 25, 100),
});
type Sizes = typeof sizes extends fc.Arbitrary<infer T> ? T : never;

function siteOf(size: Sizes): DesignDocument {
  return changed(site, (copy) => {
    for (const stage of copy.site.lowSpots[0]!.stageArea) stage.area *= size.hollow;
    copy.site.lowSpots[0]!.existingLoss = size.loss;
    for (const catchment of copy.site.catchments) {
      if (catchment.surface === 'lawn') catchment.area *= size.lawn;
      if (catchment.surface === 'roof' && size.roofOn) catchment.drainsTo = { kind: 'lowSpot', id: 'L1' };
    }
    for (const part of copy.system.parts) {
      if (part.kind === 'basin') {
        part.diameter = size.basin;
        part.onLevel = part.offLevel + size.work;
      }
      if (part.kind === 'pipe') part.diameter = size.pipe;
      if (part.kind === 'channel') part.grate.clogging = size.clogging;
      if (part.kind === 'pump') for (const point of part.curve) point.flow *= size.pump;
    }
  });
}

const storms = new Map<string, StormRunoff>();

function caseOf(size: Sizes): { readonly model: RoutingModel; readonly inflow: StormInflow } {
  const document = siteOf(size);
  const key = `${size.returnPeriod} ${size.lawn}`;
  const storm = storms.get(key) ?? stormRunoff(document, size.returnPeriod, { instantaneous: true });
  storms.set(key, storm);
  return { model: buildModel(document), inflow: stormInflow(document, storm, 'system') };
}

const scaled = (inflow: StormInflow, factors: readonly number[]): StormInflow => ({
  ...inflow, ponds: inflow.ponds.map((flows) => flows.map((flow, i) => flow * factors[i % factors.length]!)),
});

/**
 * The real run splits a step where a float switches, the twins do not: backward Euler then differs by its own error.
 * Halving the step halves it; one minute keeps it under this height [m].
 */
const splitError = 3e-4;

describe('routing of generated sites', () => {
  test('the twins bound the real run at every sill', () => {
    fc.assert(fc.property(sizes, (size) => {
      const { model, inflow } = caseOf(size);
      const top = (mode: RunMode): number => runStorm(model, inflow, { mode }).maxPond[0]!;
      const real = top('real');
      expect(top('offTwin')).toBeLessThanOrEqual(real + splitError);
      expect(real).toBeLessThanOrEqual(top('onTwin') + splitError);
    }), runs);
  });

  test('no water is lost or made', () => {
    fc.assert(fc.property(sizes, fc.constantFrom<RunMode>('real', 'offTwin', 'onTwin'), (size, mode) => {
      const { model, inflow } = caseOf(size);
      expect(runStorm(model, inflow, { mode }).massError).toBeLessThan(1e-6);
    }), runs);
  });

  test('more inflow at any time never lowers a level of the twins', () => {
    const factors = fc.array(fc.double({ min: 1, max: 1.5, noNaN: true }), { minLength: 1, maxLength: 40 });
    fc.assert(fc.property(sizes, factors, fc.constantFrom<RunMode>('offTwin', 'onTwin'), (size, more, mode) => {
      const { model, inflow } = caseOf(size);
      const plain = runStorm(model, inflow, { mode, record: true, pace: 'even' });
      const fuller = runStorm(model, scaled(inflow, more), { mode, record: true, pace: 'even' });
      let worst = 0;
      for (const key of ['pond', 'basin'] as const) {
        plain.samples![key][0]!.forEach((level, i) => { worst = Math.max(worst, level - fuller.samples![key][0]![i]!); });
      }
      // Levels are found to 1e-7 m each.
      expect(worst).toBeLessThanOrEqual(2e-6);
    }), runs);
  });

  test('the real run under more inflow stays above the off twin under less', () => {
    fc.assert(fc.property(sizes, fc.double({ min: 1, max: 1.5, noNaN: true }), (size, more) => {
      const { model, inflow } = caseOf(size);
      const real = runStorm(model, scaled(inflow, [more]), { mode: 'real' }).maxPond[0]!;
      expect(runStorm(model, inflow, { mode: 'offTwin' }).maxPond[0]!).toBeLessThanOrEqual(real + splitError);
    }), runs);
  });
});
