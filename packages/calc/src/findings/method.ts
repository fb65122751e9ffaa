import type { Catchment, DesignDocument } from '../document/document.ts';
import { peakIntensity } from '../evaluate/flows.ts';
import { depthAt } from '../rain/depthAt.ts';
import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { curveNumberRunoff } from '../runoff/curveNumber.ts';
import { planeEquilibriumTime } from '../runoff/kinematicPlane.ts';
import { graded, isMet, ruled, stated, type CheckInput } from './finding.ts';
import { remedyOf } from './patch.ts';

const setCatchment = (index: number, field: string, value: number | string) => [{ path: `/site/catchments/${index}/${field}`, value }];

/** An invented table, or one marked so, is not for building from. */
export function rainTable({ document }: CheckInput): Finding[] {
  const { table } = document.rain;
  if (!table.illustrative) return [];
  return [stated('rain', 'illustrative', 'caution', 'Ours: a table marked as illustrative is not for building from', { at: null, params: { table: table.name } })];
}

/** M: a curve number is poor where little runs off; a unit hydrograph is made for more than an acre. */
export function lossAndResponse(input: CheckInput): Finding[] {
  const { document } = input;
  const { table, storm, allowance, designReturnPeriod } = document.rain;
  const rain = depthAt(table, Math.min(storm.duration, table.durations[table.durations.length - 1]!), designReturnPeriod) * (1 + allowance);
  return document.site.catchments.flatMap((item, index) => {
    const found: Finding[] = [];
    if (item.loss.method === 'curveNumber') {
      const runoff = curveNumberRunoff(rain, item.loss.curveNumber) / 1000;
      found.push(...graded(input, 'M', 'MRunoff', runoff, { warn: 'littleRunoff', fail: 'littleRunoff' }, { at: item.id, params: { catchment: item.name, runoff, returnPeriod: designReturnPeriod } }));
    }
    if (item.response === 'unitHydrograph') {
      const remedy = () => remedyOf('remedy.kinematic', { catchment: item.name }, setCatchment(index, 'response', 'kinematic'));
      found.push(...graded(input, 'M', 'MUnit', item.area, { warn: 'smallForUnit', fail: 'smallForUnit' }, { at: item.id, params: { catchment: item.name, area: item.area }, remedy }));
    }
    return found;
  });
}

/** Time in which a plane answers the wettest five minutes; what runs off at once answers at once. */
function responseTime(document: DesignDocument, catchment: Catchment): number {
  const excess = catchment.coefficient * peakIntensity(document, document.rain.designReturnPeriod);
  if (catchment.response === 'instantaneous' || excess <= 0) return 0;
  return planeEquilibriumTime({ length: catchment.flowLength, slope: catchment.slope, roughness: catchment.roughness }, excess);
}

/** M: the NRCS storm types hide what a site feels that answers in minutes. */
export function stormType(input: CheckInput): Finding[] {
  const { document } = input;
  if (document.rain.storm.method === 'alternatingBlock') return [];
  const quickest = document.site.catchments.map((item) => responseTime(document, item)).reduce((least, time) => Math.min(least, time), Infinity);
  if (quickest === Infinity) return [];
  const remedy = () => remedyOf('remedy.alternatingBlock', {}, [{ path: '/rain/storm/method', value: 'alternatingBlock' }]);
  return graded(input, 'M', 'MResponse', quickest, { warn: 'quickSite', fail: 'quickSite' }, { at: null, params: { time: quickest }, remedy });
}

/** Curve number of open space in good condition, group D, and the coefficient of a lawn over a high water table. Source: TR-55 table 2-2a; coefficient ours. */
const wetCurveNumber = 80;
const wetCoefficient = 0.3;
const soft: readonly Catchment['surface'][] = ['lawn', 'bed'];

function wetLosses(catchment: Catchment, index: number) {
  if (catchment.loss.method === 'curveNumber' && catchment.loss.curveNumber < wetCurveNumber) {
    return remedyOf('remedy.wetGround', { catchment: catchment.name }, setCatchment(index, 'loss/curveNumber', wetCurveNumber));
  }
  if (catchment.loss.method === 'volumetric' && catchment.coefficient < wetCoefficient) {
    return remedyOf('remedy.wetGround', { catchment: catchment.name }, setCatchment(index, 'coefficient', wetCoefficient));
  }
  return null;
}

/** M: with the water table within two feet the ground is of group D, whatever its texture. */
export function wetGround(input: CheckInput): Finding[] {
  const { soil, catchments } = input.document.site;
  if (soil.seasonalHighWaterTable === null || isMet(input, 'MTable', soil.gradeLevel - soil.seasonalHighWaterTable)) return [];
  const depth = soil.gradeLevel - soil.seasonalHighWaterTable;
  return catchments.flatMap((catchment, index) => {
    const remedy = soft.includes(catchment.surface) ? wetLosses(catchment, index) : null;
    return remedy === null ? [] : [ruled(input, 'M', 'MTable', 'wetGround', 'caution', { at: catchment.id, params: { catchment: catchment.name, depth }, remedy: () => remedy })];
  });
}

/** M: a conductivity read from the texture is for screening. */
export function textureOnly({ document }: CheckInput): Finding[] {
  return partsOf(document, 'underdrain').filter(({ seepage }) => seepage?.fromTexture === true)
    .map((drain) => stated('M', 'fromTexture', 'caution', 'NRCS EFH chapter 14: conductivity from texture is for screening; a fifth to five times ours', { at: drain.id, params: { drain: drain.name } }));
}
