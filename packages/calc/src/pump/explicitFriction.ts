import { requireNotNegative, requirePositive } from '../common/require.ts';
import { log } from '../math/log.ts';
import { pow } from '../math/pow.ts';

const LN10 = 2.302585092994046;

/**
 * Friction factor, explicit (Haaland): a cross-check of Colebrook.
 *
 *   1/sqrt(f) = -1.8*log10((e/(3.7*D))^1.11 + 6.9/Re)
 *
 * @param reynolds Re [-], > 0
 * @param relativeRoughness e/D [-], >= 0
 * @returns f, Darcy [-]
 * Limits: turbulent flow; within 2 % of Colebrook
 * Source: Haaland 1983, J. Fluids Engineering 105, 89-90
 * Checked against: fixtures/pump/darcyWeisbach.json, ten digits
 */
export function haaland(reynolds: number, relativeRoughness: number): number {
  requirePositive({ reynolds });
  requireNotNegative({ relativeRoughness });
  const inverse = (-1.8 * log(pow(relativeRoughness / 3.7, 1.11) + 6.9 / reynolds)) / LN10;
  return 1 / (inverse * inverse);
}

/**
 * Friction factor of a smooth pipe, explicit (Blasius).
 *
 *   f = 0.3164 / Re^0.25
 *
 * @param reynolds Re [-], > 0
 * @returns f, Darcy [-]
 * Limits: Re 4000 to 1e5
 * Source: Blasius 1913
 * Checked against: fixtures/pump/darcyWeisbach.json, ten digits
 */
export function blasius(reynolds: number): number {
  requirePositive({ reynolds });
  return 0.3164 / Math.sqrt(Math.sqrt(reynolds));
}
