import { describe, expect, it, vi } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { seededRandom } from '../math/random.ts';
import { buildBareModel, buildModel } from '../routing/buildModel.ts';
import { stormInflow } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { runStorm } from '../routing/run.ts';
import { stormRunoff } from '../routing/storm.ts';
import { generatedDocument } from '../testing/generate/document.ts';
import { demoSite } from '../testing/sites.ts';
import { longRecord } from './longRecord.ts';
import { isOneSpot } from './oneSpot.ts';
import type { RainRecord } from './rainRecord.ts';
import type { RouteInflow } from './route.ts';
import { SpotRoute } from './spotRoute.ts';
import { Watch } from './watch.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

/** Highest level of a storm by the router at even steps and by the record's route. */
function both(document: DesignDocument, model: RoutingModel, inflowCase: 'system' | 'bare', returnPeriod: number) {
  const inflow = stormInflow(document, stormRunoff(document, returnPeriod), inflowCase);
  const wanted = runStorm(model, inflow, { mode: 'onTwin', pace: 'even' }).maxPond[0]!;
  const watch = new Watch(model.ponds[0]!.storage, []);
  const route = new SpotRoute(model, watch, inflow.basins[0]?.[0] ?? 0);
  const count = inflow.steps / 5;
  route.run({ ...inflow, count, index: Int32Array.from({ length: count }, (_, i) => i) }, count);
  return { wanted, found: watch.close(0).maxLevel, massError: route.massError() };
}

describe('generated sites', () => {
  it('one low spot and its basin reach the levels of the storm routing within a tenth of a millimeter', () => {
    let compared = 0;
    for (let seed = 1; seed <= 150; seed += 1) {
      const document = generatedDocument(seed);
      for (const inflowCase of ['system', 'bare'] as const) {
        const model = inflowCase === 'bare' ? buildBareModel(document) : buildModel(document);
        if (!isOneSpot(model) || document.rain.storm.block !== 300) continue;
        const { wanted, found, massError } = both(document, model, inflowCase, document.rain.table.returnPeriods.at(-1)!);
        expect(Math.abs(found - wanted), `seed ${seed} ${inflowCase}`).toBeLessThan(1e-4);
        expect(massError, `seed ${seed} ${inflowCase}`).toBeLessThan(1e-9);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(20);
  });
});

describe('any generated site', () => {
  it('runs through ninety days of storms to finite answers, and loses no water', () => {
    const random = seededRandom(11);
    const depths = new Float64Array(90 * 288);
    for (let at = 100; at < depths.length; at += 400 + Math.floor(900 * random())) {
      const strength = 6 * random();
      for (let i = at; i < Math.min(at + 30, depths.length); i += 1) depths[i] = strength * random();
    }
    const record: RainRecord = {
      gauge: { id: '', name: 'Invented', latitude: null, longitude: null, distance: null }, step: 300, startDay: 18628, depths, accumulations: [], rejected: 0,
    };
    for (let seed = 1; seed <= 60; seed += 1) {
      const result = longRecord(generatedDocument(seed), record);
      expect(result.massError, `seed ${seed}`).toBeLessThan(1e-6);
      JSON.stringify(result, (key, value: unknown) => {
        if (typeof value === 'number') expect(Number.isFinite(value), `seed ${seed} ${key}`).toBe(true);
        return value;
      });
    }
  });
});

describe('dry time', () => {
  it('in one leap is the same as minute by minute', () => {
    const document = demoSite('tern-hollow');
    const random = seededRandom(7);
    for (const loss of [0, 3e-5, 4e-4]) {
      for (const bare of [true, false]) {
        const site = { ...document, site: { ...document.site, lowSpots: document.site.lowSpots.map((spot) => ({ ...spot, existingLoss: loss })) } };
        const model = bare ? buildBareModel(site) : buildModel(site);
        const sill = document.site.sills[0]!.level;
        // Bursts of up to 5 L/s with dry hours between them.
        const steps = Array.from({ length: 12 * 24 * 4 }, (_, i) => (i % 60 < 6 ? 0.005 * random() : 0));
        const series = (entries: readonly (readonly [number, number])[]): RouteInflow => ({
          count: entries.length, index: Int32Array.from(entries, ([index]) => index), ponds: [Float64Array.from(entries.flatMap(([, flow]) => [flow, flow, flow, flow, flow]))],
          junctions: [], wells: [], basins: bare ? [] : [new Float64Array(entries.length * 5)],
        });
        const all = steps.map((flow, i) => [i, flow] as const);
        const parts = [all, all.filter(([, flow]) => flow > 0)].map((entries) => {
          const watch = new Watch(model.ponds[0]!.storage, [sill]);
          const route = new SpotRoute(model, watch, 0);
          route.run(series(entries), steps.length);
          return { standing: route.standing(), part: watch.close(0) };
        });
        expect(parts[1]!.part.events).toEqual(parts[0]!.part.events);
        expect(Math.abs(parts[1]!.part.maxLevel - parts[0]!.part.maxLevel)).toBeLessThan(1e-6);
        // Spilling over the rim is exact in one leap; minute by minute it carries the error of its implicit steps.
        expect(Math.abs(parts[1]!.standing - parts[0]!.standing)).toBeLessThan(loss === 0 && bare ? 2e-3 : 1e-9);
        expect(Math.abs(parts[1]!.part.minutesOver[0]! - parts[0]!.part.minutesOver[0]!)).toBeLessThanOrEqual(20);
      }
    }
  });
});
