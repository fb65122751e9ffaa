import { describe, expect, it } from 'vitest';
import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { compositeCoefficient } from './compositeCoefficient.ts';
import { curveNumberExcess, curveNumberRunoff } from './curveNumber.ts';
import { curvilinearOrdinate, peakRateFactor, shapeOfPeakRate } from './dimensionlessHydrograph.ts';
import { graphicalPeak, unitPeakDischarge } from './graphicalPeak.ts';
import { greenAmptExcess, pondedInfiltration } from './greenAmpt.ts';
import { hortonDepth, hortonExcess, hortonRate } from './horton.ts';
import { izzardTime } from './izzard.ts';
import { kinematicPlane, LEAST_PLANE_SLOPE, planeEquilibriumTime } from './kinematicPlane.ts';
import { rationalFlow } from './rational.ts';
import { recoveryOf } from './storeRecovery.ts';
import { travelTime } from './travelTime.ts';
import { LEAST_AREA, unitHydrograph } from './unitHydrograph.ts';
import { volumetricLoss } from './volumetricLoss.ts';

const zeros = (count: number): number[] => new Array<number>(count).fill(0);

describe('rational method and curve number at their edges', () => {
  it('names what is wrong', () => {
    expect(() => compositeCoefficient([{ coefficient: 1.1, area: 1 }])).toThrow('value.aboveOne at coefficient');
    expect(() => compositeCoefficient([{ coefficient: 0.5, area: -1 }])).toThrow('value.negative at area');
    expect(() => rationalFlow(0.5, -1, 1)).toThrow('value.negative at intensity');
    expect(() => rationalFlow(0.5, 1, -1)).toThrow('value.negative at area');
    expect(() => curveNumberRunoff(-1, 80)).toThrow('value.negative at rain');
    expect(travelTime([{ length: 10, velocity: 2 }])).toBe(5);
  });
  it('runoff begins with the first rain beyond Ia, and low numbers are numbers', () => {
    expectNear(curveNumberRunoff(12.7 + 0.5, 80), 0.25 / (13.2 + 0.8 * 63.5), 1e-12);
    expect(curveNumberRunoff(12.7, 80)).toBe(0);
    expect(curveNumberRunoff(100, 0.5)).toBe(0);
  });
});

describe('recovery to the second', () => {
  // 24 steps of this length are a quarter of a second short of the full reset.
  const short = recoveryOf(3599.99);
  const left = Math.exp((-24 * 3599.99) / 28800);
  it('is not whole before 24 h, from the start of a series and after rain, and dry steps shed nothing', () => {
    const loss = volumetricLoss([...zeros(3), 3, ...zeros(24), 3], 1, 2, short);
    expectNear(loss.at(-1) ?? NaN, 1 + 2 * left, 1e-9);
    expect(loss.slice(4, 28)).toEqual(zeros(24));
    const number = curveNumberExcess([...zeros(3), 50, ...zeros(24), 50], 80, short);
    expectNear(number.at(-1) ?? NaN, curveNumberRunoff(50 * left + 50, 80) - curveNumberRunoff(50 * left, 80), 1e-9);
    expect(number.slice(4, 28)).toEqual(zeros(24));
    const soil = { conductivity: 2e-6, suctionDeficit: 0.05 };
    const once = greenAmptExcess(soil, [2e-5], 3599.99, short)[0] ?? NaN;
    const twice = greenAmptExcess(soil, [...zeros(3), 2e-5, ...zeros(24), 2e-5], 3599.99, short);
    expect(twice.at(-1)).toBeGreaterThan(once);
    expect(twice.slice(4, 28)).toEqual(zeros(24));
    const horton = { initialRate: 2e-5, finalRate: 2e-6, decay: 2 / HOUR };
    const first = hortonExcess(horton, [3e-5], 3599.99, short)[0] ?? NaN;
    const again = hortonExcess(horton, [...zeros(3), 3e-5, ...zeros(24), 3e-5], 3599.99, short);
    expect(again.at(-1)).toBeGreaterThan(first);
    expect(again.slice(4, 28)).toEqual(zeros(24));
  });
});

describe('infiltration at its edges', () => {
  it('Green-Ampt names what is wrong', () => {
    expect(() => pondedInfiltration({ conductivity: 0, suctionDeficit: 0.1 }, 1)).toThrow('value.notPositive at conductivity');
    expect(() => pondedInfiltration({ conductivity: 1, suctionDeficit: -0.1 }, 1)).toThrow('value.negative at suctionDeficit');
  });
  it('Green-Ampt holds its own equation from a film to a well', () => {
    for (const s of [1e-6, 0.02, 0.3, 1, 5]) {
      for (const time of [1, 3600, 1e6]) {
        const depth = pondedInfiltration({ conductivity: 2e-6, suctionDeficit: s }, time);
        expectRatio(depth - s * Math.log1p(depth / s), 2e-6 * time, 1e-6);
      }
    }
  });
  const soil = { initialRate: 2e-5, finalRate: 2e-6, decay: 2 / HOUR };
  it('Horton: light rain uses up what it fills, by its equivalent time', () => {
    const [, excess] = hortonExcess(soil, [1e-5, 3e-5], 600);
    let [low, high] = [0, 600];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (hortonDepth(soil, middle) < 6e-3) low = middle;
      else high = middle;
    }
    expectRatio(excess ?? NaN, 3e-5 - (hortonDepth(soil, low + 600) - 6e-3) / 600, 1e-6);
    expect(hortonExcess(soil, [0, 3e-5], 600)[1]).toBe(hortonExcess(soil, [3e-5], 600)[0]);
    // Rain that the soil just takes leaves nothing.
    expectNear(hortonExcess(soil, [hortonDepth(soil, 600) / 600], 600)[0] ?? NaN, 0, 1e-18);
  });
  it('Horton names what is wrong', () => {
    expect(() => hortonRate(soil, -1)).toThrow('value.negative at time');
    expect(() => hortonDepth(soil, -1)).toThrow('value.negative at time');
    for (const run of [(s: typeof soil) => hortonRate(s, 1), (s: typeof soil) => hortonDepth(s, 1), (s: typeof soil) => hortonExcess(s, [], 1)]) {
      expect(() => run({ ...soil, decay: 0 })).toThrow('value.notPositive at decay');
      expect(() => run({ ...soil, finalRate: -1 })).toThrow('value.negative at finalRate');
      expect(() => run({ ...soil, initialRate: 1e-6 })).toThrow('value.negative at fall');
    }
  });
});

describe('hydrographs at their edges', () => {
  it('shapes between 0.01 and 20, factors above nothing', () => {
    for (const m of [0.0103, 19.9]) expectRatio(shapeOfPeakRate(peakRateFactor(m)), m, 1e-6);
    expect(() => shapeOfPeakRate(peakRateFactor(20.5))).toThrow('root.notBracketed');
    expect(() => shapeOfPeakRate(-1)).toThrow('value.notPositive at factor');
    expect(curvilinearOrdinate(5.5)).toBe(0);
  });
  it('a unit hydrograph takes the same shapes', () => {
    const unit = (shape: number): (() => unknown) => () => unitHydrograph({ area: 20000, timeOfConcentration: 1800, duration: 180, shape });
    for (const shape of [0.01, 20]) expect(unit(shape)).not.toThrow();
    for (const shape of [0.0099, 20.1, NaN]) expect(unit(shape)).toThrow('runoff.hydrographShape at shape');
  });
  it('a unit hydrograph ends with its tail, and one acre is 43 560 square feet', () => {
    expectNear(LEAST_AREA, 43560 * FOOT * FOOT, 1e-9);
    expect(unitHydrograph({ area: 20000, timeOfConcentration: 1800, duration: 180, shape: 3.7 })).toHaveLength(44);
    expect(unitHydrograph({ area: 20000, timeOfConcentration: 1800, duration: 180, shape: 1 }).length).toBeGreaterThan(100);
  });
  it('graphical peak: just over the first line it is between two lines; area, runoff and factor to rounding', () => {
    for (const type of ['I', 'IA', 'II', 'III'] as const) {
      const [at10, at20] = [unitPeakDischarge(type, HOUR, 0.1), unitPeakDischarge(type, HOUR, 0.105)];
      expect(Math.abs(at20 / at10 - 1)).toBeGreaterThan(1e-3);
    }
    expect(() => unitPeakDischarge('II', 0, 0.1)).toThrow('value.notPositive at timeOfConcentration');
    const site = { type: 'II', area: 1e6, timeOfConcentration: HOUR, curveNumber: 80, rain: 120, pondFactor: 0.9 } as const;
    const own = graphicalPeak(site);
    expectRatio(own.flow, unitPeakDischarge('II', HOUR, own.share) * 1e6 * (own.runoff / 1000) * 0.9, 1e-12);
  });
  it("Izzard's form to rounding, and its end at 500", () => {
    const [inches, feet, slope, c] = [2, 100, 0.01, 0.012];
    const q = (inches * feet) / 43200;
    const minutes = (((0.0007 * inches + c) / Math.cbrt(slope)) * feet * Math.cbrt(q)) / (30 * q);
    expectRatio(izzardTime(c, feet * FOOT, slope, (inches * INCH) / HOUR) / MINUTE, minutes, 1e-9);
    expect(() => izzardTime(c, 250.25 * FOOT, slope, (2 * INCH) / HOUR)).toThrow('runoff.outsideTests');
  });
});

describe('kinematic plane at its edges', () => {
  const plane = { length: 20, slope: 0.01, roughness: 0.05 };
  const alpha = Math.sqrt(0.01) / 0.05;

  it('one cell and one step up to 20 s: depth and outflow hold h + alpha*t/L*h^(5/3) = i*t', () => {
    for (const step of [5, 20]) {
      for (const rain of [1e-6, 5e-5, 1e-3]) {
        const { outflow, stored } = kinematicPlane(plane, [rain], step, 1);
        const depth = stored / 20;
        expectRatio(depth + ((alpha * step) / 20) * Math.pow(depth, 5 / 3), rain * step, 1e-6);
        expectRatio((outflow[0] ?? NaN) * step, (rain * step - depth) * 20, 1e-9);
      }
    }
  });
  it('longer steps are divided: 21 s in two, 60 s in three', () => {
    const halves = kinematicPlane(plane, [5e-5, 5e-5], 10.5, 4);
    const whole = kinematicPlane(plane, [5e-5], 21, 4);
    expectNear(whole.outflow[0] ?? NaN, ((halves.outflow[0] ?? NaN) + (halves.outflow[1] ?? NaN)) / 2, 1e-15);
    const thirds = kinematicPlane(plane, [5e-5, 5e-5, 5e-5], 20, 4);
    expectNear(kinematicPlane(plane, [5e-5], 60, 4).stored, thirds.stored, 1e-15);
  });
  it('runs on after the rain, less and less, and is dry before it', () => {
    const { outflow } = kinematicPlane(plane, [0, 0, ...new Array<number>(10).fill(5e-5), ...zeros(20)], 60);
    expect(outflow.slice(0, 2)).toEqual([0, 0]);
    for (let i = 12; i < 32; i += 1) {
      expect(outflow[i]).toBeGreaterThan(0);
      expect(outflow[i]).toBeLessThan(outflow[i - 1] ?? NaN);
    }
    expect(kinematicPlane(plane, zeros(5), 60)).toEqual({ outflow: zeros(5), stored: 0 });
    expect(kinematicPlane(plane, [1], 60).outflow[0]).toBeGreaterThan(0);
  });
  it('has ten cells unless told, and a least slope of 0.1 %', () => {
    expect(kinematicPlane(plane, [5e-5, 5e-5], 60)).toEqual(kinematicPlane(plane, [5e-5, 5e-5], 60, 10));
    expect(LEAST_PLANE_SLOPE).toBe(0.001);
    expectRatio(planeEquilibriumTime({ ...plane, slope: 0 }, 1e-5), planeEquilibriumTime({ ...plane, slope: 0.001 }, 1e-5), 1e-12);
  });
  it('names what is wrong', () => {
    expect(() => kinematicPlane({ ...plane, length: 0 }, [], 60)).toThrow('value.notPositive at length');
    expect(() => kinematicPlane({ ...plane, roughness: 0 }, [], 60)).toThrow('value.notPositive at roughness');
    expect(() => kinematicPlane({ ...plane, slope: -1 }, [], 60)).toThrow('value.negative at slope');
    expect(() => kinematicPlane(plane, [], 0)).toThrow('value.notPositive at step');
    expect(() => kinematicPlane(plane, [], 60, 0)).toThrow('value.notPositive at cells');
    expect(() => kinematicPlane(plane, [NaN], 60)).toThrow('value.notFinite at excess/0');
    expect(() => kinematicPlane(plane, [0, Infinity], 60)).toThrow('value.notFinite at excess/1');
    expect(() => kinematicPlane(plane, [1e307], 60)).toThrow('plane.notComputable at excess/0');
    expect(() => planeEquilibriumTime({ ...plane, length: 0 }, 1)).toThrow('value.notPositive at length');
    expect(() => planeEquilibriumTime(plane, 0)).toThrow('value.notPositive at excess');
  });
});
