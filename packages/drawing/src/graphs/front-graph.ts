import type { DisplayList, Point } from '../display.ts';
import { label } from '../labels.ts';
import { GraphPen, put, roundStep, ticks, type Scale } from './axis.ts';

/** One design that no other makes pointless. */
export interface FrontPoint {
  readonly id: string;
  /** US cents, or steps of an order. */
  readonly cost: number;
  /** Least freeboard, lower end of the band [m]; below nothing water comes in. */
  readonly lower: number;
  readonly passes: boolean;
  /** One of the marks on the line, by its number; null for the points between. */
  readonly mark: number | null;
}

export interface FrontGraphOptions {
  readonly width: number;
  readonly height: number;
  readonly cost: 'money' | 'order';
  /** Size of one step of the height axis [m]. */
  readonly heightUnit: number;
}

const defaults: FrontGraphOptions = { width: 640, height: 380, cost: 'money', heightUnit: 0.0254 };
const margins = { left: 76, right: 28, top: 30, bottom: 46 };

/** Price against protection: one line through the designs that no other makes pointless, its marks numbered; x and y are pixels from the lower left. */
export function frontGraph(points: readonly FrontPoint[], given: Partial<FrontGraphOptions> = {}): DisplayList {
  const options = { ...defaults, ...given };
  const { width, height } = options;
  const pen = new GraphPen();
  const costs = points.map(({ cost }) => cost);
  const lowers = points.map(({ lower }) => lower);
  const span = Math.max(...costs) - Math.min(...costs) || Math.max(Math.abs(costs[0] ?? 0) * 0.1, 1);
  const x: Scale = { low: Math.min(...costs) - span * 0.06, high: Math.max(...costs) + span * 0.06, from: margins.left, to: width - margins.right };
  const rise = Math.max(...lowers, 0) - Math.min(...lowers, 0) || options.heightUnit;
  const y: Scale = { low: Math.min(...lowers, 0) - rise * 0.08, high: Math.max(...lowers, 0) + rise * 0.12, from: margins.bottom, to: height - margins.top };
  const place = ({ cost, lower }: FrontPoint): Point => [put(x, cost), put(y, lower)];
  drawScales(pen, x, y, options);
  const ordered = points.toSorted((a, b) => a.cost - b.cost);
  pen.line('water', ordered.map(place), 'bold');
  for (const point of ordered) {
    const at = place(point);
    pen.mark(point.passes ? 'ink' : 'sill', point.mark === null ? 'measuredPoint' : 'dutyPoint', at, point.id);
    if (point.mark !== null) pen.text('ink', at, label('drawing.value.number', { value: point.mark }), 'above', 0);
  }
  return {
    name: 'front', extent: { x0: 0, x1: width, y0: 0, y1: height }, exaggeration: null, breaks: [], items: pen.items, handles: [],
    hits: ordered.map((point): DisplayList['hits'][number] => ({ part: point.id, points: square(place(point), 14) })),
  };
}

const square = ([x, y]: Point, half: number): Point[] => [[x - half, y - half], [x + half, y - half], [x + half, y + half], [x - half, y + half]];

function drawScales(pen: GraphPen, x: Scale, y: Scale, { width, height, cost, heightUnit }: FrontGraphOptions): void {
  const unit = cost === 'money' ? 100 : 1;
  const across = Math.max(roundStep((x.high - x.low) / unit, width < 480 ? 3 : 7), cost === 'order' ? 1 : 0) * unit;
  for (const at of ticks(x.low, x.high, across)) {
    pen.line('ink', [[put(x, at), y.from], [put(x, at), y.to]], 'hair');
    pen.text('faint', [put(x, at), y.from], cost === 'money' ? label('drawing.front.money', { value: at }) : label('drawing.value.number', { value: at }), 'below', 1, false);
  }
  const up = roundStep((y.high - y.low) / heightUnit, 6) * heightUnit;
  for (const at of ticks(Math.max(y.low, 0), y.high, up)) {
    pen.line('ink', [[x.from, put(y, at)], [x.to, put(y, at)]], 'hair');
    pen.text('faint', [x.from, put(y, at)], label('drawing.value.height', { value: at }), 'left', 1, false);
  }
  // Below the sill nothing is said in inches: there water comes in.
  pen.line('sill', [[x.from, put(y, 0)], [x.to, put(y, 0)]], 'normal', 'chain');
  if (put(y, 0) - y.from > 30) pen.text('sill', [x.to, put(y, 0)], label('drawing.front.comesIn'), 'below', 1);
  pen.line('ink', [[x.from, y.to], [x.from, y.from], [x.to, y.from]], 'thin');
  pen.text('faint', [x.to, 14], label(cost === 'money' ? 'drawing.front.cost' : 'drawing.front.order'), 'left', 1, false);
  pen.text('faint', [x.from, height - 10], label('drawing.front.protection'), 'right', 1, false);
}
