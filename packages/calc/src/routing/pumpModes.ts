import { film, type PumpStage } from './fluxes.ts';
import { powerOfTwo } from './lineRating.ts';
import type { BasinStore, LineStore } from './model.ts';
import type { Network } from './network.ts';
import type { RunMode } from './run.ts';

/** Which pumps can run: powered, and with energy left. */
export type Available = (basin: number, unit: number) => boolean;

/**
 * Sets the pumps of a twin: they have no memory, so their flow is told by the level alone.
 * offTwin: all that can run do so above the off level, from a film below it on, so that nothing real ever pumps more.
 * onTwin: each runs only above its own start level.
 * An open line that has emptied takes more while it fills: the offTwin pumps the greater of both.
 */
export function setTwin(network: Network, mode: RunMode, available: Available): void {
  network.model.basins.forEach((basin, index) => {
    const edges = new Set<number>();
    basin.lines.forEach((line, k) => {
      const stages = mode === 'offTwin' ? offStages(basin, index, line, available) : onStages(basin, index, line, available);
      network.layout.pumps[index]![k]!.stages = stages;
      for (const { start } of stages) edges.add(start);
    });
    network.otherFlows();
    network.thresholds[network.layout.firstBasin + index] = [...edges].sort((a, b) => a - b);
  });
}

function offStages(basin: BasinStore, index: number, line: LineStore, available: Available): PumpStage[] {
  const mask = maskOf(line, (unit) => available(index, unit));
  if (mask === 0) return [];
  const full = line.flow(mask);
  return [{ start: basin.offLevel - film, table: line.runBack > 0 ? full.greater(line.filling(mask)) : full }];
}

function onStages(basin: BasinStore, index: number, line: LineStore, available: Available): PumpStage[] {
  const starts = [...new Set(line.units.filter((unit) => available(index, unit)).map((unit) => basin.units[unit]!.startLevel))].sort((a, b) => a - b);
  return starts.map((start) => ({
    start, table: line.flow(maskOf(line, (unit) => available(index, unit) && basin.units[unit]!.startLevel <= start)),
  }));
}

/** Bits of the pumps of a line that run. */
export function maskOf(line: LineStore, runs: (unit: number) => boolean): number {
  let mask = 0;
  for (let k = 0; k < line.units.length; k += 1) if (runs(line.units[k]!)) mask += powerOfTwo(k);
  return mask;
}
