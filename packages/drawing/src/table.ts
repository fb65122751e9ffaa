import type { DesignDocument, Evaluation, LowSpot, PumpResult, StormRun } from '@yardfall/calc';
import type { DisplayList } from './display.ts';
import { windowOf, peakTime } from './graphs/storm-window.ts';
import { stageVolumes } from './graphs/stage-graph.ts';
import { label } from './labels.ts';
import type { Label } from './labels.ts';

/** What a drawing says, as a table for a reader who cannot see it. */
export interface DrawingTable {
  readonly caption: Label;
  readonly columns: readonly Label[];
  readonly rows: readonly (readonly Label[])[];
}

const value = (kind: 'level' | 'flow' | 'head' | 'volume' | 'area' | 'intensity' | 'minutes' | 'name', amount: number | string): Label =>
  label(`drawing.value.${kind}`, { value: amount });

/** One row for every lettered thing of the section, in the order in which the water meets it. */
export function sectionTable(document: DesignDocument, evaluation: Evaluation | null, drawn: DisplayList): DrawingTable {
  const { site, system } = document;
  const names = new Map<string, string>(
    [...site.sills, ...site.lowSpots, ...site.candidateOutlets, ...site.utilities, ...system.parts].map(({ id, name }) => [id, name]),
  );
  const texts = drawn.items.flatMap((item) => (item.kind === 'text' && item.part !== null ? [{ part: item.part, label: item.label }] : []));
  const rows = texts.map(({ part, label: what }) => [value('name', names.get(part) ?? part), what]);
  const waterTable = site.soil.seasonalHighWaterTable;
  if (waterTable !== null) rows.push([label('drawing.value.ground'), label('drawing.waterTable', { level: waterTable })]);
  for (const { outlet, shortfall } of evaluation?.results.gravity ?? []) {
    const code = shortfall > 0 ? 'drawing.shortfall' : 'drawing.toSpare';
    if (!texts.some((text) => text.part === outlet && text.label.code === code)) {
      rows.push([value('name', names.get(outlet) ?? outlet), label(code, { height: Math.abs(shortfall) })]);
    }
  }
  return { caption: label('drawing.table.section'), columns: [label('drawing.table.part'), label('drawing.table.what')], rows };
}

/** One row for every shape of the plan with its measure, then the spot levels that have a place on it. */
export function planTable({ site }: DesignDocument, measures: ReadonlyMap<string, number>): DrawingTable {
  const shapes = (site.plan?.shapes ?? []).map(({ id, name, kind }) => {
    const measure = measures.get(id) ?? 0;
    return [value('name', name), kind === 'place' ? label('drawing.value.place') : kind === 'area' ? value('area', measure) : label('drawing.value.length', { value: measure })];
  });
  const spots = site.spotLevels.filter(({ position }) => position !== null).map(({ name, level }) => [value('name', name), value('level', level)]);
  return { caption: label('drawing.table.plan'), columns: [label('drawing.table.part'), label('drawing.table.measure')], rows: [...shapes, ...spots] };
}

/** The storm at every `every` seconds of the window that its graph shows. */
export function stormTable(run: StormRun, every = 300): DrawingTable {
  const [from, to] = windowOf(run);
  const peak = peakTime(run);
  const rows: Label[][] = [];
  for (let time = from; time <= to; time += every) {
    const index = Math.min(Math.round((time - run.start) / run.step), run.intensity.length - 1);
    const pick = (values: readonly number[]): number => values[index] ?? 0;
    rows.push([
      value('minutes', run.start + index * run.step - peak), value('intensity', pick(run.intensity)), value('flow', pick(run.inflow)),
      value('flow', pick(run.pumpFlow)), value('level', pick(run.pondLevel)),
      run.basinLevel.length > 0 ? value('level', pick(run.basinLevel)) : label('drawing.value.none'),
    ]);
  }
  const columns = ['time', 'rain', 'inflow', 'pumpFlow', 'pond', 'basin'] as const;
  return { caption: label('drawing.table.storm'), columns: columns.map((name) => label(`drawing.table.${name}`)), rows };
}

export function pumpTable(result: PumpResult): DrawingTable {
  const lift = result.dutyAtOn.staticHead - result.dutyAtOff.staticHead;
  const rows = result.pumpCurve.map(({ flow, head }) => {
    const system = result.systemCurve.find((sample) => Math.abs(sample.flow - flow) <= 1e-9 + flow * 1e-6);
    const line = (more: number): Label => (system === undefined ? label('drawing.value.none') : value('head', system.head + more));
    return [value('flow', flow), value('head', head), line(lift), line(0)];
  });
  const columns = ['flow', 'pumpHead', 'headAtStart', 'headAtStop'] as const;
  return { caption: label('drawing.table.pump'), columns: columns.map((name) => label(`drawing.table.${name}`)), rows };
}

export function stageTable(spot: LowSpot): DrawingTable {
  const rows = stageVolumes(spot.stageArea).map(({ level, area, volume }) => [value('level', level), value('area', area), value('volume', volume)]);
  const columns = ['level', 'area', 'volume'] as const;
  return { caption: label('drawing.table.stage'), columns: columns.map((name) => label(`drawing.table.${name}`)), rows };
}
