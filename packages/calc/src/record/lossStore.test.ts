import { describe, expect, it } from 'vitest';
import { HOUR } from '../common/constants.ts';
import type { Catchment, Loss } from '../document/document.ts';
import { exp } from '../math/exp.ts';
import { curveNumberExcess } from '../runoff/curveNumber.ts';
import { greenAmptExcess } from '../runoff/greenAmpt.ts';
import { hortonExcess } from '../runoff/horton.ts';
import { volumetricLoss } from '../runoff/volumetricLoss.ts';
import { demoSite } from '../testing/sites.ts';
import { LossStore, RECOVERED_AFTER, RECOVERY_TIME, recoveryShare } from './lossStore.ts';

const lawn = demoSite('tern-hollow').site.catchments.find(({ surface }) => surface === 'lawn')!;
const surface = (loss: Loss, depressionStorage = 0): Catchment => ({ ...lawn, loss, coefficient: 0.3, depressionStorage });
const rain = [0.4, 1.2, 3, 8, 12, 6, 2, 0.5, 0.1];
const STEP = 300;
const through = (store: LossStore, depths: readonly number[]) => depths.map((depth) => store.excess(depth, STEP));
const expectNear = (found: readonly number[], expected: readonly number[]) => { found.forEach((value, i) => { expect(value).toBeCloseTo(expected[i]!, 9); }); };

const curveNumber: Loss = { method: 'curveNumber', curveNumber: 80 };
const greenAmpt: Loss = { method: 'greenAmpt', conductivity: 3e-6, suctionHead: 0.11, moistureDeficit: 0.3 };
const horton: Loss = { method: 'horton', initial: 2e-5, final: 3e-6, decay: 1e-3 };
const intensity = rain.map((depth) => depth / 1000 / STEP);
const depths = (rates: readonly number[]) => rates.map((rate) => rate * STEP * 1000);

describe('losses through a wet time', () => {
  it('are those of one storm, method by method', () => {
    expectNear(through(new LossStore(surface({ method: 'volumetric' }, 2.5)), rain), volumetricLoss(rain, 0.3, 2.5));
    expectNear(through(new LossStore(surface(curveNumber)), rain), curveNumberExcess(rain, 80));
    expectNear(through(new LossStore(surface(greenAmpt)), rain), depths(greenAmptExcess({ conductivity: 3e-6, suctionDeficit: 0.033 }, intensity, STEP)));
    expectNear(through(new LossStore(surface(horton)), rain), depths(hortonExcess({ initialRate: 2e-5, finalRate: 3e-6, decay: 1e-3 }, intensity, STEP)));
  });

  it('keep the depression storage before any method', () => {
    expectNear(through(new LossStore(surface(curveNumber, 1)), rain), curveNumberExcess([0, 0.6, ...rain.slice(2)], 80));
  });
});

describe('recovery', () => {
  it('is exponential, and whole after 24 dry hours', () => {
    expect(recoveryShare(0)).toBe(1);
    expect(recoveryShare(8 * HOUR)).toBeCloseTo(exp(-1), 14);
    expect(recoveryShare(RECOVERED_AFTER - STEP)).toBeGreaterThan(exp(-RECOVERED_AFTER / RECOVERY_TIME));
    expect(recoveryShare(RECOVERED_AFTER)).toBe(0);
    expect(recoveryShare(5 * HOUR) * recoveryShare(3 * HOUR)).toBeCloseTo(recoveryShare(8 * HOUR), 14);
  });

  it('frees the depression storage: 2.5 mm full, after 8 h room for 2.5 (1 - 1/e) mm', () => {
    const store = new LossStore(surface({ method: 'volumetric' }, 2.5));
    through(store, [4]);
    store.fade(recoveryShare(8 * HOUR));
    expect(store.excess(2.5, STEP)).toBeCloseTo((2.5 - 2.5 * (1 - exp(-1))) * 0.3, 12);
  });

  it('makes a surface new after a day, and in between anything from spent to new', () => {
    for (const loss of [curveNumber, greenAmpt, horton]) {
      const fresh = through(new LossStore(surface(loss, 1)), rain);
      const after = (share: number) => {
        const store = new LossStore(surface(loss, 1));
        through(store, rain);
        store.fade(share);
        return through(store, rain);
      };
      expectNear(after(0), fresh);
      const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
      expect(total(after(1))).toBeGreaterThan(total(after(0.5)));
      expect(total(after(0.5))).toBeGreaterThan(total(fresh));
    }
  });
});
