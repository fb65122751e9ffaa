import type { CurveSample, PumpResult } from '@yardfall/calc';
import type { DisplayList, Point } from '../display.ts';
import { label } from '../labels.ts';
import { GraphPen, roundStep, ticks } from './axis.ts';

export interface PumpGraphOptions {
  readonly width: number;
  readonly height: number;
  /** Flow found by the proof test with its uncertainty [m3/s] and the head that it stands for [m]. */
  readonly measured: { readonly flow: number; readonly uncertainty: number; readonly head: number } | null;
  /** Curves of other pumps that might stand here, by name. */
  readonly others: readonly { readonly name: string; readonly curve: readonly CurveSample[] }[];
  /** Size of one axis unit, so that ticks are round in the reader's units: m3/s and m. */
  readonly flowUnit: number;
  readonly headUnit: number;
}

/** One US gallon a minute, and one foot. */
const defaults: PumpGraphOptions = { width: 640, height: 420, measured: null, others: [], flowUnit: 0.003785411784 / 60, headUnit: 0.3048 };

/** Pump curve against the line at start and stop level; x in m3/s, y in metres of water. */
export function pumpGraph(result: PumpResult, given: Partial<PumpGraphOptions> = {}): DisplayList {
  const options = { ...defaults, ...given };
  const pen = new GraphPen();
  const curves = [result.pumpCurve, ...options.others.map(({ curve }) => curve)].flat();
  const most = Math.max(...curves.map(({ flow }) => flow), result.dutyAtOn.flow) * 1.04;
  const top = Math.max(...curves.map(({ head }) => head)) * 1.08;
  drawAxes(pen, most, top, options);
  drawRange(pen, result, most);
  const stop = result.systemCurve.filter(({ head }) => head <= top);
  // The line is the same at both levels: only the lift differs.
  const lift = result.dutyAtOn.staticHead - result.dutyAtOff.staticHead;
  const start = result.systemCurve.map(({ flow, head }) => ({ flow, head: head + lift })).filter(({ head }) => head <= top);
  options.others.forEach(({ name, curve }, at) => {
    pen.line('water', points(curve), 'thin', 'longDash');
    const place = curve[Math.floor((curve.length - 1) * (0.3 + 0.12 * (at % 4)))];
    if (place !== undefined) pen.text('water', [place.flow, place.head], label('drawing.value.name', { value: name }), 'right', 3);
  });
  pen.line('water', points(result.pumpCurve), 'bold', 'solid', result.part);
  pen.line('ink', points(stop), 'normal', 'solid', result.line);
  pen.line('ink', points(start), 'normal', 'dash', result.line);
  letter(pen, 'water', result.pumpCurve, 0.12, 'drawing.pumpCurve', 'above');
  letter(pen, 'ink', stop, 0.4, 'drawing.systemAtStop', 'above');
  letter(pen, 'ink', start, 0.4, 'drawing.systemAtStart', 'below');
  for (const duty of [result.dutyAtOff, result.dutyAtOn]) {
    pen.mark('ink', 'dutyPoint', [duty.flow, duty.head], result.part);
    pen.text('ink', [duty.flow, duty.head], label('drawing.duty', { flow: duty.flow, head: duty.head }), duty === result.dutyAtOff ? 'above' : 'below', 0.5);
  }
  if (options.measured !== null) drawMeasured(pen, options.measured, top);
  const across = (options.width < 480 ? 58 : 66) * (most / Math.max(options.width - 90, 1));
  const up = 46 * (top / (options.height - 66));
  return {
    name: 'pump', extent: { x0: -across, x1: most + across * 0.36, y0: -up, y1: top + up * 0.4 },
    exaggeration: null, breaks: [], items: pen.items, hits: [], handles: [],
  };
}

const points = (curve: readonly CurveSample[]): Point[] => curve.map(({ flow, head }): Point => [flow, head]);

function letter(
  pen: GraphPen, role: 'ink' | 'water', curve: readonly CurveSample[], share: number,
  code: 'drawing.pumpCurve' | 'drawing.systemAtStop' | 'drawing.systemAtStart', side: 'above' | 'below',
): void {
  const at = curve[Math.floor((curve.length - 1) * share)];
  if (at !== undefined) pen.text(role, [at.flow, at.head], label(code), side, 1);
}

function drawAxes(pen: GraphPen, most: number, top: number, options: PumpGraphOptions): void {
  const flowStep = roundStep(most / options.flowUnit, options.width < 480 ? 5 : 10) * options.flowUnit;
  const headStep = roundStep(top / options.headUnit, 6) * options.headUnit;
  for (const flow of ticks(0, most, flowStep)) {
    pen.line('ink', [[flow, 0], [flow, top]], 'hair');
    pen.text('faint', [flow, 0], label('drawing.flow', { flow }), 'below', 1, false);
  }
  for (const head of ticks(0, top, headStep)) {
    pen.line('ink', [[0, head], [most, head]], 'hair');
    pen.text('faint', [0, head], label('drawing.head', { head }), 'left', 1, false);
  }
  pen.line('ink', [[0, top], [0, 0], [most, 0]], 'thin');
  pen.text('faint', [most, -top * 0.065], label('drawing.axisFlow'), 'left', 1, false);
  pen.text('faint', [0, top], label('drawing.axisHead'), 'right', 1, false);
}

/** Between both duty points the pump works; the band is shaded under its curve. */
function drawRange(pen: GraphPen, result: PumpResult, most: number): void {
  const [low, high] = [result.dutyAtOff.flow, result.dutyAtOn.flow].sort((a, b) => a - b);
  if (low === undefined || high === undefined || high - low < most * 1e-4) return;
  const head = Math.max(result.dutyAtOff.head, result.dutyAtOn.head);
  const other = Math.min(result.dutyAtOff.head, result.dutyAtOn.head);
  pen.shape('ink', [[low, 0], [high, 0], [high, other], [low, head]], 'range');
  pen.text('faint', [(low + high) / 2, head * 0.25], label('drawing.dutyRange'), 'right', 2);
}

function drawMeasured(pen: GraphPen, measured: NonNullable<PumpGraphOptions['measured']>, top: number): void {
  const { flow, uncertainty, head } = measured;
  const cap = top * 0.015;
  pen.line('sound', [[flow - uncertainty, head], [flow + uncertainty, head]], 'bold');
  for (const end of [flow - uncertainty, flow + uncertainty]) pen.line('sound', [[end, head - cap], [end, head + cap]], 'normal');
  pen.mark('sound', 'measuredPoint', [flow, head]);
  pen.text('sound', [flow, head], label('drawing.measuredPoint', { flow, uncertainty }), 'left', 0.5);
}
