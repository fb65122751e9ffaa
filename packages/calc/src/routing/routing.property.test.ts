import { describe, expect, test, vi } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { seedsOf } from '../testing/counts.ts';
import { generatedDocument } from '../testing/generate/document.ts';
import { drawnYard, fuller, isClosed, isFree, routed, routedCase, type RoutedCase } from '../testing/routedCases.ts';
import { changed } from '../testing/sites.ts';
import { FlowTable } from './levelTable.ts';
import type { RoutingModel } from './model.ts';
import type { RunSamples } from './recorder.ts';
import { runStorm, type RunMode } from './run.ts';
import { variedModel } from './variation.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 3_600_000 });

const seeds = (first: number): number[] => seedsOf(first, 200, 10_000);
/** Runs of different steps differ by the error of the scheme: it stays under this height [m], see the independent integration. */
const schemeError = 3e-4;
/** Levels at equal steps are found to this [m]. */
const levelError = 2e-6;

const twins: readonly RunMode[] = ['offTwin', 'onTwin'];
const twinOf = (seed: number): RunMode => twins[seed % 2]!;

function noLower(less: RunSamples, more: RunSamples): number {
  let worst = 0;
  for (const key of ['pond', 'basin', 'well'] as const) {
    less[key].forEach((levels, store) => levels.forEach((level, i) => { worst = Math.max(worst, level - more[key][store]![i]!); }));
  }
  return worst;
}

const highest = (item: RoutedCase, mode: RunMode): readonly number[] => routed(item, mode).maxPond;

function expectNoHigher(lower: readonly number[], higher: readonly number[], tolerance: number, seed: number): void {
  lower.forEach((level, i) => { if (level > higher[i]! + tolerance) expect({ seed, pond: i, over: level - higher[i]! }).toBeNull(); });
}

/** Free outlets, no recirculation. */
const pumped = (seed: number): DesignDocument => generatedDocument(seed, { schemes: ['pumped'], recirculation: false });

describe('routing of generated sites', () => {
  test('(a) the twins bound the real run at every low spot', () => {
    let tried = 0;
    for (const seed of seeds(1)) {
      const item = routedCase(seed % 2 === 0 ? pumped(seed) : drawnYard(seed));
      if (!isFree(item)) continue;
      tried += 1;
      const real = highest(item, 'real');
      expectNoHigher(highest(item, 'offTwin'), real, schemeError, seed);
      expectNoHigher(real, highest(item, 'onTwin'), schemeError, seed);
    }
    expect(tried).toBeGreaterThan(0);
  });

  test('(b) more inflow at any time never lowers a level of a twin, with recirculation and stores at outlets', () => {
    let worst = { seed: 0, fall: 0 };
    for (const seed of seeds(100_001)) {
      const item = routedCase(generatedDocument(seed));
      if (item.model.basins.some(({ units }) => units.some(({ battery }) => battery))) continue;
      const less = routed(item, twinOf(seed), true).samples!;
      const more = routed({ ...item, inflow: fuller(item.inflow, seed) }, twinOf(seed), true).samples!;
      const fall = noLower(less, more);
      if (fall > worst.fall) worst = { seed, fall };
    }
    expect(worst.fall, `seed ${worst.seed}`).toBeLessThanOrEqual(levelError);
  });

  test('(c) the real run under more inflow stays above the off twin under less', () => {
    for (const seed of seeds(200_001)) {
      const item = routedCase(seed % 2 === 0 ? pumped(seed) : drawnYard(seed));
      if (!isFree(item)) continue;
      expectNoHigher(highest(item, 'offTwin'), highest({ ...item, inflow: fuller(item.inflow, seed) }, 'real'), schemeError, seed);
    }
  });

  test('(d) one basin, one pump, a check valve: more inflow never leaves less in store by more than the working volume', () => {
    for (const seed of seeds(300_001)) {
      const item = routedCase(drawnYard(seed));
      expect(isClosed(item)).toBe(true);
      const [basin] = item.model.basins;
      const working = basin!.storage.volume(basin!.onLevel) - basin!.storage.volume(basin!.offLevel);
      const less = storedOf(item, item);
      const more = storedOf(item, { ...item, inflow: fuller(item.inflow, seed) });
      const worst = less.reduce((most, volume, i) => Math.max(most, volume - more[i]!), 0);
      if (worst > working * 1.01) expect({ seed, worst, working }).toBeNull();
    }
  });

  test('(e) a pump that gives more at every level never raises the on twin', () => {
    for (const seed of seeds(400_001)) {
      const item = routedCase(drawnYard(seed));
      const better = variedModel(item.document, item.model, { pump: 1.05 + (seed % 10) / 10 });
      expectNoHigher(routed({ ...item, model: better }, 'onTwin', true).maxPond, routed(item, 'onTwin', true).maxPond, levelError, seed);
    }
  });

  test('(f) a wider gravity pipe never raises the low spot that it drains', () => {
    for (const seed of seeds(500_001)) {
      const widened = (by: number): RoutedCase => routedCase(drawnYard(seed, (copy) => { for (const part of copy.system.parts) if (part.kind === 'pipe') part.diameter = by; }));
      expectNoHigher(routed(widened(0.1524), 'onTwin', true).maxPond, routed(widened(0.0762), 'onTwin', true).maxPond, levelError, seed);
    }
  });

  test('(g) a wider basin never raises the on twin of a pump of constant flow', () => {
    for (const seed of seeds(600_001)) {
      const wide = (factor: number): RoutedCase => {
        const item = routedCase(drawnYard(seed, (copy) => { for (const part of copy.system.parts) if (part.kind === 'basin') part.diameter *= factor; }));
        return { ...item, model: withConstantPump(item.model, 0.0005 + (seed % 7) * 0.0005) };
      };
      expectNoHigher(routed(wide(1.3), 'onTwin', true).maxPond, routed(wide(1), 'onTwin', true).maxPond, levelError, seed);
    }
  });

  test('(h) feet and back, and parts in another order, change nothing', () => {
    let most = { seed: 0, off: 0 };
    for (const seed of seeds(700_001)) {
      const document = generatedDocument(seed, { recirculation: false });
      const plain = routed(routedCase(document), twinOf(seed), true);
      for (const other of [throughFeet(document), reversed(document)]) {
        const again = routed(routedCase(other), twinOf(seed), true);
        const levels = other.site.lowSpots.map(({ id }, i) => [id, again.maxPond[i]!] as const);
        document.site.lowSpots.forEach(({ id }, i) => {
          const off = Math.abs(levels.find(([name]) => name === id)![1] - plain.maxPond[i]!);
          if (off > most.off) most = { seed, off };
        });
      }
    }
    expect(most.off, `seed ${most.seed}`).toBeLessThanOrEqual(1e-9);
  });

  test('(i) no water is lost or made', () => {
    let worst = 0;
    for (const seed of seeds(800_001)) {
      const item = routedCase(generatedDocument(seed));
      for (const mode of ['real', 'offTwin', 'onTwin'] as const) worst = Math.max(worst, routed(item, mode).massError);
    }
    expect(worst).toBeLessThan(1e-6);
  });
});

/** Water in low spots and basins at the end of each step of the real run [m3]. */
function storedOf({ model }: RoutedCase, item: RoutedCase): number[] {
  const { pond, basin } = runStorm(item.model, item.inflow, { mode: 'real', record: true }).samples!;
  return Array.from(pond[0]!, (level, i) => model.ponds[0]!.storage.volume(level) + model.basins[0]!.storage.volume(basin[0]![i]!));
}

function withConstantPump(model: RoutingModel, flow: number): RoutingModel {
  const table = FlowTable.tabulate(0, 1, 1, () => flow);
  return { ...model, basins: model.basins.map((basin) => ({ ...basin, lines: basin.lines.map((line) => ({ ...line, flow: () => table, filling: () => table })) })) };
}

/** Every number of site and system divided by a foot and multiplied again. */
function throughFeet(document: DesignDocument): DesignDocument {
  const walk = (value: unknown): unknown => {
    if (typeof value === 'number') return Number.isInteger(value) ? value : (value / 0.3048) * 0.3048;
    if (Array.isArray(value)) return value.map(walk);
    return typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).map(([key, item]) => [key, walk(item)])) : value;
  };
  return { ...document, site: walk(document.site) as DesignDocument['site'], system: walk(document.system) as DesignDocument['system'] };
}

function reversed(document: DesignDocument): DesignDocument {
  return changed(document, (copy) => {
    copy.site.lowSpots.reverse();
    copy.site.catchments.reverse();
    copy.system.parts.reverse();
  });
}
