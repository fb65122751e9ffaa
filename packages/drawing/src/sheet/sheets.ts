import type { DesignDocument, Evaluation, StormRun } from '@yardfall/calc';
import { overlay, overlayProfile, overlayTable } from '../compare/overlay.ts';
import type { Compared } from '../compare/overlay.ts';
import { pumpGraph } from '../graphs/pump-graph.ts';
import { stormGraph } from '../graphs/storm-graph.ts';
import { label } from '../labels.ts';
import { groundLine } from '../section/ground.ts';
import { paperSize, profileOf } from '../section/frame.ts';
import { layOut } from '../section/layout.ts';
import { defaultSectionOptions } from '../section/options.ts';
import { section } from '../section.ts';
import { sectionTable } from '../table.ts';
import type { DisplayList } from '../display.ts';
import { profileSheets } from './profile.ts';
import type { Profile } from './profile.ts';
import { bind, drawn, placed } from './sheet.ts';
import type { Leaf, Sheet, SheetContext } from './sheet.ts';
import { tableSheets } from './table.ts';

export interface Printed {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
}

/** A millimeter an hour, a meter, a liter a second; the other system is the graphs' own. */
const metricStorm = { rain: 0.001 / 3600, level: 1, flow: 0.001 };

/** The water of the section at the highest moment of the storm; none where no storm was run. */
export function highestWater(run: StormRun | null): { pond: number | null; basin: number | null } {
  if (run === null) return { pond: null, basin: null };
  const at = run.pondLevel.reduce((best, level, index) => (level > (run.pondLevel[best] ?? -Infinity) ? index : best), 0);
  return { pond: run.pondLevel[at] ?? null, basin: run.basinLevel[at] ?? null };
}

export function profileOfSection({ document, evaluation }: Printed, unit: 'foot' | 'metre'): Profile {
  const water = highestWater(evaluation?.results.storm ?? null);
  const options = { ...defaultSectionOptions, water, scaleUnit: unit };
  const layout = layOut(document);
  const profile = profileOf(document, layout, groundLine(document, layout), options);
  return { ...profile, sizeAt: (scale) => paperSize(profile, scale), draw: (scale, size) => section(document, evaluation, { water, scaleUnit: unit, scale, ...size }) };
}

/** The long profile at a scale of the rule, and the levels that stand on it as a table. */
export function sectionSheets(printed: Printed, context: SheetContext): Sheet[] {
  const { document, evaluation } = printed;
  const run = evaluation?.results.storm ?? null;
  const { benchMark, level } = document.site.datum;
  const datum = label('drawing.sheet.datum', { name: benchMark, level });
  const notes = run === null ? [datum] : [label('drawing.sheet.water', { years: run.returnPeriod }), datum];
  const profile = profileSheets(profileOfSection(printed, context.unit), context, label('drawing.sheet.section'), notes);
  const whole = section(document, evaluation, { breaks: false, water: highestWater(run) });
  const heading = { title: label('drawing.sheet.levels'), scales: [], notes: [datum] };
  return bind([...profile, ...tableSheets(sectionTable(document, evaluation, whole), [0.36, 0.64], context, heading)], context);
}

/** Two revisions of a section in one frame, and what was lettered then and now. */
export function compareSheets(compared: Compared, numbers: { readonly before: number; readonly after: number }, context: SheetContext): Sheet[] {
  const size = overlayProfile(compared);
  const profile: Profile = { ...size, sizeAt: (scale) => paperSize(size, scale), draw: (scale, { width, height }) => overlay(compared, { width, height, scale }) };
  const notes = [label('drawing.sheet.between', numbers)];
  const leaves = profileSheets(profile, context, label('drawing.sheet.compare'), notes);
  return bind([...leaves, ...tableSheets(overlayTable(compared), [0.34, 0.33, 0.33], context, { title: label('drawing.sheet.differences'), scales: [], notes }, 1)], context);
}

/** The design storm over time. */
export function stormSheets({ document, evaluation }: Printed, context: SheetContext): Sheet[] {
  const run = evaluation?.results.storm ?? null;
  if (run === null) return [];
  const { field } = context.paper;
  const size = { width: field.width, height: field.height };
  const highest = run.pondLevel.indexOf(Math.max(...run.pondLevel));
  const display = stormGraph(document, run, {
    ...size, cursor: run.start + Math.max(highest, 0) * run.step, sill: document.site.sills[0]?.id ?? null, ...(context.unit === 'metre' ? { units: metricStorm } : {}),
  });
  return bind([graph(display, context, { title: label('drawing.sheet.storm', { years: run.returnPeriod }), scales: [label('drawing.sheet.notToScale')], notes: [] })], context);
}

/** One sheet for each pump. */
export function pumpSheets({ document, evaluation }: Printed, context: SheetContext): Sheet[] {
  const { field } = context.paper;
  const pumps = evaluation?.results.pumps ?? [];
  return bind(pumps.map((pump) => {
    const display = pumpGraph(pump, { width: field.width, height: field.height, ...(context.unit === 'metre' ? { flowUnit: 0.001, headUnit: 1 } : {}) });
    const name = document.system.parts.find(({ id }) => id === pump.part)?.name ?? pump.part;
    return graph(display, context, { title: label('drawing.sheet.pump', { name }), scales: [label('drawing.sheet.notToScale')], notes: [] });
  }), context);
}

function graph(display: DisplayList, context: SheetContext, heading: Leaf['heading']): Leaf {
  const { field } = context.paper;
  const { tree } = drawn(display, field, context.say, 'g');
  return { heading, drawing: { display, at: field }, body: [placed(tree, field)] };
}

