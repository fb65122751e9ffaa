import type { Label } from '../labels.ts';
import { wrapped } from '../svg/letters.ts';
import type { SvgNode } from '../svg/tree.ts';
import type { DrawingTable } from '../table.ts';
import type { Heading, Say } from './block.ts';
import { rule, words } from './ink.ts';
import type { Leaf, SheetContext } from './sheet.ts';

const size = 12;
const leading = 15;
const gap = 28;

interface Row {
  readonly cells: readonly (readonly string[])[];
  readonly height: number;
}

/** A table on as many sheets as it needs, in two columns of rows; `shares` are the widths of its columns. */
export function tableSheets(table: DrawingTable, shares: readonly number[], context: SheetContext, heading: Heading, halves: 1 | 2 = 2): Leaf[] {
  const { field } = context.paper;
  const width = (field.width - gap * (halves - 1)) / halves;
  const wide = shares.map((share) => share * width);
  const head = rowOf(table.columns, wide, context.say);
  const rows = table.rows.map((row) => rowOf(row, wide, context.say));
  const top = field.y + 20;
  const bottom = field.y + field.height;
  const leaves: Leaf[] = [];
  let body: SvgNode[] = [];
  let half = -1;
  let y = Infinity;
  const turn = (): void => {
    half += 1;
    if (half === halves) {
      leaves.push({ heading, drawing: null, body });
      body = [];
      half = 0;
    }
    const x = field.x + half * (width + gap);
    body.push(...put(head, x, top, wide, true), rule(x, top + head.height, x + width, top + head.height, 1.2));
    y = top + head.height + 4;
  };
  for (const row of rows) {
    if (y + row.height > bottom) turn();
    const x = field.x + half * (width + gap);
    body.push(...put(row, x, y, wide, false), rule(x, y + row.height, x + width, y + row.height, 0.4));
    y += row.height + 2;
  }
  return rows.length === 0 ? [] : [...leaves, { heading: { ...heading, title: heading.title }, drawing: null, body }];
}

function rowOf(row: readonly Label[], wide: readonly number[], say: Say): Row {
  const cells = row.map(({ code, params }, at) => wrapped(say(code, params), size, (wide[at] ?? 0) - 10));
  return { cells, height: Math.max(...cells.map((lines) => lines.length)) * leading + 2 };
}

function put({ cells }: Row, x: number, y: number, wide: readonly number[], bold: boolean): SvgNode[] {
  let left = x;
  return cells.flatMap((lines, at) => {
    const nodes = lines.map((line, index) => words(line, left, y + size + index * leading, size, { bold }));
    left += wide[at] ?? 0;
    return nodes;
  });
}
