import { describe, expect, it, vi } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { buildBareModel, buildModel } from '../routing/buildModel.ts';
import { inflowTargets, stormInflow, type InflowCase } from '../routing/inflow.ts';
import type { PondStore } from '../routing/model.ts';
import { spillFlow } from '../routing/pondStorage.ts';
import { runStorm } from '../routing/run.ts';
import { stormRunoff } from '../routing/storm.ts';
import { routedSites } from '../testing/routedSites.ts';
import { changed, demoSite, withPart } from '../testing/sites.ts';
import { spilledDown } from './closedForm.ts';
import type { Route, RouteInflow } from './route.ts';
import { NetworkRoute } from './networkRoute.ts';
import { isOneSpot } from './oneSpot.ts';
import { SpotRoute } from './spotRoute.ts';
import { Watch } from './watch.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const site = demoSite('tern-hollow');
const sill = site.site.sills[0]!.level;
const loss = (document: DesignDocument, value: number) => changed(document, (copy) => { copy.site.lowSpots[0]!.existingLoss = value; });

/** Other sizes of the demo site, among them ones whose basin stands full and acts back on the low spot. */
const designs: readonly (readonly [string, DesignDocument])[] = [
  ['as designed', site],
  ['with soakage', loss(site, 2e-4)],
  ['a small basin and a weak pump', withPart<'basin'>(withPart<'pump'>(site, 'M1', { curve: [{ flow: 0, head: 4 }, { flow: 0.0008, head: 2 }, { flow: 0.001, head: 0.2 }] }), 'B1', { diameter: 0.5 })],
  ['a pump that hardly lifts', withPart<'pump'>(site, 'M1', { curve: [{ flow: 0, head: 1.3 }, { flow: 0.0008, head: 0.6 }] })],
  ['a pipe of two inches', withPart<'pipe'>(site, 'P1', { diameter: 0.0508 })],
];

function routed(document: DesignDocument, inflowCase: InflowCase, returnPeriod: number, make: (model: ReturnType<typeof buildModel>, watch: Watch) => Route) {
  const model = inflowCase === 'bare' ? buildBareModel(document) : buildModel(document);
  const inflow = stormInflow(document, stormRunoff(document, returnPeriod), inflowCase);
  const sills = [{ pond: 0, level: sill }];
  const wanted = runStorm(model, inflow, { mode: 'onTwin', sills, pace: 'even' });
  const fitted = runStorm(model, inflow, { mode: 'onTwin', sills });
  const watch = new Watch(model.ponds[0]!.storage, [sill]);
  const route = make(model, watch);
  const count = inflow.steps / 5;
  const whole: RouteInflow = { ...inflow, count, index: Int32Array.from({ length: count }, (_, i) => i) };
  route.run(whole, count);
  return { wanted, fitted, route, standing: route.standing(0), part: watch.close(0) };
}

describe('one low spot through a record', () => {
  it.each(designs)('reaches the levels of the storm routing within 0.05 mm at the same steps and 1 mm at its own, and loses no water: %s', (_, document) => {
    for (const inflowCase of ['system', 'gutterOverflowing', 'bare'] as const) {
      for (const returnPeriod of [2, 10, 25, 100]) {
        const { wanted, fitted, route, part } = routed(document, inflowCase, returnPeriod, (model, watch) => {
          expect(isOneSpot(model)).toBe(true);
          return new SpotRoute(model, watch, 0);
        });
        expect(Math.abs(part.maxLevel - wanted.maxPond[0]!)).toBeLessThan(5e-5);
        expect(Math.abs(part.maxLevel - fitted.maxPond[0]!)).toBeLessThan(1e-3);
        expect(part.events[0]! > 0).toBe(wanted.secondsOverSill[0]! > 0);
        expect(route.massError()).toBeLessThan(1e-9);
        // The router takes the crossing inside its minute; the watch counts whole minutes.
        expect(Math.abs(part.minutesOver[0]! - wanted.secondsOverSill[0]! / 60)).toBeLessThanOrEqual(2);
      }
    }
  });

  it('takes most of a storm in closed form', () => {
    const { route } = routed(site, 'system', 25, (model, watch) => new SpotRoute(model, watch, 0));
    expect(route.books.solved).toBeLessThan(0.1 * route.books.closed);
  });

  it('skips dry time in closed form: a falling pond is where its loss has brought it', () => {
    const document = loss(site, 1e-5);
    const model = buildBareModel(document);
    const watch = new Watch(model.ponds[0]!.storage, [sill]);
    const route = new SpotRoute(model, watch, 0);
    const sillVolume = model.ponds[0]!.storage.volume(sill);
    const inflow = (sillVolume + 0.03) / 300 + 1e-5;
    route.run({ count: 1, index: Int32Array.from([10]), ponds: [new Float64Array(5).fill(inflow)], junctions: [], wells: [], basins: [] }, 11 + 12);
    expect(route.standing()).toBeCloseTo(sillVolume + 0.03 - 1e-5 * 3600, 12);
    route.run({ count: 0, index: new Int32Array(0), ponds: [new Float64Array(0)], junctions: [], wells: [], basins: [] }, 11 + 12 * 24 * 30);
    expect(route.standing()).toBe(0);
    const { minutesOver, events } = watch.close(0);
    expect(events).toEqual([1]);
    expect(minutesOver[0]).toBeGreaterThanOrEqual(50);
    expect(minutesOver[0]).toBeLessThanOrEqual(51);
    expect(route.massError()).toBeLessThan(1e-12);
  });

  it('refuses a system that never rests', () => {
    const flooded = withPart<'basin'>(site, 'B1', { onLevel: 30.37, alarmLevel: 30.4 });
    const model = buildModel(flooded);
    expect(() => new SpotRoute(model, new Watch(model.ponds[0]!.storage, []), 0)).toThrow('record.neverRests');
    expect(() => new SpotRoute(buildModel(site), new Watch(model.ponds[0]!.storage, []), 0.01)).toThrow('record.neverRests');
  });
});

describe('spilling over the rim', () => {
  it('the closed form is the end of many small steps', () => {
    const pond: PondStore = buildBareModel(site).ponds[0]!;
    const { storage, rimLevel, spillWidth } = pond;
    const start = storage.volume(rimLevel + 2e-5);
    expect(spilledDown(pond, storage.volume(rimLevel + 0.1), 60)).toBeNull();
    let volume = start;
    for (let i = 0; i < 36000; i += 1) volume -= 0.1 * spillFlow(storage.level(volume), rimLevel, spillWidth);
    const found = spilledDown(pond, start, 3600) ?? NaN;
    expect(Math.abs(found - volume) / (start - found)).toBeLessThan(1e-4);
  });
});

describe('any network', () => {
  it.each(Object.keys(routedSites))('reaches the levels of the storm routing within 0.05 mm, and loses no water: %s', (name) => {
    const document = routedSites[name]!();
    const model = buildModel(document);
    for (const returnPeriod of [2, 100]) {
      const inflow = stormInflow(document, stormRunoff(document, returnPeriod), 'system');
      const wanted = runStorm(model, inflow, { mode: 'onTwin', pace: 'even' });
      const watches = model.ponds.map(({ storage }) => new Watch(storage, []));
      const route = new NetworkRoute(model, watches, inflowTargets(document, 'system'));
      const count = inflow.steps / 5;
      route.run({ ...inflow, count, index: Int32Array.from({ length: count }, (_, i) => i) }, count + 12 * 24 * 30);
      watches.forEach((watch, pond) => { expect(Math.abs(watch.close(0).maxLevel - wanted.maxPond[pond]!), `pond ${pond}`).toBeLessThan(5e-5); });
      expect(route.massError()).toBeLessThan(1e-6);
      expect(route.books.solved).toBeLessThan(inflow.steps + 12 * 24 * 30);
    }
  });

  it('carries what stands from storm to storm, as the route of one low spot does', () => {
    for (const document of [site, loss(site, 3e-5)]) {
      for (const model of [buildModel(document), buildBareModel(document)]) {
        const make = (from: number): RouteInflow => ({
          count: 3, index: Int32Array.from([from, from + 1, from + 50]), ponds: [new Float64Array(15).fill(0.004)], junctions: [], wells: [],
          basins: model.basins.map(() => new Float64Array(15)),
        });
        const watches = [0, 1].map(() => new Watch(model.ponds[0]!.storage, [sill]));
        const routes = [new SpotRoute(model, watches[0]!, 0), new NetworkRoute(model, [watches[1]!], { ponds: 1, junctions: [], wells: [], basins: model.basins.map(() => 0) })];
        for (const route of routes) {
          route.run(make(10), 5000);
          route.run(make(6000), 20_000);
        }
        const [one, any] = watches.map((watch) => watch.close(0));
        expect(Math.abs(one!.maxLevel - any!.maxLevel)).toBeLessThan(5e-5);
        expect(any!.events).toEqual(one!.events);
        expect(Math.abs(routes[0]!.standing(0) - routes[1]!.standing(0))).toBeLessThan(3e-3);
        expect(routes[1]!.massError()).toBeLessThan(1e-6);
      }
    }
  });
});
