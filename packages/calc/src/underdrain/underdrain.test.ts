import { describe, expect, it } from 'vitest';
import { DAY } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { designConductivity, interceptorFlow } from './interceptor.ts';
import { dupuitFlow, reliefFlow, reliefSpacing } from './reliefDrain.ts';

const FILE = 'underdrain/underdrain.json';

describe('interceptor', () => {
  it('row interceptor: q = K*i*d', () => {
    const row = fixtureRow(FILE, 'interceptor');
    expectNear(interceptorFlow(given(row, 'k'), given(row, 'i'), given(row, 'd')) * given(row, 'length'), row.expected['flow'], row.tolerance);
    expect(interceptorFlow(1e-5, 0.05, 0)).toBe(0);
    expect(() => interceptorFlow(0, 0.05, 1)).toThrow('value.notPositive at conductivity');
    expect(() => interceptorFlow(1e-5, 0, 1)).toThrow('value.notPositive at gradient');
    expect(() => interceptorFlow(1e-5, 0.05, -1)).toThrow('value.negative at thickness');
  });
  it('a texture is worth a fifth of a test', () => {
    expect([designConductivity(1e-5, 'test'), designConductivity(1e-5, 'texture')]).toEqual([1e-5, 1e-5 / 5]);
    expect(() => designConductivity(0, 'test')).toThrow('value.notPositive at conductivity');
  });
});

describe('relief drains', () => {
  const row = fixtureRow(FILE, 'relief');
  const soil = { conductivity: given(row, 'k'), layerBelow: given(row, 'a'), waterAbove: given(row, 'm') };
  const recharge = given(row, 'mmPerDay') / 1000 / DAY;
  it('row relief: spacing by the ellipse equation, and its flow back', () => {
    const spacing = reliefSpacing(soil, recharge);
    expectNear(spacing, row.expected['spacing'], row.tolerance);
    const flow = reliefFlow(soil, spacing);
    expectRatio(flow.recharge, recharge, 1e-12);
    expectRatio(flow.perLength, recharge * spacing, 1e-12);
    expectRatio(reliefSpacing({ ...soil, layerBelow: 0 }, recharge), Math.sqrt((4 * soil.conductivity * 0.16) / recharge), 1e-12);
  });
  it('on the tight layer it is Dupuit from both sides with recharge: half of the water comes from each', () => {
    // With recharge between the drains, K*m^2 = q*(S/2)^2: the ellipse.
    const flat = { ...soil, layerBelow: 0 };
    const spacing = reliefSpacing(flat, recharge);
    expectRatio(soil.conductivity * 0.16, recharge * (spacing / 2) * (spacing / 2), 1e-12);
  });
  it('names what is wrong', () => {
    expect(() => reliefSpacing({ ...soil, waterAbove: 0 }, recharge)).toThrow('value.notPositive at waterAbove');
    expect(() => reliefSpacing({ ...soil, layerBelow: -1 }, recharge)).toThrow('value.negative at layerBelow');
    expect(() => reliefSpacing(soil, 0)).toThrow('value.notPositive at recharge');
    expect(() => reliefFlow(soil, 0)).toThrow('value.notPositive at spacing');
    expect(() => reliefFlow({ ...soil, conductivity: 0 }, 5)).toThrow('value.notPositive at conductivity');
  });
});

describe('Dupuit', () => {
  it('row dupuit: from one side', () => {
    const row = fixtureRow(FILE, 'dupuit');
    expectNear(dupuitFlow(given(row, 'k'), given(row, 'far'), given(row, 'near'), given(row, 'distance')), row.expected['flow'], row.tolerance);
  });
  it('a small difference is Darcy', () => {
    expectRatio(dupuitFlow(1e-5, 1.001, 1, 5), interceptorFlow(1e-5, 0.001 / 5, 1), 1e-3);
    expect(dupuitFlow(1e-5, 1, 1, 5)).toBe(0);
    expect(() => dupuitFlow(1e-5, 0.9, 1, 5)).toThrow('underdrain.uphill at far');
    expect(() => dupuitFlow(1e-5, 1, -1, 5)).toThrow('value.negative at near');
    expect(() => dupuitFlow(1e-5, 1, 0, 0)).toThrow('value.notPositive at distance');
  });
});
