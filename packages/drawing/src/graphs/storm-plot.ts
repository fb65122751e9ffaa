import type { StormRun } from '@yardfall/calc';
import type { Dash, Role, Weight } from '../display.ts';
import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import { put, roundStep, ticks } from './axis.ts';
import type { GraphPen, Scale } from './axis.ts';

/** Room beside the plot for the figures of the scales and at its right end [px]; a slider under the graph keeps the same. */
export const stormMargins = { left: 72, right: 16 } as const;
/** Room for the figures and the words under the time axis [px]. */
const axisRoom = 42;
/** A row of words over a band, and the row of the cursor on top [px]. */
const rowHeight = 19;

export type Band = readonly [low: number, high: number];

export interface Bands {
  readonly axis: number;
  readonly rain: Band;
  readonly pond: Band;
  readonly flow: Band;
  readonly basin: Band | null;
  /** Height of one pixel, as a share. */
  readonly pixel: number;
}

/** Bands of the picture as shares of its height, each under its row of words: rain hangs from the top, levels and flows stand up from below. */
export function bandsFor(height: number, basin: boolean): Bands {
  const rows = basin ? 4 : 3;
  const open = height - axisRoom - (rows + 1) * rowHeight - (rows - 1) * 6 - 8;
  const shares = basin ? [0.26, 0.34, 0.24, 0.16] : [0.3, 0.4, 0.3];
  let y = rowHeight;
  const [rain, pond, flow, last] = shares.map((share): Band => {
    const top = y + rowHeight;
    const bottom = top + share * open;
    y = bottom + 6;
    return [1 - bottom / height, 1 - top / height];
  });
  if (rain === undefined || pond === undefined || flow === undefined) throw new RangeError('a storm graph has three bands at least');
  return { axis: axisRoom / height, rain: [rain[1], rain[0]], pond, flow, basin: last ?? null, pixel: 1 / height };
}

/** Size of one unit of each scale, so that its figures are round in the reader's units: m/s of rain, m of level, m3/s of flow. */
export interface StormUnits {
  readonly rain: number;
  readonly level: number;
  readonly flow: number;
}

export interface Plot {
  readonly run: StormRun;
  readonly pen: GraphPen;
  readonly from: number;
  readonly to: number;
  readonly peak: number;
  readonly time: Scale;
  readonly right: number;
  readonly bands: Bands;
  /** Minutes of one pixel. */
  readonly across: number;
  readonly units: StormUnits;
}

/** The words over a band, after a piece of the line that they name. */
export function title({ pen, time, across, bands }: Plot, band: Band, text: Label, line: { role: Role; weight: Weight; dash: Dash } | null = null, at = 0): void {
  const y = Math.max(...band) + 9 * bands.pixel;
  const x = time.from + at * across;
  if (line !== null) pen.line(line.role, [[x, y], [x + 26 * across, y]], line.weight, line.dash);
  pen.text('ink', [x + (line === null ? -4 : 28) * across, y], text, 'right', 0, false);
}

/** Figures of a scale at the left of its band, with a hair across. */
export function drawScale({ pen, time, right }: Plot, scale: Scale, step: number, code: 'intensity' | 'level' | 'flow'): void {
  for (const value of ticks(scale.low, scale.high, step)) {
    const y = put(scale, value);
    pen.line('ink', [[time.from, y], [right, y]], 'hair');
    pen.text('faint', [time.from, y], label(`drawing.value.${code}`, { value }), 'left', 0, false);
  }
}

/** As many figures as find room one over the other. */
export function stepFor(scale: Scale, unit: number, pixel: number): number {
  const most = Math.max(2, Math.floor(Math.abs(scale.to - scale.from) / pixel / 24));
  return roundStep((scale.high - scale.low) / unit, most) * unit;
}

