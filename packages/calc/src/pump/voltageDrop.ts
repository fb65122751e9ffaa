import { FOOT } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

/** Resistance of solid uncoated copper at 75 C by wire size [ohm/m]. Source: NEC chapter 9 table 8 (ohm per 1000 ft 3.07, 1.93, 1.21, 0.764), from memory. */
export const COPPER_RESISTANCE: Readonly<Record<string, number>> = {
  '14': 3.07 / (1000 * FOOT), '12': 1.93 / (1000 * FOOT), '10': 1.21 / (1000 * FOOT), '8': 0.764 / (1000 * FOOT),
};

/** Share of the voltage that a branch circuit may lose. Source: NEC 210.19, informational note: 3 %, from memory. */
export const BRANCH_DROP = 0.03;

/**
 * Voltage lost on the way to a single-phase pump.
 *
 *   dU = 2*I*r*L
 *
 * @param current I [A], >= 0
 * @param length L, one way [m], >= 0
 * @param wire size, AWG: "14", "12", "10", "8"
 * @param voltage U at the panel [V], > 0
 * @returns drop [V] and share of the voltage [-]
 * Limits: copper at 75 C, direct-current resistance, which for these sizes is that of 60 Hz; the connection itself is the electrician's; throws pump.unknownWire
 * Source: Ohm; NEC chapter 9 table 8, from memory
 * Checked against: worked by hand; K form 2*12.9*I*L/circular mils, 3 %
 */
export function voltageDrop(current: number, length: number, wire: string, voltage: number): { readonly drop: number; readonly share: number } {
  requireNotNegative({ current, length });
  requirePositive({ voltage });
  const resistance = COPPER_RESISTANCE[wire];
  if (resistance === undefined) throw new CalcProblem('pump.unknownWire', 'wire', { wire });
  const drop = 2 * current * resistance * length;
  return { drop, share: drop / voltage };
}

/** Thinnest wire that keeps the share [-] of a circuit; null when none of the table does. Same source. */
export function wireFor(current: number, length: number, voltage: number, share: number = BRANCH_DROP): string | null {
  requirePositive({ share });
  const sizes = Object.keys(COPPER_RESISTANCE).sort((a, b) => Number(b) - Number(a));
  return sizes.find((wire) => voltageDrop(current, length, wire, voltage).share <= share) ?? null;
}
