import type { Results } from '@yardfall/calc';
import type { MessageCode, QuantityKind } from '@yardfall/text';

export interface PartLine {
  readonly part: string;
  readonly label: MessageCode;
  readonly quantity: QuantityKind;
  readonly value: number;
  /** Where the number stands in the evaluation. */
  readonly result: string;
}

/** The numbers that stand at the parts in one storm, in the order in which the water meets them. */
export function partLines(results: Results, returnPeriod: number): PartLine[] {
  return [...gutterLines(results), ...channelLines(results, returnPeriod), ...pipeLines(results), ...basinLines(results), ...pumpLines(results)];
}

type Line = (label: MessageCode, quantity: QuantityKind, value: number | null, field: string, part?: string) => PartLine[];

/** Lines of one part whose results stand at `place`. */
function linesAt(of: string, place: string): Line {
  return (label, quantity, value, field, part = of) => (value === null ? [] : [{ part, label, quantity, value, result: `/results/${place}/${field}` }]);
}

function gutterLines(results: Results): PartLine[] {
  return results.gutters.flatMap((gutter, index) => {
    const line = linesAt(gutter.part, `gutters/${String(index)}`);
    return [
      ...line('designs.line.demand', 'flow', gutter.demand, 'demand'),
      ...line('designs.line.gutterCapacity', 'flow', Math.min(gutter.capacity, gutter.leaderCapacity), gutter.leaderCapacity < gutter.capacity ? 'leaderCapacity' : 'capacity'),
      ...line('designs.line.overflow', 'flow', gutter.overflow, 'overflow'),
    ];
  });
}

function channelLines(results: Results, returnPeriod: number): PartLine[] {
  return results.channels.flatMap((channel, index) => {
    if (channel.returnPeriod !== returnPeriod) return [];
    const line = linesAt(channel.part, `channels/${String(index)}`);
    return [
      ...line('designs.line.channelFlow', 'flow', channel.flow, 'flow'),
      ...line('designs.line.depthFree', 'height', channel.depthFreeFrictionless, 'depthFreeFrictionless'),
      ...line('designs.line.depthReal', 'height', channel.depth, 'depth'),
      ...line('designs.line.channelShare', 'percent', channel.share, 'share'),
    ];
  });
}

function pipeLines(results: Results): PartLine[] {
  return results.pipes.flatMap((pipe, index) => {
    const line = linesAt(pipe.part, `pipes/${String(index)}`);
    return [
      ...line('designs.line.fall', 'slope', pipe.slope, 'slope'),
      ...line('designs.line.fullFlow', 'flow', pipe.fullFlow, 'fullFlow'),
      ...line('designs.line.pipeFlow', 'flow', pipe.designFlow, 'designFlow'),
      ...line('designs.line.pipeShare', 'percent', pipe.share, 'share'),
    ];
  });
}

function basinLines(results: Results): PartLine[] {
  return results.basins.flatMap((basin, index) => {
    const line = linesAt(basin.part, `basins/${String(index)}`);
    return [
      ...line('designs.line.workingVolume', 'volume', basin.workingVolume, 'workingVolume'),
      ...line('designs.line.starts', 'count', basin.worstStartsPerHour, 'worstStartsPerHour'),
      ...line('designs.line.aloneRun', 'seconds', basin.aloneRunTime, 'aloneRunTime'),
    ];
  });
}

function pumpLines(results: Results): PartLine[] {
  return results.pumps.flatMap((pump, index) => {
    const line = linesAt(pump.part, `pumps/${String(index)}`);
    return [
      ...line('designs.line.dutyFlow', 'flow', pump.dutyAtOff.flow, 'dutyAtOff/flow'),
      ...line('designs.line.dutyHead', 'length', pump.dutyAtOff.head, 'dutyAtOff/head'),
      ...line('designs.line.velocity', 'velocity', pump.dutyAtOff.velocity, 'dutyAtOff/velocity', pump.line),
      ...line('designs.line.lineVolume', 'volume', pump.lineVolume, 'lineVolume', pump.line),
      ...line('designs.line.runBack', 'volume', pump.runBack, 'runBack'),
      ...line('designs.line.weep', 'flow', pump.weepFlow, 'weepFlow'),
    ];
  });
}
