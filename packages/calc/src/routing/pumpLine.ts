import type { Basin, DesignDocument, DischargeLine, Outlet, Part, Pump, WeepHole } from '../document/document.ts';
import { dutyPoint, type DischargePath, type Duty } from '../pump/dutyPoint.ts';
import { lineVolume } from '../pump/drainBack.ts';
import { lineEquivalentLength } from '../pump/fittings.ts';
import { pumpCurve, type PumpCurve } from '../pump/pumpCurve.ts';
import { weepHoleFlow } from '../pump/weepHole.ts';
import { DocumentError } from '../document/error.ts';
import { partsOf, pathFrom } from './pathParts.ts';

/** A pump with everything that its water passes. */
export interface PumpLine {
  readonly pump: Pump;
  readonly basin: Basin;
  readonly line: DischargeLine;
  readonly outlet: Outlet;
  readonly checkValve: boolean;
  readonly weep: WeepHole | null;
  readonly curve: PumpCurve;
  readonly equivalentLength: number;
  /** Check valve that its water passes, null without one; and what it adds to the equivalent length [m]. */
  readonly valve: string | null;
  readonly valveLength: number;
  readonly lineVolume: number;
  /** Level that the water must be lifted to [m]: the outlet's water surface or a higher point of the line. */
  readonly liftLevel: number;
}

const find = <K extends Part['kind']>(path: readonly Part[], kind: K): Extract<Part, { readonly kind: K }> | undefined =>
  path.find((part): part is Extract<Part, { readonly kind: K }> => part.kind === kind);

export function pumpLineOf(document: DesignDocument, pump: Pump): PumpLine {
  const path = pathFrom(document, pump.id);
  const line = find(path, 'dischargeLine');
  const outlet = find(path, 'outlet');
  const basin = partsOf(document, 'basin').find((part) => part.id === pump.basin);
  if (line === undefined || outlet === undefined || basin === undefined) throw new DocumentError('document.noOutlet', '/system/parts', { id: pump.id });
  const valve = find(path, 'checkValve');
  const shut = valve?.present === true ? valve : null;
  const fittings = shut === null ? line.fittings : [...line.fittings, { count: 1, equivalentLength: shut.equivalentLength }];
  return {
    pump, basin, line, outlet, curve: pumpCurve(pump.curve), checkValve: shut !== null, valve: shut?.id ?? null, valveLength: shut?.equivalentLength ?? 0,
    weep: partsOf(document, 'weepHole').find((part) => part.pump === pump.id) ?? null,
    equivalentLength: lineEquivalentLength(line.length, fittings), lineVolume: lineVolume(line.innerDiameter, line.length),
    liftLevel: Math.max(outlet.waterLevel, outlet.level, line.highPoint ?? -Infinity),
  };
}

/** Path of the water at a basin level; a line that is not yet full has part of its lift and friction. */
export function dischargePath(item: PumpLine, basinLevel: number, filled = 1, hazenWilliamsC = item.line.hazenWilliamsC): DischargePath {
  return {
    staticHead: filled * (item.liftLevel - basinLevel), equivalentLength: filled * item.equivalentLength,
    innerDiameter: item.line.innerDiameter, hazenWilliamsC, openingHead: filled * item.outlet.openingHead,
  };
}

export function dutyAt(item: PumpLine, basinLevel: number): Duty {
  return dutyPoint(item.curve, dischargePath(item, basinLevel));
}

/** Flow that the weep hole gives back at a duty head [m3/s]. */
export function weepAt(item: PumpLine, head: number): number {
  return item.weep === null ? 0 : weepHoleFlow(item.weep.diameter, Math.max(0, head));
}
