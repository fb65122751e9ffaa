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
 * onTwin: each runs only above its own start level, or above the level to which its lines run back where that is higher: a real pump lets the basin come up there at every stop.
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

/** Level of a basin that stands at its off level when all of its lines run back into it. */
function backLevel({ storage, offLevel, lines }: BasinStore): number {
  let back = 0;
  for (const { runBack } of lines) back += runBack;
  return back === 0 ? offLevel : storage.level(storage.volume(offLevel) + back);
}

/** Level up to which a basin fills before any pump of the onTwin runs. */
export const restLevel = (basin: BasinStore): number => Math.max(basin.onLevel, backLevel(basin));

function onStages(basin: BasinStore, index: number, line: LineStore, available: Available): PumpStage[] {
  const least = backLevel(basin);
  const startOf = (unit: number): number => Math.max(least, basin.units[unit]!.startLevel);
  const starts = [...new Set(line.units.filter((unit) => available(index, unit)).map(startOf))].sort((a, b) => a - b);
  return starts.map((start) => ({ start, table: line.flow(maskOf(line, (unit) => available(index, unit) && startOf(unit) <= start)) }));
}

/** Bits of the pumps of a line that run. */
export function maskOf(line: LineStore, runs: (unit: number) => boolean): number {
  let mask = 0;
  for (let k = 0; k < line.units.length; k += 1) if (runs(line.units[k]!)) mask += powerOfTwo(k);
  return mask;
}
