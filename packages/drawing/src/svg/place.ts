import type { Point, Side } from '../display.ts';
import { covered, cross, crossing, distance, grown, nearest, overlap } from './geometry.ts';
import type { Area, Box, Segment } from './geometry.ts';
import { textWidth } from './letters.ts';

export interface Wanted {
  readonly key: number;
  readonly text: string;
  readonly at: Point;
  readonly side: Side;
  readonly rank: number;
  readonly movable: boolean;
  /** A numbered balloon is round and may stand on a line, which its paper covers. */
  readonly balloon?: boolean;
}

export interface PlacedText {
  readonly key: number;
  readonly text: string;
  readonly box: Box;
  /** From the point to the text, when the text had to move away from it. */
  readonly leader: Segment | null;
}

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly marks: readonly Box[];
  readonly lines: readonly Segment[];
  /** Hatched areas, in which lettering is hard to read. */
  readonly hatched: readonly Area[];
  /** How far a text may stand from its point [px]. */
  readonly reach: number;
  /** Whether a text that finds no clear place may stand on a line, on a halo of paper. */
  readonly overLines: boolean;
}

const edge = 3;
export const balloonSize = 17;
const shortLeader = 12;
const pad = 1.5;
const impossible = 1e6;

/** Who already stands on the sheet. */
class Taken {
  readonly boxes: Box[];
  readonly leaders: Segment[] = [];

  constructor(readonly sheet: Sheet, boxes: readonly Box[]) {
    this.boxes = [...boxes];
  }

  add(text: PlacedText): void {
    this.boxes.push(grown(text.box, 1));
    if (text.leader !== null) this.leaders.push(text.leader);
  }
}

/**
 * Puts the texts on the sheet in order of rank, each at the place of least cost among a fixed set about its point:
 * clear of every other text, mark and line, and near its point. What finds no clear place is left to the caller; rank 0 always stands.
 */
export function placeTexts(wanted: readonly Wanted[], sheet: Sheet, before: readonly PlacedText[] = []): PlacedText[] {
  const taken = new Taken(sheet, sheet.marks);
  for (const text of before) taken.add(text);
  const placed: PlacedText[] = [];
  const order = [...wanted].sort((a, b) => Number(a.movable) - Number(b.movable) || a.rank - b.rank || a.key - b.key);
  for (const text of order) {
    const result = text.movable ? bestPlace(text, taken) : fixedPlace(text, taken);
    if (result === null) continue;
    taken.add(result);
    placed.push(result);
  }
  return placed.sort((a, b) => a.key - b.key);
}

function fixedPlace(text: Wanted, taken: Taken): PlacedText | null {
  const { width, height } = sizeOf(text, taken.sheet.size);
  const [x, y] = text.at;
  const left = text.side === 'right' ? x + 4 : text.side === 'left' ? x - 4 - width : x - width / 2;
  const top = text.side === 'above' ? y - 4 - height : text.side === 'below' ? y + 3 : y - height / 2;
  const box = inside({ x0: left, y0: top, x1: left + width, y1: top + height }, taken.sheet);
  if (text.rank >= 1 && taken.boxes.some((other) => overlap(box, other))) return null;
  return { key: text.key, text: text.text, box, leader: null };
}

function sizeOf(text: Wanted, size: number): { width: number; height: number } {
  if (text.balloon === true) return { width: balloonSize, height: balloonSize };
  return { width: textWidth(text.text, size) + 3, height: size * 1.2 };
}

function bestPlace(text: Wanted, taken: Taken): PlacedText | null {
  const { sheet } = taken;
  let best: { box: Box; leader: Segment | null; cost: number } | null = null;
  const { width, height } = sizeOf(text, sheet.size);
  const tries = placesToTry(text, width, height, sheet).sort((a, b) => a.base - b.base);
  const about = surroundings(tries.map(({ box }) => box), text.at, taken);
  for (const { box, away, base } of tries) {
    if (best !== null && base >= best.cost) break;
    if (away > sheet.reach && text.rank > 0) continue;
    const leader: Segment | null = away > shortLeader ? [text.at, nearest(box, text.at)] : null;
    const cost: number = base + costOf(box, leader, text, about, best === null ? Infinity : best.cost - base);
    if (best === null || cost < best.cost) best = { box, leader, cost };
  }
  if (best === null || (best.cost >= impossible && text.rank > 0)) return null;
  return { key: text.key, text: text.text, box: best.box, leader: best.leader };
}

const steps = [0, 10, 20, 31, 43, 56, 70, 85, 101, 118, 136, 155];
const slides = [0, 0.25, 0.5, 0.75, 1];

interface Try {
  readonly box: Box;
  /** From the point to the text [px]. */
  readonly away: number;
  /** What the place costs before anything in its way is counted. */
  readonly base: number;
}

/** Places to try about the point, the most natural side first. Plain loops: a hand that drags waits for this. */
function placesToTry(text: Wanted, width: number, height: number, sheet: Sheet): Try[] {
  const sides: Side[] = [text.side, ...(['above', 'right', 'below', 'left'] as const).filter((side) => side !== text.side)];
  const [x, y] = text.at;
  const tries: Try[] = [];
  for (let order = 0; order < sides.length; order += 1) {
    const side = sides[order];
    for (const step of steps) {
      for (let index = 0; index < slides.length; index += 1) {
        const slide = slides[index] ?? 0;
        const level = side === 'above' || side === 'below';
        const dx = level ? 9 - slide * (width + 18) : side === 'right' ? 9 + step : -9 - step - width;
        const dy = level ? (side === 'above' ? -3 - height - step : 4 + step) : -height / 2 + (slide - 0.5) * 2.4 * height;
        const raw = { x0: x + dx, y0: y + dy, x1: x + dx + width, y1: y + dy + height };
        const box = inside(raw, sheet);
        const away = distance(box, text.at);
        const penalty = (order === 0 ? 0 : 7 + order * 2) + Math.abs(index - 2) * 0.1;
        tries.push({ box, away, base: penalty + away * 0.9 + (Math.abs(box.x0 - raw.x0) + Math.abs(box.y0 - raw.y0)) * 0.3 });
      }
    }
  }
  return tries;
}

/** What stands where a text may come to stand; nothing else can meet it or its leader. */
interface Surroundings extends Pick<Sheet, 'lines' | 'hatched' | 'overLines'> {
  readonly boxes: readonly Box[];
  readonly leaders: readonly Segment[];
}

function surroundings(places: readonly Box[], [x, y]: Point, { sheet, boxes, leaders }: Taken): Surroundings {
  let all: Box = { x0: x, y0: y, x1: x, y1: y };
  for (const box of places) all = { x0: Math.min(all.x0, box.x0), y0: Math.min(all.y0, box.y0), x1: Math.max(all.x1, box.x1), y1: Math.max(all.y1, box.y1) };
  const reach = grown(all, pad + 1);
  const meets = ([a, b]: Segment): boolean => Math.max(a[0], b[0]) >= reach.x0 && Math.min(a[0], b[0]) <= reach.x1 && Math.max(a[1], b[1]) >= reach.y0 && Math.min(a[1], b[1]) <= reach.y1;
  return {
    boxes: boxes.filter((box) => overlap(box, reach)), leaders: leaders.filter(meets), lines: sheet.lines.filter(meets),
    hatched: sheet.hatched.filter(({ bounds }) => overlap(bounds, reach)), overLines: sheet.overLines,
  };
}

/** What a place costs; from `enough` on it is not the best and how much more does not matter. */
function costOf(box: Box, leader: Segment | null, text: Wanted, { boxes, leaders, lines, hatched, overLines }: Surroundings, enough: number): number {
  if (boxes.some((other) => overlap(box, other))) return impossible * 10;
  const near = grown(box, pad);
  if (leader !== null && boxes.some((other) => crossing(other, leader) > 0 && !touches(other, text.at))) return impossible * 5;
  let cost = 0;
  for (const other of leaders) {
    if (crossing(near, other) > 0) return impossible * 10;
    if (leader !== null && cross(leader, other)) cost += 80;
  }
  const onLine = text.balloon === true ? 60 : overLines ? 60 : impossible;
  for (const line of lines) {
    if (crossing(near, line) > 0) cost += onLine;
    if (leader !== null && cross(leader, line)) cost += text.balloon === true ? 8 : 30;
    if (cost >= enough) return cost;
  }
  for (const area of hatched) {
    cost += covered(box, area) * 12;
    if (cost >= enough) return cost;
  }
  return cost;
}

/** The leader starts at the mark that stands on the same point. */
const touches = (box: Box, at: Point): boolean => distance(box, at) < 2;

function inside(box: Box, sheet: Sheet): Box {
  const dx = Math.max(edge - box.x0, 0) + Math.min(sheet.width - edge - box.x1, 0);
  const dy = Math.max(edge - box.y0, 0) + Math.min(sheet.height - edge - box.y1, 0);
  return { x0: box.x0 + dx, y0: box.y0 + dy, x1: box.x1 + dx, y1: box.y1 + dy };
}
