import type { DesignDocument, PlanCheck, PlanFigure } from '@yardfall/calc';
import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import { plan } from '../plan/plan.ts';
import type { PlanGround } from '../plan/plan.ts';
import { places } from '../plan/view.ts';
import { planTable } from '../table.ts';
import type { DrawingTable } from '../table.ts';
import { scalesOf } from './paper.ts';
import type { Scale } from './paper.ts';
import { scaleWord } from './profile.ts';
import { bind, drawn, placed } from './sheet.ts';
import type { Leaf, Sheet, SheetContext } from './sheet.ts';
import { tableSheets } from './table.ts';

export interface PrintedPlan {
  readonly document: DesignDocument;
  readonly ground: PlanGround | null;
  readonly figures: readonly PlanFigure[];
  readonly checks: readonly PlanCheck[];
  /** What every shape measures [m2 or m]. */
  readonly measures: ReadonlyMap<string, number>;
  /** Level of the water that is drawn [m]; null where none is. */
  readonly waterLevel: number | null;
}

/** Room about what is drawn for its lettering, and at the foot for the scale bar and the arrow to north [units]. */
const room = { side: 70, top: 36, foot: 70 } as const;
const keyRoom = 60;
/** With more spot levels than these their figures would hide the plan; they stand in the table, and the contours are lettered. */
const mostLettered = 24;

/** The plan at the largest scale of the rule that takes it, its key under it, and the surfaces and levels as tables. */
export function planSheets(printed: PrintedPlan, context: SheetContext): Sheet[] {
  const { document, measures } = printed;
  if (document.site.plan === null && document.site.spotLevels.every(({ position }) => position === null)) return [];
  const surfaces = surfacesTable(document);
  const heading = { title: label('drawing.sheet.surfaces'), scales: [], notes: [] };
  const found = checksTable(printed);
  return bind([
    planLeaf(printed, context), ...(found.rows.length === 0 ? [] : tableSheets(found, [1], context, { ...heading, title: label('drawing.sheet.checks') }, 1)),
    ...(surfaces.rows.length === 0 ? [] : tableSheets(surfaces, [0.3, 0.2, 0.15, 0.15, 0.2], context, heading, 1)),
    ...tableSheets(planTable(document, measures), [0.6, 0.4], context, { ...heading, title: label('drawing.table.plan') }),
  ], context);
}

function planLeaf(printed: PrintedPlan, context: SheetContext): Leaf {
  const { field } = context.paper;
  let height = field.height - keyRoom;
  for (let attempt = 0; ; attempt += 1) {
    const { display, scale } = atScale(printed, context, height);
    const { tree, height: tall } = drawn(display, { width: field.width, height }, context.say, 'plan');
    if (tall <= field.height || attempt === 3) {
      const notes = printed.waterLevel === null || (printed.ground?.water.length ?? 0) === 0 ? [] : [label('drawing.waterBelow', { level: printed.waterLevel })];
      const heading = { title: label('drawing.sheet.plan'), scales: [scaleWord(context.unit, scale)], notes };
      return { heading, drawing: { display, at: { ...field, height } }, body: [placed(tree, field)] };
    }
    height -= Math.ceil(tall - field.height);
  }
}

function atScale({ document, ground, figures, checks }: PrintedPlan, { paper, unit }: SheetContext, height: number) {
  const { width } = paper.field;
  const all = places(document.site);
  const [x0, x1] = [Math.min(...all.map(([x]) => x)), Math.max(...all.map(([x]) => x))];
  const [y0, y1] = [Math.min(...all.map(([, y]) => y)), Math.max(...all.map(([, y]) => y))];
  const fits = ({ metres }: Scale): boolean => (x1 - x0) / metres <= width - 2 * room.side && (y1 - y0) / metres <= height - room.top - room.foot;
  const scale = scalesOf(unit).find(fits);
  if (scale === undefined) throw new RangeError('no scale of the rule takes this plan');
  const m = scale.metres;
  const left = (x0 + x1) / 2 - (width / 2) * m;
  const foot = y0 - (room.foot + (height - room.top - room.foot - (y1 - y0) / m) / 2) * m;
  const extent = { x0: left, x1: left + width * m, y0: foot, y1: foot + height * m };
  const display = plan(document, { width, height, extent, ground, figures, checks, scaleUnit: unit, key: true });
  const crowded = document.site.spotLevels.filter(({ position }) => position !== null).length > mostLettered;
  const items = display.items.filter((item) => !crowded || item.kind !== 'text' || item.part === null || item.label.code !== 'drawing.plan.level');
  return { scale, display: { ...display, items } };
}

/** What needs a look before anybody digs, in the order of the marks on the plan. */
function checksTable({ checks }: PrintedPlan): DrawingTable {
  const caption = label('drawing.sheet.checks');
  return { caption, columns: [caption], rows: checks.map(({ code, params }) => [label(code, params)]) };
}

/** What drains where: one row a surface. */
function surfacesTable({ site, system }: DesignDocument): DrawingTable {
  const names = new Map([...site.lowSpots, ...system.parts, ...site.candidateOutlets].map(({ id, name }) => [id, name]));
  const name = (value: string): Label => label('drawing.value.name', { value });
  const rows = site.catchments.map((surface) => [
    name(surface.name), label(`designs.surface.${surface.surface}`), label('drawing.value.area', { value: surface.area }), label('drawing.value.number', { value: surface.coefficient }),
    surface.drainsTo.kind === 'offSite' ? label('designs.offSite') : name(names.get(surface.drainsTo.id) ?? surface.drainsTo.id),
  ]);
  const columns = ['drawing.table.surface', 'drawing.table.what', 'drawing.table.size', 'drawing.table.coefficient', 'drawing.table.drainsTo'] as const;
  return { caption: label('drawing.sheet.surfaces'), columns: columns.map((code) => label(code)), rows };
}
