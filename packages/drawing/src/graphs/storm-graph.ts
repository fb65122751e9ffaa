import type { DesignDocument, StormRun } from '@yardfall/calc';
import type { DisplayList, Point } from '../display.ts';
import { label } from '../labels.ts';
import { GraphPen, put, roundStep, thin, ticks } from './axis.ts';
import type { Scale } from './axis.ts';
import { peakTime, windowOf } from './storm-window.ts';

export interface StormGraphOptions {
  readonly width: number;
  readonly height: number;
  /** Seconds of the run to show; null takes the time about the heaviest rain in which something moves. */
  readonly window: readonly [from: number, to: number] | null;
  /** Time at which the cursor stands [s of the run]. */
  readonly cursor: number | null;
  readonly sill: string | null;
}

const defaults: StormGraphOptions = { width: 1440, height: 420, window: null, cursor: null, sill: null };

interface Bands {
  readonly axis: number;
  readonly rain: readonly [number, number];
  readonly pond: readonly [number, number];
  readonly flow: readonly [number, number];
  readonly basin: readonly [number, number];
}

/** Room for the figures and the words under the time axis [px]. */
const axisRoom = 42;

/** Bands of the picture, as shares of its height: rain hangs from the top, levels and flows stand up from below. */
function bandsFor(height: number): Bands {
  const axis = axisRoom / height;
  const up = (share: number): number => axis + share * (1 - axis);
  return { axis, rain: [up(0.985), up(0.78)], pond: [up(0.46), up(0.73)], flow: [up(0.21), up(0.42)], basin: [up(0.02), up(0.15)] };
}

interface Plot {
  readonly run: StormRun;
  readonly pen: GraphPen;
  readonly from: number;
  readonly to: number;
  readonly peak: number;
  readonly time: Scale;
  readonly right: number;
  readonly bands: Bands;
}

/** Rain, flows, pond and basin of one storm over time; x is minutes from the heaviest rain, y a share of the height. */
export function stormGraph(document: DesignDocument, run: StormRun, given: Partial<StormGraphOptions> = {}): DisplayList {
  const options = { ...defaults, ...given };
  const [from, to] = options.window ?? windowOf(run);
  const peak = peakTime(run);
  const narrow = options.width < 600;
  const minutes = (seconds: number): number => (seconds - peak) / 60;
  const span = minutes(to) - minutes(from);
  const margin = span * (narrow ? 0.03 : 0.02);
  const time: Scale = { low: from, high: to, from: minutes(from), to: minutes(to) };
  const plot: Plot = { run, pen: new GraphPen(), from, to, peak, time, right: minutes(to), bands: bandsFor(options.height) };
  drawRain(plot);
  drawFlows(plot);
  drawLevels(plot, document, options);
  drawTimeAxis(plot, options);
  drawCursor(plot, options.cursor);
  return {
    name: 'storm', extent: { x0: minutes(from) - margin, x1: minutes(to) + margin, y0: 0, y1: 1 },
    exaggeration: null, breaks: [], items: plot.pen.items, hits: [], handles: [],
  };
}

function samples(plot: Plot, values: readonly number[], scale: Scale): Point[] {
  const { run, from, to, time } = plot;
  const points = values.flatMap((value, index): Point[] => {
    const at = run.start + index * run.step;
    return at >= from && at <= to ? [[put(time, at), put(scale, value)]] : [];
  });
  return thin(points, 500);
}

function drawRain({ run, pen, from, to, time, right, bands }: Plot): void {
  const most = Math.max(...run.intensity, 1e-9);
  const scale: Scale = { low: 0, high: most, from: bands.rain[0], to: bands.rain[1] };
  pen.line('ink', [[put(time, from), bands.rain[0]], [right, bands.rain[0]]], 'thin');
  for (const block of blocks(run)) {
    if (block.to <= from || block.from >= to || block.value <= 0) continue;
    const x0 = put(time, Math.max(block.from, from));
    const x1 = put(time, Math.min(block.to, to));
    const y = put(scale, block.value);
    pen.shape('water', [[x0, bands.rain[0]], [x1, bands.rain[0]], [x1, y], [x0, y]], 'water', true);
  }
  pen.text('water', [put(time, from), (bands.rain[0] + bands.rain[1]) / 2], label('drawing.peakIntensity', { intensity: most }), 'right', 0, false);
}

/** Neighboring samples of the same intensity are one bar. */
function blocks(run: StormRun): { from: number; to: number; value: number }[] {
  const result: { from: number; to: number; value: number }[] = [];
  run.intensity.forEach((value, index) => {
    const at = run.start + index * run.step;
    const last = result.at(-1);
    if (last !== undefined && last.value === value) last.to = at + run.step;
    else result.push({ from: at, to: at + run.step, value });
  });
  return result;
}

function drawFlows(plot: Plot): void {
  const { run, pen, from, time, right, bands } = plot;
  const most = Math.max(...run.inflow, ...run.pumpFlow, 1e-9);
  const scale: Scale = { low: 0, high: most, from: bands.flow[0], to: bands.flow[1] };
  const base = bands.flow[0];
  pen.line('ink', [[put(time, from), base], [right, base]], 'hair');
  const pump = samples(plot, run.pumpFlow, scale);
  const [first, last] = [pump[0], pump.at(-1)];
  if (first !== undefined && last !== undefined) pen.shape('ink', [[first[0], base], ...pump, [last[0], base]], 'range');
  pen.line('ink', pump, 'normal');
  const inflow = samples(plot, run.inflow, scale);
  pen.line('water', inflow, 'bold');
  const top = inflow.reduce<Point>((best, point) => (point[1] > best[1] ? point : best), [0, 0]);
  pen.text('water', top, label('drawing.peakFlow', { flow: Math.max(...run.inflow) }), 'right', 1);
  const running = pump.find(([, y]) => y > base);
  if (running !== undefined) pen.text('ink', running, label('drawing.pumpFlow'), 'left', 1);
  const shown = run.events.filter((event) => event.time >= from && event.time <= plot.to);
  for (const event of shown) {
    const x = put(time, event.time);
    const starts = event.kind === 'pumpOn';
    pen.line('ink', [[x, base - 0.025], [x, base + (starts ? 0.012 : 0)]], starts ? 'bold' : 'thin');
    if (shown.length <= 10) pen.text('ink', [x, base - 0.022], label(starts ? 'drawing.start' : 'drawing.stop'), 'below', 4);
  }
}

function drawLevels(plot: Plot, document: DesignDocument, options: StormGraphOptions): void {
  const { run, pen, from, time, right, bands } = plot;
  const { sills, lowSpots } = document.site;
  const sill = sills.find(({ id }) => id === options.sill) ?? sills[0];
  const low = lowSpots.find(({ id }) => id === sill?.lowSpot)?.stageArea[0]?.level ?? Math.min(...run.pondLevel);
  const top = Math.max(...run.pondLevel, sill?.level ?? low, low + 0.01);
  const scale: Scale = { low, high: top, from: bands.pond[0], to: bands.pond[1] };
  const pond = samples(plot, run.pondLevel, scale).map(([x, y]): Point => [x, Math.max(y, bands.pond[0])]);
  const [first, last] = [pond[0], pond.at(-1)];
  pen.line('ink', [[put(time, from), bands.pond[0]], [right, bands.pond[0]]], 'hair');
  if (first !== undefined && last !== undefined) pen.shape('water', [[first[0], bands.pond[0]], ...pond, [last[0], bands.pond[0]]], 'water');
  pen.line('water', pond, 'bold');
  if (sill !== undefined) {
    const y = put(scale, sill.level);
    pen.line('sill', [[put(time, from), y], [right, y]], 'normal', 'chain', sill.id);
    pen.text('sill', [put(time, from), y], label('drawing.sill', { name: sill.name, level: sill.level }), 'above', 0);
  }
  const highest = pond.reduce<Point>((best, point) => (point[1] > best[1] ? point : best), [0, 0]);
  if (run.maxPond > low) {
    pen.mark('water', 'levelMark', highest);
    pen.text('water', highest, label('drawing.highestPond', { level: run.maxPond }), 'right', 1);
  }
  drawBasinLevel(plot, document);
}

function drawBasinLevel(plot: Plot, document: DesignDocument): void {
  const { run, pen, from, time, right, bands } = plot;
  const basin = document.system.parts.find((part) => part.kind === 'basin');
  if (basin === undefined || basin.kind !== 'basin' || run.basinLevel.length === 0) return;
  const scale: Scale = { low: basin.floorLevel, high: Math.max(basin.rimLevel, ...run.basinLevel), from: bands.basin[0], to: bands.basin[1] };
  for (const [role, level, text] of [['ink', basin.offLevel, 'drawing.off'], ['ink', basin.onLevel, 'drawing.on']] as const) {
    const y = put(scale, level);
    pen.line(role, [[put(time, from), y], [right, y]], 'thin', 'dash', basin.id);
    pen.text(role, [put(time, from), y], label(text, { level }), 'above', 3);
  }
  pen.line('water', samples(plot, run.basinLevel, scale), 'normal', 'solid', basin.id);
  pen.text('water', [right, bands.basin[1]], label('drawing.basinLevel'), 'left', 1, false);
}

function drawTimeAxis({ pen, time, right, bands }: Plot, { width, height }: StormGraphOptions): void {
  const left = time.from;
  pen.line('ink', [[left, bands.axis], [right, bands.axis]], 'thin');
  const step = minuteStep(right - left, width < 600 ? 6 : 14);
  for (const minute of ticks(left, right, step)) {
    pen.line('ink', [[minute, bands.axis], [minute, bands.rain[0]]], 'hair');
    pen.text('faint', [minute, bands.axis], label('drawing.minute', { minute }), 'below', 1, false);
  }
  pen.text('faint', [(left + right) / 2, bands.axis - 17 / height], label('drawing.minutesFromPeak'), 'below', 1, false);
}

const minuteStep = (span: number, most: number): number =>
  [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360].find((step) => span / step <= most) ?? roundStep(span, most);

function drawCursor({ run, pen, from, to, time, peak, bands }: Plot, cursor: number | null): void {
  if (cursor === null || cursor < from || cursor > to) return;
  const x = put(time, cursor);
  const index = Math.min(Math.max(Math.round((cursor - run.start) / run.step), 0), run.pondLevel.length - 1);
  pen.line('ink', [[x, bands.axis], [x, bands.rain[0]]], 'normal');
  pen.text('ink', [x, bands.rain[1]], label('drawing.cursor', { time: cursor - peak, level: run.pondLevel[index] ?? run.maxPond }), 'right', 0.5);
}
