import { requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { exp } from '../math/exp.ts';
import { afterDryStep, type Recovery } from './storeRecovery.ts';

export interface HortonSoil {
  /** Rate at the start f0 and in the end fc [m/s], and decay k [1/s]. */
  readonly initialRate: number;
  readonly finalRate: number;
  readonly decay: number;
}

function check(soil: HortonSoil): void {
  requirePositive({ decay: soil.decay });
  requireNotNegative({ finalRate: soil.finalRate, fall: soil.initialRate - soil.finalRate });
}

/**
 * Rate at which a wet soil takes water (Horton).
 *
 *   f = fc + (f0 - fc)*e^(-k*t)
 *
 * @param soil rates [m/s], decay [1/s]
 * @param time t under water [s]
 * @returns f [m/s]
 * Source: Horton 1940, Soil Science Society of America Proceedings 5, citation from memory
 * Checked against: fixtures/runoff/infiltration.json, Horton rows, every printed digit
 */
export function hortonRate(soil: HortonSoil, time: number): number {
  check(soil);
  requireNotNegative({ time });
  return soil.finalRate + (soil.initialRate - soil.finalRate) * exp(-soil.decay * time);
}

/** Depth taken under water by a time [m]: fc*t + (f0 - fc)*(1 - e^(-k*t))/k. Same source. */
export function hortonDepth(soil: HortonSoil, time: number): number {
  check(soil);
  requireNotNegative({ time });
  return soil.finalRate * time + ((soil.initialRate - soil.finalRate) * (1 - exp(-soil.decay * time))) / soil.decay;
}

/**
 * Rain that the soil cannot take, step by step. The rate follows the depth taken so far, not the clock,
 * so light rain at the start does not use up the soil.
 *
 * @param rain mean intensity of each step [m/s]
 * @param step [s]
 * @param recovery how the soil dries in steps without rain; null for one storm
 * @returns excess of each step [m/s]
 * Limits: drying is a fading of the time under water (ours, see storeRecovery)
 * Source: time-condensation of Horton's equation, Chow, Maidment and Mays 1988 section 5.4 in its idea
 * Checked against: ponded soil gives hortonDepth; volume balance
 */
export function hortonExcess(soil: HortonSoil, rain: readonly number[], step: number, recovery: Recovery | null = null): number[] {
  check(soil);
  requirePositive({ step });
  let time = 0;
  let dry = 0;
  const drying = recovery === null ? null : { ...recovery, step };
  return rain.map((intensity) => {
    requireNotNegative({ intensity });
    if (intensity === 0 && drying !== null) {
      dry += step;
      time = afterDryStep(time, dry, drying);
      return 0;
    }
    dry = 0;
    const from = hortonDepth(soil, time);
    const could = hortonDepth(soil, time + step) - from;
    const supply = intensity * step;
    if (supply >= could) {
      time += step;
      return (supply - could) / step;
    }
    if (supply > 0) time = bracketedRoot((t) => hortonDepth(soil, t) - from - supply, time, time + step, 1e-9 * step);
    return 0;
  });
}
