import { systemHead, type DischargePath } from '../pump/dutyPoint.ts';
import { headAtFlow } from '../pump/pumpCurve.ts';
import { FlowTable } from './levelTable.ts';
import { weepAt, type PumpLine } from './pumpLine.ts';

/** Samples along a datasheet curve, cells of a rating, and parts of a line in which its filling is averaged. Source: ours, see the test. */
const curveSamples = 160;
const ratingCells = 96;
const fillingParts = 4;

/** Heads from a rating's lowest to its highest [m], the same for all ratings of one line. */
export interface HeadRange {
  readonly low: number;
  readonly high: number;
}

/** A pump's flow against its own head: heads falling from shut-off to the end of the datasheet. */
interface PumpSamples {
  readonly heads: Float64Array;
  readonly flows: Float64Array;
  readonly line: PumpLine;
}

function samplesOf(line: PumpLine): PumpSamples {
  const heads = new Float64Array(curveSamples + 1);
  const flows = new Float64Array(curveSamples + 1);
  for (let i = 0; i <= curveSamples; i += 1) {
    flows[i] = (line.curve.runOut * i) / curveSamples;
    heads[i] = headAtFlow(line.curve, flows[i]!);
  }
  return { heads, flows, line };
}

/** Flow of one pump at a head [m3/s]: none above shut-off, that of the last point below it. */
function flowAtHead({ heads, flows }: PumpSamples, head: number): number {
  if (head >= heads[0]!) return 0;
  if (head <= heads[curveSamples]!) return flows[curveSamples]!;
  let low = 0;
  let high = curveSamples;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (heads[middle]! > head) low = middle;
    else high = middle;
  }
  return flows[low]! + ((flows[high]! - flows[low]!) * (heads[low]! - head)) / (heads[low]! - heads[high]!);
}

/** Points of head and flow become a table on even heads; a head that does not fall with flow is taken as the one before. */
function resample(heads: readonly number[], flows: readonly number[], range: HeadRange): FlowTable {
  const last = heads.length - 1;
  let k = last;
  return FlowTable.tabulate(range.low, range.high, ratingCells, (head) => {
    if (head >= heads[0]!) return 0;
    while (k > 0 && heads[k]! < head) k -= 1;
    if (k === last) return flows[last]!;
    const span = heads[k]! - heads[k + 1]!;
    return span > 0 ? flows[k]! + ((flows[k + 1]! - flows[k]!) * (heads[k]! - head)) / span : flows[k]!;
  });
}

const emptyPath = (line: PumpLine, c: number): DischargePath => ({
  staticHead: 0, equivalentLength: line.equivalentLength, innerDiameter: line.line.innerDiameter, hazenWilliamsC: c, openingHead: 0,
});

/**
 * Net flow of pumps side by side on one line, against the static head [m].
 * Each point of the pumps' common curve asks for one static head, so nothing has to be searched:
 *
 *   static = H(Q) - opening - L_e*S(Q) for a full line;  H/x - opening - L_e*S for one that is filled to a share x
 *
 * @param lines  the pumps that run, all on one line
 * @param filled share of the line that holds water: its lift and its friction count so far
 * @param c      Hazen-Williams coefficient
 * Limits: flow of the last datasheet point where the line asks for less; what the weep holes return is taken off
 * Source: pumps in parallel add their flows at one head, handbooks; see dutyPoint
 */
function rateFilled(samples: readonly PumpSamples[], filled: number, c: number, range: HeadRange): FlowTable {
  const first = samples[0]!;
  // One line has one friction: the pump whose valve takes most tells it.
  const longest = samples.reduce((most, sample) => (sample.line.equivalentLength > most.line.equivalentLength ? sample : most), first);
  const path = emptyPath(longest.line, c);
  const opening = first.line.outlet.openingHead;
  const shutOff = samples.reduce((most, { heads }) => Math.max(most, heads[0]!), 0);
  const lowest = samples.reduce((least, { heads }) => Math.min(least, heads[curveSamples]!), Infinity);
  const statics: number[] = [];
  const nets: number[] = [];
  for (let i = 0; i <= curveSamples; i += 1) {
    const alone = samples.length === 1;
    const head = alone ? first.heads[i]! : shutOff - ((shutOff - lowest) * i) / curveSamples;
    let flow = 0;
    let weep = 0;
    for (const sample of samples) {
      const own = alone ? sample.flows[i]! : flowAtHead(sample, head);
      flow += own;
      if (own > 0) weep += weepAt(sample.line, head);
    }
    const asked = head / filled - opening - systemHead(path, flow);
    const before = statics[statics.length - 1];
    statics.push(before === undefined ? asked : Math.min(before, asked));
    nets.push(Math.max(0, flow - weep));
  }
  return resample(statics, nets, range);
}

/**
 * Rates the pumps of one line.
 *
 * @param lines all pumps that can feed it; bit k of a mask stands for the k-th
 * @param range static heads that can occur [m]
 * @param kept  share of the line that never empties
 * @param c     Hazen-Williams coefficient, null for that of the line
 * @returns net flow of a mask through the full line, and mean flow into it while it fills from `kept` to full
 */
export function rateLine(
  lines: readonly PumpLine[], range: HeadRange, kept: number, c: number | null = null,
): { readonly flow: (mask: number) => FlowTable; readonly filling: (mask: number) => FlowTable } {
  const all = lines.map(samplesOf);
  const coefficient = c ?? lines[0]!.line.hazenWilliamsC;
  const some = (mask: number): PumpSamples[] => all.filter((_, k) => Math.floor(mask / powerOfTwo(k)) % 2 === 1);
  return {
    flow: once((mask) => rateFilled(some(mask), 1, coefficient, range)),
    filling: once((mask) => {
      const parts = Array.from({ length: fillingParts }, (_, i) => rateFilled(some(mask), kept + ((1 - kept) * (i + 0.5)) / fillingParts, coefficient, range));
      // The time to fill is the sum of its parts' times: their flows have a harmonic mean.
      return FlowTable.tabulate(range.low, range.high, ratingCells, (head) => {
        const time = parts.reduce((sum, part) => sum + 1 / part.flow(head), 0);
        return time < Infinity ? fillingParts / time : 0;
      });
    }),
  };
}

export function powerOfTwo(k: number): number {
  let value = 1;
  for (let i = 0; i < k; i += 1) value *= 2;
  return value;
}

/** Each mask is rated when it is first asked for. */
export function once(rate: (mask: number) => FlowTable): (mask: number) => FlowTable {
  const known = new Map<number, FlowTable>();
  return (mask) => {
    const before = known.get(mask);
    if (before !== undefined) return before;
    const made = rate(mask);
    known.set(mask, made);
    return made;
  };
}
