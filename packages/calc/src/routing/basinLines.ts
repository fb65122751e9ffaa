import type { Basin, DesignDocument, Pump } from '../document/document.ts';
import { FlowTable } from './levelTable.ts';
import { powerOfTwo, rateLine, type HeadRange } from './lineRating.ts';
import type { LineStore, PumpRating, PumpUnit, Returns } from './model.ts';
import { partsOf } from './pathParts.ts';
import { pumpLineOf, type PumpLine } from './pumpLine.ts';

/** Ratings are told by a mask of pumps: no line is fed by more than these. */
const mostPumps = 20;

export interface BasinPumps {
  readonly units: readonly PumpUnit[];
  readonly lines: readonly LineStore[];
  readonly pump: PumpRating | null;
}

export interface LineContext {
  /** Highest level in the basin that is rated [m]. */
  readonly top: number;
  readonly wellOf: (outlet: string) => { readonly index: number; readonly top: number } | null;
  readonly returnsOf: (outlet: string) => Returns | null;
}

function unitOf(pump: Pump, basin: Basin): PumpUnit {
  const startLevel = pump.role === 'duty' ? basin.onLevel : pump.startLevel ?? basin.alarmLevel;
  const battery = pump.power === 'battery';
  return {
    id: pump.id, startLevel: Math.max(startLevel, basin.offLevel + 0.001), battery,
    energy: battery ? pump.energy ?? 0 : Infinity, inputPower: battery ? pump.inputPower ?? 0 : 0,
  };
}

/**
 * Share of a line that keeps its water when it runs back: what lies beyond its lowest sag, on an even rise from the basin to the lift.
 * Source: ours
 */
export function keptShare(item: PumpLine): number {
  const sag = item.line.lowestSag;
  const rise = item.liftLevel - item.basin.offLevel;
  if (sag === null || rise <= 0) return 0;
  return Math.max(0, Math.min(1, (item.liftLevel - sag) / rise));
}

function lineStore(members: readonly PumpLine[], units: readonly number[], context: LineContext): LineStore {
  const first = members[0]!;
  const well = context.wellOf(first.outlet.id);
  const range: HeadRange = { low: first.liftLevel - context.top, high: Math.max(first.liftLevel, well?.top ?? -Infinity) - first.basin.floorLevel };
  const open = members.some(({ checkValve }) => !checkValve);
  const kept = open ? keptShare(first) : 0;
  return {
    id: first.line.id, units, liftLevel: first.liftLevel, well: well?.index ?? -1, returns: well === null ? context.returnsOf(first.outlet.id) : null,
    volume: first.lineVolume, runBack: open ? first.lineVolume * (1 - kept) : 0, ...rateLine(members, range, kept),
  };
}

/** Net flow of the duty pumps against basin level, their lines full. */
export function dutyRating(pumps: readonly Pump[], lines: readonly LineStore[], top: number, floor: number): PumpRating | null {
  const duty = pumps.findIndex(({ role }) => role === 'duty');
  if (duty < 0) return null;
  let flow: FlowTable | null = null;
  const masks = lines.map(({ units }) => units.reduce((sum, unit, k) => (pumps[unit]!.role === 'duty' ? sum + powerOfTwo(k) : sum), 0));
  if (lines.length === 1) flow = lines[0]!.flow(masks[0]!).mirrored(lines[0]!.liftLevel);
  else {
    flow = FlowTable.tabulate(floor, top, 96, (level) =>
      lines.reduce((sum, line, i) => sum + (masks[i]! > 0 ? line.flow(masks[i]!).flow(line.liftLevel - level) : 0), 0));
  }
  const used = lines.filter((_, i) => masks[i]! > 0);
  return {
    id: pumps[duty]!.id, flow, lineVolume: used.reduce((sum, { volume }) => sum + volume, 0), runBack: used.reduce((sum, { runBack }) => sum + runBack, 0),
  };
}

/** Pumps of a basin, duty and standby, each on the line that it drains to. */
export function basinPumps(document: DesignDocument, basin: Basin, context: LineContext): BasinPumps {
  const pumps = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id).slice(0, mostPumps);
  const paths = pumps.map((pump) => pumpLineOf(document, pump));
  const groups = new Map<string, number[]>();
  paths.forEach(({ line }, index) => { groups.set(line.id, [...(groups.get(line.id) ?? []), index]); });
  const lines = [...groups.values()].map((indices) => lineStore(indices.map((index) => paths[index]!), indices, context));
  return { units: pumps.map((pump) => unitOf(pump, basin)), lines, pump: dutyRating(pumps, lines, context.top, basin.floorLevel) };
}
