import { HOUR, MINUTE } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import type { RainTable } from '../document/document.ts';
import { arrangeBlocks } from '../rain/alternatingBlock.ts';
import { depthAt } from '../rain/depthAt.ts';
import { MISSING, type RainRecord } from './rainRecord.ts';

/** Five-minute blocks of an hour. */
export const BLOCKS = 12;
const BLOCK = 5 * MINUTE;
/** Return period at which the site's rain shares an hour out [years]. Source: ours; the lowest of the table when it has no 2 years. */
const RATIO_PERIOD = 2;

/**
 * How an hour's rain is shared out over its five minutes.
 * uniform: evenly, the least that the bursts can have been. ormsbee: along the hours beside it.
 * alternatingBlock: with the bursts of the site's rain table, about the most. recorded: the record has five minutes itself.
 */
export type RainWay = 'uniform' | 'ormsbee' | 'alternatingBlock' | 'recorded';

/** Puts what rounding has left over into the largest block, until the blocks added in order give the depth itself. */
function settle(blocks: Float64Array, depth: number): void {
  for (let pass = 0; pass < 4; pass += 1) {
    let sum = 0;
    let largest = 0;
    for (let i = 0; i < BLOCKS; i += 1) {
      sum += blocks[i]!;
      if (blocks[i]! > blocks[largest]!) largest = i;
    }
    if (sum === depth) return;
    blocks[largest] = blocks[largest]! + (depth - sum);
  }
}

/**
 * The hour's rain, evenly.
 * @param depth of the hour [mm]
 * Limits: a lower bound of every burst inside the hour; never quoted
 */
export function uniformHour(depth: number, into: Float64Array): void {
  into.fill(depth / BLOCKS);
  settle(into, depth);
}

/**
 * The hour's rain, shaped by the hours before and after it (continuous deterministic disaggregation).
 *
 * The intensity runs straight from a at the start of the hour to b at the time t* and straight on to c at its end,
 * a, b, c in the ratio of the depths of the hour before, the hour itself and the hour after:
 *
 *   t* = |b - a| / (|b - a| + |c - b|) of the hour, half of it when all are equal;  each block is the area below the line,
 *   scaled so that the hour keeps its depth
 *
 * @param before, depth, after depths of three hours [mm]; a missing neighbor is taken as deep as the hour itself
 * @param into depth of each five minutes [mm], adding up to `depth`
 * Limits: it knows nothing of the site's bursts and makes peaks too low (Durrans and others 1999)
 * Source: Ormsbee 1989, J. Hydraulic Engineering 115, 507-525, from memory; a missing neighbor: ours
 * Checked against: fixtures/record/disaggregation.json, computed by hand
 */
export function ormsbeeHour(before: number, depth: number, after: number, into: Float64Array): void {
  if (depth <= 0) {
    into.fill(0);
    return;
  }
  const a = before === MISSING ? depth : before;
  const c = after === MISSING ? depth : after;
  const rise = Math.abs(depth - a);
  const fall = Math.abs(c - depth);
  const turn = rise + fall > 0 ? rise / (rise + fall) : 0.5;
  const first = 0.5 * turn * (a + depth);
  const whole = first + 0.5 * (1 - turn) * (depth + c);
  let reached = 0;
  for (let i = 1; i <= BLOCKS; i += 1) {
    const x = i / BLOCKS;
    const area = x <= turn ? x * (a + (0.5 * (depth - a) * x) / turn) : first + (x - turn) * (depth + (0.5 * (c - depth) * (x - turn)) / (1 - turn));
    into[i - 1] = Math.max(0, ((area - reached) / whole) * depth);
    reached = area;
  }
  settle(into, depth);
}

/**
 * Shares of an hour's rain in five-minute blocks, nested as in the site's rain table at its 2-year depths.
 *
 * @param table with durations from 5 to 60 minutes inside it
 * @returns 12 shares that add up to one, the largest in the block that begins at the half hour
 * Limits: throws rain.outsideTable for a table without 5 minutes or an hour. An upper way: it puts the worst five minutes into every wet hour
 * Source: alternating block, Chow, Maidment and Mays 1988 section 14.4, within the hour and at the ratios of the table: ours
 */
export function hourShares(table: RainTable): Float64Array {
  const lowest = table.returnPeriods[0] ?? RATIO_PERIOD;
  const highest = table.returnPeriods[table.returnPeriods.length - 1] ?? RATIO_PERIOD;
  const period = Math.min(Math.max(RATIO_PERIOD, lowest), highest);
  const hour = depthAt(table, HOUR, period);
  if (!(hour > 0)) throw new CalcProblem('rain.zeroDepth', 'rain/table/depths', { depth: hour });
  const shares = Float64Array.from(arrangeBlocks((duration) => depthAt(table, duration, period) / hour, HOUR, BLOCK));
  settle(shares, 1);
  return shares;
}

/** The hour's rain by shares, adding up to its depth. */
export function sharedHour(depth: number, shares: Float64Array, into: Float64Array): void {
  for (let i = 0; i < BLOCKS; i += 1) into[i] = depth * shares[i]!;
  settle(into, depth);
}

/** The five minutes with rain in a part of a record: index from the start of the record, and depth [mm]. */
export interface WetSteps {
  readonly index: readonly number[];
  readonly depth: readonly number[];
}

/**
 * The five minutes with rain of the readings from `from` up to `to`.
 * @param shares for `alternatingBlock`, see hourShares
 */
export function wetSteps(record: RainRecord, way: RainWay, shares: Float64Array | null, from: number, to: number): WetSteps {
  const index: number[] = [];
  const depth: number[] = [];
  const { depths } = record;
  const blocks = new Float64Array(BLOCKS);
  for (let i = from; i < to; i += 1) {
    const reading = depths[i]!;
    if (!(reading > 0)) continue;
    if (record.step === BLOCK) {
      index.push(i);
      depth.push(reading);
      continue;
    }
    if (way === 'ormsbee') ormsbeeHour(depths[i - 1] ?? MISSING, reading, depths[i + 1] ?? MISSING, blocks);
    else if (way === 'alternatingBlock' && shares !== null) sharedHour(reading, shares, blocks);
    else uniformHour(reading, blocks);
    for (let k = 0; k < BLOCKS; k += 1) {
      if (blocks[k] === 0) continue;
      index.push(i * BLOCKS + k);
      depth.push(blocks[k]!);
    }
  }
  return { index, depth };
}

/** The ways in which a record is run: its own five minutes, or the two that are quoted as a range; uniform only to see the lower bound. */
export function waysOf(record: RainRecord): readonly RainWay[] {
  return record.step === BLOCK ? ['recorded'] : ['ormsbee', 'alternatingBlock'];
}
