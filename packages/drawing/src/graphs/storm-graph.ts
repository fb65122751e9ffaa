import type { Basin, DesignDocument, StormRun } from '@yardfall/calc';
import type { DisplayList, Point } from '../display.ts';
import { label } from '../labels.ts';
import { GraphPen, put, roundStep, thin, ticks } from './axis.ts';
import type { Scale } from './axis.ts';
import { bandsFor, drawScale, stepFor, stormMargins, title } from './storm-plot.ts';
import type { Plot, StormUnits } from './storm-plot.ts';
import { peakTime, windowOf } from './storm-window.ts';

export interface StormGraphOptions {
  readonly width: number;
  readonly height: number;
  /** Seconds of the run to show; null takes the time about the heaviest rain in which something moves. */
  readonly window: readonly [from: number, to: number] | null;
  /** Time at which the cursor stands [s of the run]. */
  readonly cursor: number | null;
  readonly sill: string | null;
  readonly units: StormUnits;
}

/** An inch an hour, a foot, a US gallon a minute. */
const usUnits = { rain: 0.0254 / 3600, level: 0.3048, flow: 0.003785411784 / 60 };
const defaults: StormGraphOptions = { width: 1440, height: 420, window: null, cursor: null, sill: null, units: usUnits };

/** Rain, flows, pond and basin of one storm over time; x is minutes from the heaviest rain, y a share of the height. */
export function stormGraph(document: DesignDocument, run: StormRun, given: Partial<StormGraphOptions> = {}): DisplayList {
  const options = { ...defaults, ...given };
  const [from, to] = options.window ?? windowOf(run);
  const peak = peakTime(run);
  const minutes = (seconds: number): number => (seconds - peak) / 60;
  const span = minutes(to) - minutes(from);
  const across = span / Math.max(options.width - stormMargins.left - stormMargins.right, 1);
  const time: Scale = { low: from, high: to, from: minutes(from), to: minutes(to) };
  const plot: Plot = { run, pen: new GraphPen(), from, to, peak, time, right: minutes(to), across, units: options.units, bands: bandsFor(options.height, basinOf(document, run) !== null) };
  drawRain(plot);
  drawFlows(plot);
  drawLevels(plot, document, options);
  drawTimeAxis(plot, options);
  drawCursor(plot, options.cursor);
  return {
    name: 'storm', extent: { x0: minutes(from) - stormMargins.left * across, x1: minutes(to) + stormMargins.right * across, y0: 0, y1: 1 },
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

function drawRain(plot: Plot): void {
  const { run, pen, from, to, time, right, bands, units } = plot;
  const most = Math.max(...run.intensity, 1e-9);
  const scale: Scale = { low: 0, high: most, from: bands.rain[0], to: bands.rain[1] };
  pen.line('ink', [[put(time, from), bands.rain[0]], [right, bands.rain[0]]], 'thin');
  drawScale(plot, scale, stepFor(scale, units.rain, bands.pixel), 'intensity');
  for (const block of blocks(run)) {
    if (block.to <= from || block.from >= to || block.value <= 0) continue;
    const x0 = put(time, Math.max(block.from, from));
    const x1 = put(time, Math.min(block.to, to));
    const y = put(scale, block.value);
    pen.shape('water', [[x0, bands.rain[0]], [x1, bands.rain[0]], [x1, y], [x0, y]], 'water', true);
  }
  title(plot, bands.rain, label('drawing.peakIntensity', { intensity: most }));
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

/** What flows in is a dashed line, what the pump takes out a plain one over a shaded field: neither is the water's own line. */
function drawFlows(plot: Plot): void {
  const { run, pen, from, time, right, bands, units } = plot;
  const most = Math.max(...run.inflow, ...run.pumpFlow, 1e-9);
  const scale: Scale = { low: 0, high: most, from: bands.flow[0], to: bands.flow[1] };
  const base = bands.flow[0];
  pen.line('ink', [[put(time, from), base], [right, base]], 'thin');
  drawScale(plot, scale, stepFor(scale, units.flow, bands.pixel), 'flow');
  const pumped = run.pumpFlow.some((flow) => flow > 0);
  const pump = samples(plot, run.pumpFlow, scale);
  const [first, last] = [pump[0], pump.at(-1)];
  if (pumped && first !== undefined && last !== undefined) {
    pen.shape('ink', [[first[0], base], ...pump, [last[0], base]], 'range');
    pen.line('ink', pump, 'normal');
  }
  pen.line('ink', samples(plot, run.inflow, scale), 'bold', 'dash');
  title(plot, bands.flow, label('drawing.peakFlow', { flow: Math.max(...run.inflow) }), { role: 'ink', weight: 'bold', dash: 'dash' });
  if (pumped) title(plot, bands.flow, label('drawing.pumpFlow'), { role: 'ink', weight: 'normal', dash: 'solid' }, (plot.right - time.from) / plot.across > 460 ? 280 : 190);
  const shown = run.events.filter((event) => event.time >= from && event.time <= plot.to);
  for (const event of shown) {
    const x = put(time, event.time);
    const starts = event.kind === 'pumpOn';
    pen.line('ink', [[x, base], [x, base + (starts ? 8 : 4) * bands.pixel]], starts ? 'bold' : 'thin');
    if (shown.length <= 10) pen.text('ink', [x, base + 4 * bands.pixel], label(starts ? 'drawing.start' : 'drawing.stop'), 'above', 4);
  }
}

function drawLevels(plot: Plot, document: DesignDocument, options: StormGraphOptions): void {
  const { run, pen, from, time, right, bands, units } = plot;
  const { sills, lowSpots } = document.site;
  const sill = sills.find(({ id }) => id === options.sill) ?? sills[0];
  const low = lowSpots.find(({ id }) => id === sill?.lowSpot)?.stageArea[0]?.level ?? Math.min(...run.pondLevel);
  const top = Math.max(...run.pondLevel, sill?.level ?? low, low + 0.01);
  const scale: Scale = { low, high: top, from: bands.pond[0], to: bands.pond[1] };
  drawScale(plot, scale, stepFor(scale, units.level, bands.pixel), 'level');
  const pond = samples(plot, run.pondLevel, scale).map(([x, y]): Point => [x, Math.max(y, bands.pond[0])]);
  const [first, last] = [pond[0], pond.at(-1)];
  pen.line('ink', [[put(time, from), bands.pond[0]], [right, bands.pond[0]]], 'thin');
  if (first !== undefined && last !== undefined) pen.shape('water', [[first[0], bands.pond[0]], ...pond, [last[0], bands.pond[0]]], 'water');
  pen.line('water', pond, 'bold');
  title(plot, bands.pond, label('drawing.table.pond'), { role: 'water', weight: 'bold', dash: 'solid' });
  if (sill !== undefined) {
    const y = put(scale, sill.level);
    pen.line('sill', [[put(time, from), y], [right, y]], 'normal', 'chain', sill.id);
    pen.text('sill', [right, y], label('drawing.sill', { name: sill.name, level: sill.level }), 'below', 0);
  }
  const highest = pond.reduce<Point>((best, point) => (point[1] > best[1] ? point : best), [0, 0]);
  if (run.maxPond > low) {
    pen.mark('water', 'levelMark', highest);
    pen.text('water', highest, label('drawing.highestPond', { level: run.maxPond }), 'right', 1);
  }
  drawBasinLevel(plot, document);
}

function basinOf(document: DesignDocument, run: StormRun): Basin | null {
  const basin = document.system.parts.find((part) => part.kind === 'basin');
  return basin?.kind === 'basin' && run.basinLevel.length > 0 ? basin : null;
}

function drawBasinLevel(plot: Plot, document: DesignDocument): void {
  const { run, pen, from, time, right, bands } = plot;
  const basin = basinOf(document, run);
  if (basin === null || bands.basin === null) return;
  const scale: Scale = { low: basin.floorLevel, high: Math.max(basin.rimLevel, ...run.basinLevel), from: bands.basin[0], to: bands.basin[1] };
  pen.line('ink', [[put(time, from), bands.basin[0]], [right, bands.basin[0]]], 'thin');
  pen.text('faint', [time.from, bands.basin[0]], label('drawing.value.level', { value: basin.floorLevel }), 'left', 0, false);
  pen.text('faint', [time.from, bands.basin[1]], label('drawing.value.level', { value: scale.high }), 'left', 0, false);
  for (const [role, level, text] of [['ink', basin.offLevel, 'drawing.off'], ['ink', basin.onLevel, 'drawing.on']] as const) {
    const y = put(scale, level);
    pen.line(role, [[put(time, from), y], [right, y]], 'thin', 'dash', basin.id);
    pen.text(role, [right, y], label(text, { level }), text === 'drawing.on' ? 'above' : 'below', 3);
  }
  pen.line('water', samples(plot, run.basinLevel, scale), 'normal', 'solid', basin.id);
  title(plot, bands.basin, label('drawing.table.basin'), { role: 'water', weight: 'normal', dash: 'solid' });
}

function drawTimeAxis({ pen, time, right, bands }: Plot, { width, height }: StormGraphOptions): void {
  const left = time.from;
  pen.line('ink', [[left, bands.axis], [right, bands.axis]], 'thin');
  const step = minuteStep(right - left, width < 600 ? 6 : 14);
  for (const minute of ticks(left, right, step)) {
    pen.line('ink', [[minute, bands.axis], [minute, bands.axis + 5 * bands.pixel]], 'thin');
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
  pen.line('ink', [[x, bands.axis], [x, 1 - 12 * bands.pixel]], 'normal');
  pen.text('ink', [x, 1 - 10 * bands.pixel], label('drawing.cursor', { time: cursor - peak, level: run.pondLevel[index] ?? run.maxPond }), 'right', 0.5);
}
