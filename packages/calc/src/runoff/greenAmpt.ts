import { requireNotNegative, requirePositive, requireShare } from '../common/require.ts';
import { log } from '../math/log.ts';
import { afterDryStep, type Recovery } from './storeRecovery.ts';

export interface GreenAmptSoil {
  /** Saturated conductivity K [m/s]. */
  readonly conductivity: number;
  /** Suction at the wetting front times the moisture deficit [m]. */
  readonly suctionDeficit: number;
}

const STEPS = 80;

/** psi * (1 - Se) * theta_e [m]. Source: Rawls, Brakensiek and Miller 1983, J. Hydraulic Engineering 109, 62-70. */
export function suctionDeficit(suction: number, effectivePorosity: number, effectiveSaturation: number): number {
  requireNotNegative({ suction });
  requireShare({ effectivePorosity, effectiveSaturation });
  return suction * (1 - effectiveSaturation) * effectivePorosity;
}

/** F with F - s*ln(1 + F/s) = target, by Newton steps from above. */
function solveDepth(target: number, s: number): number {
  if (target <= 0) return 0;
  if (s === 0) return target;
  let depth = target + Math.sqrt(2 * s * target) + s;
  for (let i = 0; i < STEPS; i += 1) {
    const f = depth - s * log(1 + depth / s) - target;
    const next = depth - (f * (s + depth)) / depth;
    if (!(next > 0)) break;
    const settled = Math.abs(next - depth) <= 1e-14 * next;
    depth = next;
    if (settled) break;
  }
  return depth;
}

/**
 * Depth of water taken by a soil that has stood under water from the start.
 *
 *   F - s*ln(1 + F/s) = K*t
 *
 * @param soil K [m/s], s = psi*(moisture deficit) [m]
 * @param time t [s]
 * @returns F [m]
 * Limits: one uniform soil, water only just deep enough to cover it
 * Source: Green and Ampt 1911; Chow, Maidment and Mays 1988, equation 4.3.6
 * Checked against: fixtures/runoff/infiltration.json, rows 17.1 and 17.4
 */
export function pondedInfiltration(soil: GreenAmptSoil, time: number): number {
  requirePositive({ conductivity: soil.conductivity });
  requireNotNegative({ suctionDeficit: soil.suctionDeficit, time });
  return solveDepth(soil.conductivity * time, soil.suctionDeficit);
}

/** Rate at which the soil takes water after a depth F [m/s]: K*(1 + s/F). Same source. */
export function infiltrationRate(soil: GreenAmptSoil, depth: number): number {
  requirePositive({ depth });
  return soil.conductivity * (1 + soil.suctionDeficit / depth);
}

/** Time [s] until steady rain [m/s] ponds: K*s/(i*(i - K)); Infinity when the rain never exceeds K. Mein and Larson 1973. */
export function pondingTime(soil: GreenAmptSoil, rain: number): number {
  requirePositive({ conductivity: soil.conductivity, rain });
  if (rain <= soil.conductivity) return Infinity;
  return (soil.conductivity * soil.suctionDeficit) / (rain * (rain - soil.conductivity));
}

/** Depth that ends a step begun at `start` [m] while water stands the whole time. */
function pondedStep(soil: GreenAmptSoil, start: number, time: number): number {
  const s = soil.suctionDeficit;
  const used = s === 0 ? start : start - s * log(1 + start / s);
  return solveDepth(used + soil.conductivity * time, s);
}

/**
 * Rain that the soil cannot take, step by step, with ponding found inside the step.
 *
 * @param soil K [m/s], s [m]
 * @param rain mean intensity of each step [m/s]
 * @param step [s]
 * @param recovery how the soil dries in steps without rain; null for one storm
 * @returns excess of each step [m/s]
 * Limits: what does not infiltrate in its step runs off; drying is a fading of the depth taken (ours, see storeRecovery)
 * Source: Chow, Maidment and Mays 1988, section 5.4, the step-by-step table
 * Checked against: fixtures/runoff/infiltration.json, row 17.2 (ponding times), and its own volume balance
 */
export function greenAmptExcess(soil: GreenAmptSoil, rain: readonly number[], step: number, recovery: Recovery | null = null): number[] {
  requirePositive({ conductivity: soil.conductivity, step });
  requireNotNegative({ suctionDeficit: soil.suctionDeficit });
  let depth = 0;
  let dry = 0;
  const drying = recovery === null ? null : { ...recovery, step };
  return rain.map((intensity) => {
    requireNotNegative({ intensity });
    if (intensity === 0 && drying !== null) {
      dry += step;
      depth = afterDryStep(depth, dry, drying);
      return 0;
    }
    dry = 0;
    const supply = intensity * step;
    const taken = infiltrated(soil, depth, intensity, step);
    depth += taken;
    return (supply - taken) / step;
  });
}

/** Depth taken in a step: all of the rain until water stands on the soil. */
export function infiltrated(soil: GreenAmptSoil, depth: number, intensity: number, step: number): number {
  const supply = intensity * step;
  if (intensity <= soil.conductivity) return supply;
  const atPonding = (soil.conductivity * soil.suctionDeficit) / (intensity - soil.conductivity);
  if (depth + supply <= atPonding) return supply;
  const before = Math.max(atPonding - depth, 0) / intensity;
  return Math.min(pondedStep(soil, Math.max(depth, atPonding), step - before) - depth, supply);
}
