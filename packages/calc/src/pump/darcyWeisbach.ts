import { GRAVITY, KINEMATIC_VISCOSITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';
import { log } from '../math/log.ts';
import { pow } from '../math/pow.ts';

const LN10 = 2.302585092994046;
/** Below it the flow is laminar. Source: handbooks of pipe flow. */
const LAMINAR_TO = 2000;
/** Roughness of drawn plastic [m]. Source: handbooks, 0.0015 mm. */
export const PLASTIC_ROUGHNESS = 1.5e-6;

function log10(x: number): number {
  return log(x) / LN10;
}

/**
 * Friction factor, explicit (Swamee and Jain).
 *
 *   f = 0.25 / (log10(e/(3.7*D) + 5.74/Re^0.9))^2
 *
 * @param reynolds Re [-], > 0
 * @param relativeRoughness e/D [-], >= 0
 * @returns f, Darcy [-]
 * Source: Swamee and Jain 1976, J. Hydraulics Division ASCE 102
 * Checked against: fixtures/pump/darcyWeisbach.json, 1e-9
 */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  requirePositive({ reynolds });
  requireNotNegative({ relativeRoughness });
  const root = log10(relativeRoughness / 3.7 + 5.74 / pow(reynolds, 0.9));
  return 0.25 / (root * root);
}

/**
 * Friction factor of a full pipe (Colebrook, iterated; laminar below Re 2000).
 *
 *   1/sqrt(f) = -2*log10(e/(3.7*D) + 2.51/(Re*sqrt(f)))
 *
 * @param reynolds Re [-], > 0
 * @param relativeRoughness e/D [-], >= 0
 * @returns f, Darcy [-]
 * Source: Colebrook 1939, J. Institution of Civil Engineers 11
 * Checked against: fixtures/pump/darcyWeisbach.json (open-source library fluids 1.3.1), 1e-9
 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  requirePositive({ reynolds });
  requireNotNegative({ relativeRoughness });
  if (reynolds < LAMINAR_TO) return 64 / reynolds;
  let inverse = 1 / Math.sqrt(swameeJain(reynolds, relativeRoughness));
  for (let i = 0; i < 60; i += 1) {
    const next = -2 * log10(relativeRoughness / 3.7 + (2.51 * inverse) / reynolds);
    const settled = Math.abs(next - inverse) <= 1e-15 * next;
    inverse = next;
    if (settled) break;
  }
  return 1 / (inverse * inverse);
}

/**
 * Friction of a full pipe, head lost per length.
 *
 *   S = f * v^2 / (2*g*D)
 *
 * @param flow Q [m3/s], >= 0
 * @param diameter D [m], > 0
 * @param roughness e [m], >= 0
 * @param viscosity kinematic [m2/s]
 * @returns S [m/m]
 * Source: Darcy and Weisbach, in handbooks of pipe flow
 * Checked against: fixtures/pump/darcyWeisbach.json, five pipes, 0.1 %
 */
export function darcyWeisbachSlope(flow: number, diameter: number, roughness: number = PLASTIC_ROUGHNESS, viscosity: number = KINEMATIC_VISCOSITY): number {
  requireNotNegative({ flow, roughness });
  requirePositive({ diameter, viscosity });
  if (flow === 0) return 0;
  const velocity = flow / ((PI / 4) * diameter * diameter);
  const f = colebrook((velocity * diameter) / viscosity, roughness / diameter);
  return (f * velocity * velocity) / (2 * GRAVITY * diameter);
}
