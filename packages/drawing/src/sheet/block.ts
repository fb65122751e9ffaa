import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import { textWidth } from '../svg/letters.ts';
import { node } from '../svg/tree.ts';
import type { SvgNode } from '../svg/tree.ts';
import { frame, lines, rule, words } from './ink.ts';
import type { Paper } from './paper.ts';

export type Say = (code: Label['code'], params: Label['params']) => string;

/** What the title block says of the revision; no name of a customer and no address stands on a sheet. */
export interface Issue {
  readonly company: string;
  readonly job: number;
  readonly state: string;
  readonly design: string;
  readonly revision: number;
  readonly sha256: string;
  readonly status: 'draft' | 'issued' | 'superseded';
  readonly provisional: boolean;
  /** Day of the issue, or of the last edit of a draft: YYYY-MM-DD. */
  readonly day: string;
  readonly by: string;
}

/** What this sheet is, and its scales in words. */
export interface Heading {
  readonly title: Label;
  readonly scales: readonly Label[];
  readonly notes: readonly Label[];
}

/** Border, title block, and over the drawing what keeps it from being built from. */
export function furniture(paper: Paper, issue: Issue, heading: Heading, page: { readonly at: number; readonly of: number }, say: Say): SvgNode[] {
  const { block, border } = paper;
  const tell = ({ code, params }: Label): string => say(code, params);
  const cells = [
    { width: 0.2, parts: cell(issue.company, [tell(label('drawing.sheet.property', { number: issue.job, state: issue.state }))]) },
    { width: 0.28, parts: cell(tell(heading.title), [...heading.scales, ...heading.notes].map(tell)) },
    { width: 0.34, parts: cell(tell(label('drawing.sheet.revision', { name: issue.design, number: issue.revision })), [tell(label('drawing.sheet.hash')), issue.sha256.slice(0, 32), issue.sha256.slice(32)]) },
    { width: 0.18, parts: cell(tell(label('drawing.sheet.number', page)), [...status(issue, tell), tell(label(issue.status === 'draft' ? 'drawing.sheet.asOf' : 'drawing.sheet.issued', { at: issue.day, name: issue.by }))]) },
  ];
  const nodes: SvgNode[] = [frame(border, 1.6), rule(block.x, block.y, block.x + block.width, block.y, 1.6)];
  let x = block.x;
  for (const { width, parts } of cells) {
    if (x > block.x) nodes.push(rule(x, block.y, x, block.y + block.height));
    nodes.push(...put(parts, x + 10, block.y, width * block.width - 18));
    x += width * block.width;
  }
  return nodes;
}

const cell = (head: string, rows: readonly string[]) => ({ head, rows });

const status = (issue: Issue, tell: (label: Label) => string): string[] => [
  ...(issue.status === 'draft' ? [tell(label('drawing.sheet.draft'))] : []),
  ...(issue.status === 'superseded' ? [tell(label('drawing.sheet.superseded'))] : []),
  ...(issue.provisional ? [tell(label('drawing.sheet.provisional'))] : []),
];

function put({ head, rows }: ReturnType<typeof cell>, x: number, top: number, width: number): SvgNode[] {
  const nodes: SvgNode[] = [];
  let y = top + 21;
  for (const line of lines(head, 15, width, 2)) {
    nodes.push(words(line, x, y, 15, { bold: true }));
    y += 17;
  }
  for (const row of rows) {
    for (const line of lines(row, 11.5, width, 2)) {
      nodes.push(words(line, x, y, 11.5));
      y += 14;
    }
  }
  return nodes;
}

/** In large letters over the drawing, so that a copy of a part of the sheet says it too. */
export function warnings(paper: Paper, issue: Issue, say: Say): SvgNode[] {
  const size = 17;
  const { field } = paper;
  let right = field.x + field.width;
  return status(issue, ({ code, params }) => say(code, params)).map((text) => {
    const width = textWidth(text, size) * 1.06 + 24;
    const box = { x: right - width, y: field.y + 2, width, height: 28 };
    right -= width + 10;
    return node('g', {}, [frame(box, 1.6, 'paper'), words(text, box.x + 12, box.y + 20, size, { bold: true })]);
  });
}
