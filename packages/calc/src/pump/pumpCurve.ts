import { CalcProblem } from '../common/problem.ts';
import { at, requireNotNegative } from '../common/require.ts';
import type { CurvePoint } from '../document/document.ts';

export type CurveReading = 'pchip' | 'straight';

/** A datasheet curve made ready: flow rising, head falling. */
export interface PumpCurve {
  readonly flows: readonly number[];
  readonly heads: readonly number[];
  readonly slopes: readonly number[];
  readonly reading: CurveReading;
  /** Greatest flow and greatest head of the datasheet; the curve means nothing beyond. */
  readonly runOut: number;
  readonly shutOff: number;
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}

function pchipSlopes(flows: readonly number[], heads: readonly number[]): number[] {
  const n = flows.length;
  const h = flows.slice(1).map((q, i) => q - at(flows, i));
  const d = heads.slice(1).map((head, i) => (head - at(heads, i)) / at(h, i));
  if (n === 2) return [at(d, 0), at(d, 0)];
  const slopes = [endSlope(at(h, 0), at(h, 1), at(d, 0), at(d, 1))];
  for (let i = 1; i < n - 1; i += 1) {
    const [h0, h1, d0, d1] = [at(h, i - 1), at(h, i), at(d, i - 1), at(d, i)];
    const w0 = 2 * h1 + h0;
    const w1 = h1 + 2 * h0;
    slopes.push(d0 * d1 <= 0 ? 0 : (w0 + w1) / (w0 / d0 + w1 / d1));
  }
  slopes.push(endSlope(at(h, n - 2), at(h, n - 3), at(d, n - 2), at(d, n - 3)));
  return slopes;
}

/**
 * A pump's head over its flow, through the points of its datasheet.
 *
 * @param points flow [m3/s] and head [m], at least two, in either order along the curve
 * @param reading monotone cubic (PCHIP) or straight lines between the points
 * @returns curve for headAtFlow and flowAtHead
 * Limits: throws pump.curveRises where head does not fall with flow (such a curve has two flows at one head)
 * Source: Fritsch and Butland 1984, SIAM J. Sci. Stat. Comput. 5, 300-304 (weighted harmonic mean)
 * Checked against: fixtures/pump/dutyPoint.json
 */
export function pumpCurve(points: readonly CurvePoint[], reading: CurveReading = 'pchip'): PumpCurve {
  if (points.length < 2) throw new CalcProblem('pump.curveTooShort', 'curve', { count: points.length });
  points.forEach((p, i) => requireNotNegative({ [`curve/${i}/flow`]: p.flow, [`curve/${i}/head`]: p.head }));
  const backward = at(points, 0).flow > at(points, points.length - 1).flow;
  const ordered = backward ? [...points].reverse() : points;
  const flows = ordered.map((p) => p.flow);
  const heads = ordered.map((p) => p.head);
  for (let i = 1; i < flows.length; i += 1) {
    const path = `curve/${backward ? points.length - 1 - i : i}`;
    if (at(flows, i) <= at(flows, i - 1)) throw new CalcProblem('pump.curveFlowNotRising', path, { flow: at(flows, i) });
    if (at(heads, i) >= at(heads, i - 1)) throw new CalcProblem('pump.curveRises', path, { flow: at(flows, i), head: at(heads, i) });
  }
  const slopes = reading === 'pchip' ? pchipSlopes(flows, heads) : [];
  return { flows, heads, slopes, reading, runOut: at(flows, flows.length - 1), shutOff: at(heads, 0) };
}

/** Head [m] at a flow [m3/s]; the last slope goes on beyond the ends of the datasheet. */
export function headAtFlow(curve: PumpCurve, flow: number): number {
  const last = curve.flows.length - 2;
  let i = 0;
  while (i < last && flow > at(curve.flows, i + 1)) i += 1;
  const q0 = at(curve.flows, i);
  const h = at(curve.flows, i + 1) - q0;
  const y0 = at(curve.heads, i);
  const y1 = at(curve.heads, i + 1);
  const t = (flow - q0) / h;
  if (curve.reading === 'straight') return y0 + (y1 - y0) * t;
  const m0 = at(curve.slopes, i);
  const m1 = at(curve.slopes, i + 1);
  if (t < 0) return y0 + m0 * (flow - q0);
  if (t > 1) return y1 + m1 * (flow - q0 - h);
  const s = 1 - t;
  return y0 * (1 + 2 * t) * s * s + y1 * t * t * (3 - 2 * t) + h * t * s * (m0 * s - m1 * t);
}
