import { requireFinite, requireNotNegative } from '../common/require.ts';

/** What the crew saw beside a pump-down; null for what was not looked at. */
export interface PumpDownSigns {
  /** Flow is right with the line taken off at the union. */
  readonly rightWithoutLine: boolean | null;
  /** Water comes back into the basin after the pump stops. */
  readonly runsBack: boolean | null;
  /** Water enters the basin while the pump is off. */
  readonly inflowWhileOff: boolean | null;
  /** Emitter opens all the way and stands clear. */
  readonly outletClear: boolean | null;
  /** Voltage at the pump while it runs over the nameplate [-]. */
  readonly voltageShare: number | null;
}

export type PumpDownCause = 'lineOrOutlet' | 'outletBlocked' | 'checkValveLeaks' | 'inflow' | 'lowVoltage' | 'pumpOrInlet' | 'marksOrStaticHead';

export interface PumpDownAdvice {
  /** Causes that fit, the likeliest first. */
  readonly causes: readonly PumpDownCause[];
  /** What to look at next: signs not yet known that tell the causes apart. */
  readonly lookAt: readonly (keyof PumpDownSigns)[];
}

/** Least share of the nameplate voltage at which a motor gives its curve. Source: NEMA MG 1, 90 %, from memory. */
export const LEAST_VOLTAGE = 0.9;

const SIGNS: readonly (keyof PumpDownSigns)[] = ['inflowWhileOff', 'runsBack', 'voltageShare', 'outletClear', 'rightWithoutLine'];

function lowCauses(signs: PumpDownSigns): PumpDownCause[] {
  const causes: PumpDownCause[] = [];
  if (signs.inflowWhileOff === true) causes.push('inflow');
  if (signs.voltageShare !== null && signs.voltageShare < LEAST_VOLTAGE) causes.push('lowVoltage');
  if (signs.outletClear === false) causes.push('outletBlocked');
  if (signs.rightWithoutLine === true) causes.push('lineOrOutlet');
  if (signs.runsBack === true) causes.push('checkValveLeaks');
  if (signs.rightWithoutLine === false) causes.push('pumpOrInlet');
  return causes;
}

/**
 * What a pump-down off its prediction points to, and which look tells the causes apart.
 *
 * @param deviation measured over predicted less one [-]
 * @param tolerance deviation that needs no cause [-], >= 0
 * @param signs seen on site
 * @returns causes that fit and what to look at next; nothing for a run within tolerance
 * Limits: more flow than predicted is a wrong mark or a lower static head, never a better pump
 * Source: ours; order after how often each is found, common practice
 * Checked against: causes.test.ts, each sign alone
 */
export function pumpDownCauses(deviation: number, tolerance: number, signs: PumpDownSigns): PumpDownAdvice {
  requireFinite({ deviation });
  requireNotNegative({ tolerance, voltageShare: signs.voltageShare ?? 0 });
  if (Math.abs(deviation) <= tolerance) return { causes: [], lookAt: [] };
  if (deviation > 0) return { causes: ['marksOrStaticHead'], lookAt: [] };
  const causes = lowCauses(signs);
  return { causes, lookAt: causes.length > 0 ? [] : SIGNS.filter((sign) => signs[sign] === null) };
}
