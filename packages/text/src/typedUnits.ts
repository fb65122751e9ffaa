import type { Units } from './languages.ts';
import type { NumericQuantity } from './format.ts';
import * as unit from './units.ts';

export interface TypedUnit {
  /** Sign behind the field. */
  readonly sign: string;
  /** Size of one in SI. */
  readonly size: number;
}

const same = (sign: string, size: number) => ({ us: { sign, size }, metric: { sign, size } });

/** The unit in which a reader types a quantity; what is not here is typed as a plain number. */
const units: Partial<Record<NumericQuantity, Record<Units, TypedUnit>>> = {
  height: { us: { sign: 'in', size: unit.inch }, metric: { sign: 'mm', size: 0.001 } },
  tape: { us: { sign: 'in', size: unit.inch }, metric: { sign: 'mm', size: 0.001 } },
  length: { us: { sign: 'ft', size: unit.foot }, metric: { sign: 'm', size: 1 } },
  slope: same('%', 0.01), percent: same('%', 0.01), seconds: same('s', 1), minutes: same('min', 60), hours: same('h', 3600),
  velocity: { us: { sign: 'ft/s', size: unit.foot }, metric: { sign: 'm/s', size: 1 } },
  stress: { us: { sign: 'lb/sq ft', size: unit.poundForcePerSquareFoot }, metric: { sign: 'Pa', size: 1 } },
  area: { us: { sign: 'sq ft', size: unit.squareFoot }, metric: { sign: 'm²', size: 1 } },
  flow: { us: { sign: 'gpm', size: unit.gallonPerMinute }, metric: { sign: 'L/s', size: unit.litre } },
  intensity: { us: { sign: 'in/h', size: unit.inchPerHour }, metric: { sign: 'mm/h', size: unit.millimetrePerHour } },
};

export function typedUnit(kind: NumericQuantity, system: Units): TypedUnit {
  return units[kind]?.[system] ?? { sign: '', size: 1 };
}
