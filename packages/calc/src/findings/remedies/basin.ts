import { collarFor } from '../../basin/flotation.ts';
import { INCH } from '../../common/constants.ts';
import type { Basin, DesignDocument } from '../../document/document.ts';
import { EvaluationContext } from '../../evaluate/context.ts';
import { basinResults } from '../../evaluate/pumpedParts.ts';
import type { Remedy } from '../../results/results.ts';
import { partsOf } from '../../routing/pathParts.ts';
import { judge } from '../limit.ts';
import type { Limits } from '../overrides.ts';
import { fieldsOf, firstThat, remedyOf, setFields, type Step } from '../patch.ts';
import { roundDown } from './round.ts';

/** Collar that holds a basin at the high water table and with water at grade, to the next liter [m3]. */
export function collarNeeded(document: DesignDocument, basin: Basin, limits: Limits): number {
  const { soil } = document.site;
  const atGrade = collarFor(basin, Math.max(soil.gradeLevel, basin.floorLevel + 0.01), limits.B7Grade.pass);
  const atTable = soil.seasonalHighWaterTable === null ? 0 : collarFor(basin, soil.seasonalHighWaterTable, limits.B7Table.pass);
  return Math.floor(Math.max(atGrade, atTable) * 1000 + 1) / 1000;
}

/** A larger basin needs more weight to stay down. */
function collarSteps(document: DesignDocument, basin: Basin, larger: Basin, limits: Limits): Step[] {
  const collarVolume = collarNeeded(document, larger, limits);
  return collarVolume > basin.collarVolume ? fieldsOf(document, basin, { collarVolume }) : [];
}

/** Floor and switching levels lower by one drop, the lid where it is. Null for a basin with calibrated marks: another basin has other marks. */
export function deeperBasin(document: DesignDocument, basin: Basin, drop: number, limits: Limits): Step[] | null {
  if (basin.marks.length > 0) return null;
  const lower = {
    floorLevel: roundDown(basin.floorLevel - drop), offLevel: roundDown(basin.offLevel - drop), onLevel: roundDown(basin.onLevel - drop),
    alarmLevel: roundDown(basin.alarmLevel - drop),
  };
  return [...fieldsOf(document, basin, lower), ...collarSteps(document, basin, { ...basin, ...lower }, limits)];
}

const widths: readonly number[] = [18, 24, 30, 36, 42, 48, 60, 72].map((inches) => inches * INCH);

/** The next basin width that starts seldom enough and runs long enough. */
export function widerBasin(document: DesignDocument, basin: Basin, limits: Limits): Remedy | null {
  if (basin.marks.length > 0) return null;
  const index = partsOf(document, 'basin').findIndex(({ id }) => id === basin.id);
  const candidates = widths.filter((width) => width > basin.diameter + 1e-4).map((diameter) => {
    const patch = [...fieldsOf(document, basin, { diameter }), ...collarSteps(document, basin, { ...basin, diameter }, limits)];
    return remedyOf('remedy.widerBasin', { basin: basin.name, diameter }, patch);
  });
  return firstThat(document, candidates, (left) => {
    const result = basinResults(new EvaluationContext(left))[index]!;
    return judge(result.worstStartsPerHour, limits.B1) === 'pass' && judge(result.aloneRunTime, limits.B2) === 'pass';
  });
}

export function largerCollar(document: DesignDocument, basin: Basin, limits: Limits): Remedy {
  const volume = collarNeeded(document, basin, limits);
  return setFields(document, basin, { collarVolume: volume }, 'remedy.largerCollar', { basin: basin.name, volume });
}

/** Least height between stop and start that can be switched [m]. Source: ours. */
const leastStroke = 0.05;

/** Stop level raised to a height above the floor; null when the start level leaves no room. */
export function raiseOff(document: DesignDocument, basin: Basin, above: number): Remedy | null {
  const offLevel = basin.floorLevel + above;
  if (basin.onLevel - offLevel < leastStroke) return null;
  return setFields(document, basin, { offLevel }, 'remedy.raiseOff', { basin: basin.name, above });
}

/** Usual height of the alarm over the start level [m]. Source: ours, the middle of 3 to 6 in. */
const alarmHeight = 4 * INCH;

/** Start level below the inlet, the alarm with it; null when the stop level leaves no room. */
export function lowerOn(document: DesignDocument, basin: Basin, below: number): Remedy | null {
  const onLevel = basin.inletInvert - below;
  if (onLevel - basin.offLevel < leastStroke) return null;
  const alarmLevel = Math.min(basin.inletInvert, onLevel + alarmHeight);
  return setFields(document, basin, { onLevel, alarmLevel }, 'remedy.lowerOn', { basin: basin.name, below });
}

export function setAlarm(document: DesignDocument, basin: Basin): Remedy {
  const over = Math.max(0, Math.min(alarmHeight, basin.inletInvert - basin.onLevel));
  return setFields(document, basin, { alarmLevel: basin.onLevel + over }, 'remedy.setAlarm', { basin: basin.name, over });
}
