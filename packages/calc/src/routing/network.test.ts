import { describe, expect, test } from 'vitest';
import { evaluate } from '../evaluate/evaluate.ts';
import { generatedDocument } from '../testing/generate/document.ts';
import { demoSite } from '../testing/sites.ts';
import { buildModel } from './buildModel.ts';
import { Network } from './network.ts';

/** A rounding that a dry store can have given beyond what it held [m3]. */
const debt = 6e-9;

describe('a dry store that gave a rounding more than it held', () => {
  const dry = (): Network => {
    const network = new Network(buildModel(demoSite('tern-hollow')));
    network.addVolume(0, -debt);
    return network;
  };

  test('stays dry through a whole step and goes on owing it', () => {
    const network = dry();
    expect(network.settle(60)).toBe(60);
    network.commit();
    expect(network.level[0]).toBe(network.layout.tables[0]!.bottom);
    expect(network.volume[0]).toBe(-debt);
  });

  test('pays it out of the next inflow: no water comes of nothing', () => {
    const network = dry();
    network.inflow[0] = 1e-4;
    const before = network.volume.reduce((sum, volume) => sum + volume, 0);
    expect(network.settle(60)).toBe(60);
    network.commit();
    const gone = network.layout.fluxes.reduce((sum, { to }, k) => (to < 0 ? sum + 60 * network.flows[k]! : sum), 0);
    const after = network.volume.reduce((sum, volume) => sum + volume, 0);
    expect(after - before).toBeCloseTo(60 * 1e-4 - gone, 15);
    expect(network.layout.tables[0]!.volume(network.level[0]!)).toBeCloseTo(network.volume[0]!, 9);
  });

  test.each([5185, 5199])('no longer stops generated yard %i', (seed) => {
    expect(evaluate(generatedDocument(seed), { band: false }).massError).toBeLessThan(1e-6);
  });
});
