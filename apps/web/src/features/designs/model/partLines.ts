import type { Results } from '@yardfall/calc';
import type { MessageCode, QuantityKind } from '@yardfall/text';

export interface PartLine {
  readonly part: string;
  readonly label: MessageCode;
  readonly quantity: QuantityKind;
  readonly value: number;
}

/** The numbers that stand at the parts in one storm, in the order in which the water meets them. */
export function partLines(results: Results, returnPeriod: number): PartLine[] {
  return [...gutterLines(results), ...channelLines(results, returnPeriod), ...pipeLines(results), ...basinLines(results), ...pumpLines(results)];
}

function line(part: string, label: MessageCode, quantity: QuantityKind, value: number | null): PartLine[] {
  return value === null ? [] : [{ part, label, quantity, value }];
}

function gutterLines(results: Results): PartLine[] {
  return results.gutters.flatMap((gutter) => [
    ...line(gutter.part, 'designs.line.demand', 'flow', gutter.demand),
    ...line(gutter.part, 'designs.line.gutterCapacity', 'flow', Math.min(gutter.capacity, gutter.leaderCapacity)),
    ...line(gutter.part, 'designs.line.overflow', 'flow', gutter.overflow),
  ]);
}

function channelLines(results: Results, returnPeriod: number): PartLine[] {
  return results.channels.filter((channel) => channel.returnPeriod === returnPeriod).flatMap((channel) => [
    ...line(channel.part, 'designs.line.channelFlow', 'flow', channel.flow),
    ...line(channel.part, 'designs.line.depthFree', 'height', channel.depthFreeFrictionless),
    ...line(channel.part, 'designs.line.depthReal', 'height', channel.depth),
    ...line(channel.part, 'designs.line.channelShare', 'percent', channel.share),
  ]);
}

function pipeLines(results: Results): PartLine[] {
  return results.pipes.flatMap((pipe) => [
    ...line(pipe.part, 'designs.line.fall', 'slope', pipe.slope),
    ...line(pipe.part, 'designs.line.fullFlow', 'flow', pipe.fullFlow),
    ...line(pipe.part, 'designs.line.pipeFlow', 'flow', pipe.designFlow),
    ...line(pipe.part, 'designs.line.pipeShare', 'percent', pipe.share),
  ]);
}

function basinLines(results: Results): PartLine[] {
  return results.basins.flatMap((basin) => [
    ...line(basin.part, 'designs.line.workingVolume', 'volume', basin.workingVolume),
    ...line(basin.part, 'designs.line.starts', 'number', basin.worstStartsPerHour),
    ...line(basin.part, 'designs.line.aloneRun', 'seconds', basin.aloneRunTime),
  ]);
}

function pumpLines(results: Results): PartLine[] {
  return results.pumps.flatMap((pump) => [
    ...line(pump.part, 'designs.line.dutyFlow', 'flow', pump.dutyAtOff.flow),
    ...line(pump.part, 'designs.line.dutyHead', 'length', pump.dutyAtOff.head),
    ...line(pump.line, 'designs.line.velocity', 'velocity', pump.dutyAtOff.velocity),
    ...line(pump.line, 'designs.line.lineVolume', 'volume', pump.lineVolume),
    ...line(pump.part, 'designs.line.runBack', 'volume', pump.runBack),
    ...line(pump.part, 'designs.line.weep', 'flow', pump.weepFlow),
  ]);
}
