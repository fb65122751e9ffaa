import { systemHead, type DischargePath } from '../pump/dutyPoint.ts';
import { headAtFlow } from '../pump/pumpCurve.ts';
import { FlowTable } from './levelTable.ts';
import { weepAt, type PumpLine } from './pumpLine.ts';

/** Samples along a datasheet curve, cells of a rating, and parts of a line in which its filling is averaged. Source: ours, see the test. */
const curveSamples = 160;
const ratingCells = 96;
const fillingParts = 4;
/** Pumps on a line of which every smaller set is rated too. */
const mostCompared = 4;

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
  /** Length of its own check valve as straight pipe, where not all pumps of the line share it [m]. */
  readonly own: number;
}

function samplesOf(line: PumpLine, own: number): PumpSamples {
  const heads = new Float64Array(curveSamples + 1);
  const flows = new Float64Array(curveSamples + 1);
  for (let i = 0; i <= curveSamples; i += 1) {
    flows[i] = (line.curve.runOut * i) / curveSamples;
    heads[i] = headAtFlow(line.curve, flows[i]!);
  }
  return { heads, flows, line, own };
}

/** Place on a list of falling heads at which a head stands: a whole number is a point of it; below 0 above the first one. */
function placeOf(heads: Float64Array, head: number): number {
  if (head >= heads[0]!) return -1;
  if (head <= heads[curveSamples]!) return curveSamples;
  let low = 0;
  let high = curveSamples;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (heads[middle]! > head) low = middle;
    else high = middle;
  }
  return low + (heads[low]! - head) / (heads[low]! - heads[high]!);
}

function between(list: Float64Array, place: number): number {
  const low = Math.min(curveSamples - 1, Math.floor(place));
  return list[low]! + (list[low + 1]! - list[low]!) * (place - low);
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

const emptyPath = (line: PumpLine, equivalentLength: number, c: number): DischargePath => ({
  staticHead: 0, equivalentLength, innerDiameter: line.line.innerDiameter, hazenWilliamsC: c, openingHead: 0,
});

/**
 * Net flow of a pump on its line, against the static head [m].
 * Each point of its curve asks for one static head, so nothing has to be searched:
 *
 *   static = H(Q) - opening - L_e*S(Q) for a full line;  H/x - opening - L_e*S for one that is filled to a share x
 *
 * @param filled share of the line that holds water: its lift and its friction count so far
 * @param c      Hazen-Williams coefficient
 * Limits: flow of the last datasheet point where the line asks for less; what the weep hole returns is taken off
 * Source: see dutyPoint
 */
function rateAlone({ heads, flows, line }: PumpSamples, filled: number, c: number, range: HeadRange): FlowTable {
  const path = emptyPath(line, line.equivalentLength, c);
  const statics: number[] = [];
  const nets: number[] = [];
  for (let i = 0; i <= curveSamples; i += 1) {
    const flow = flows[i]!;
    const head = heads[i]!;
    add(statics, nets, head / filled - line.outlet.openingHead - systemHead(path, flow), flow > 0 ? flow - weepAt(line, head) : 0);
  }
  return resample(statics, nets, range);
}

/**
 * The same of pumps side by side. Where they meet they have one head, each less what its own valve takes of its own flow; a pump
 * that does not reach that head stands behind its shut valve.
 * Source: pumps in parallel add their flows at one head, handbooks
 */
function rateTogether(samples: readonly PumpSamples[], filled: number, c: number, range: HeadRange): FlowTable {
  const { line, own } = samples[0]!;
  const path = emptyPath(line, line.equivalentLength - own, c);
  const meeting = samples.map((sample) => {
    const valve = emptyPath(sample.line, filled * sample.own, c);
    return sample.heads.map((head, i) => head - systemHead(valve, sample.flows[i]!));
  });
  const highest = meeting.reduce((most, heads) => Math.max(most, heads[0]!), -Infinity);
  const lowest = meeting.reduce((least, heads) => Math.min(least, heads[curveSamples]!), Infinity);
  const statics: number[] = [];
  const nets: number[] = [];
  for (let i = 0; i <= curveSamples; i += 1) {
    const head = highest - ((highest - lowest) * i) / curveSamples;
    let flow = 0;
    let net = 0;
    samples.forEach((sample, k) => {
      const place = placeOf(meeting[k]!, head);
      if (place <= 0) return;
      const part = between(sample.flows, place);
      flow += part;
      net += Math.max(0, part - weepAt(sample.line, between(sample.heads, place)));
    });
    add(statics, nets, head / filled - line.outlet.openingHead - systemHead(path, flow), net);
  }
  return resample(statics, nets, range);
}

/** One more point: a static head that does not fall is taken as the one before. */
function add(statics: number[], nets: number[], asked: number, net: number): void {
  const before = statics[statics.length - 1];
  statics.push(before === undefined ? asked : Math.min(before, asked));
  nets.push(Math.max(0, net));
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
  const shared = lines.every(({ valve }) => valve === lines[0]!.valve);
  const all = lines.map((line) => samplesOf(line, shared ? 0 : line.valveLength));
  const coefficient = c ?? lines[0]!.line.hazenWilliamsC;
  const flowOf = (mask: number, filled: number): FlowTable => {
    const some = all.filter((_, k) => holds(mask, k));
    return some.length === 1 ? rateAlone(some[0]!, filled, coefficient, range) : rateTogether(some, filled, coefficient, range);
  };
  return {
    flow: noLess(all.length, (mask) => flowOf(mask, 1)),
    filling: noLess(all.length, (mask) => {
      const parts = Array.from({ length: fillingParts }, (_, i) => flowOf(mask, kept + ((1 - kept) * (i + 0.5)) / fillingParts));
      // The time to fill is the sum of its parts' times: their flows have a harmonic mean.
      return FlowTable.tabulate(range.low, range.high, ratingCells, (head) => {
        const time = parts.reduce((sum, part) => sum + 1 / part.flow(head), 0);
        return time < Infinity ? fillingParts / time : 0;
      });
    }),
  };
}

const holds = (mask: number, k: number): boolean => Math.floor(mask / powerOfTwo(k)) % 2 === 1;

/**
 * Each mask is rated when it is first asked for, and no set of pumps gives less than one without any single one of its pumps: what it
 * would lose by that pump's weep hole it does not, as the valve of a pump that adds nothing stays shut. Sets of more pumps are
 * compared with the set without the last of them.
 */
function noLess(count: number, rate: (mask: number) => FlowTable): (mask: number) => FlowTable {
  const rated: (mask: number) => FlowTable = once((mask) => {
    const members = Array.from({ length: count }, (_, k) => k).filter((k) => holds(mask, k));
    if (members.length < 2) return rate(mask);
    const left = members.length > mostCompared ? members.slice(-1) : members;
    return left.reduce((table, k) => table.greater(rated(mask - powerOfTwo(k))), rate(mask));
  });
  return rated;
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
