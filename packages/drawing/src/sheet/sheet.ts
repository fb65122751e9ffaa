import type { DisplayList } from '../display.ts';
import { toSvg } from '../svg/render.ts';
import { node } from '../svg/tree.ts';
import type { SvgNode } from '../svg/tree.ts';
import { furniture, warnings } from './block.ts';
import type { Heading, Issue, Say } from './block.ts';
import { moved } from './ink.ts';
import type { Paper, Rect } from './paper.ts';

/** What one sheet holds, before its number is known. */
export interface Leaf {
  readonly heading: Heading;
  /** The drawing and where it lies on the sheet [units]; none on a sheet of words. */
  readonly drawing: { readonly display: DisplayList; readonly at: Rect } | null;
  readonly body: readonly SvgNode[];
}

/** A sheet that is ready for any medium: a tree in units from the upper left corner of the paper. */
export interface Sheet {
  readonly paper: Paper;
  readonly title: Heading['title'];
  readonly drawing: Leaf['drawing'];
  readonly tree: SvgNode;
}

export interface SheetContext {
  readonly paper: Paper;
  readonly issue: Issue;
  readonly say: Say;
  readonly unit: 'foot' | 'metre';
}

export function bind(leaves: readonly Leaf[], { paper, issue, say }: SheetContext): Sheet[] {
  return leaves.map(({ heading, drawing, body }, index) => ({
    paper, title: heading.title, drawing,
    tree: node('svg', { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${paper.width} ${paper.height}`, width: paper.width, height: paper.height, 'font-family': 'Atkinson Hyperlegible Next, sans-serif' }, [
      ...body, ...furniture(paper, issue, heading, { at: index + 1, of: leaves.length }, say), ...warnings(paper, issue, say),
    ]),
  }));
}

/** Lettering on paper [units]: 7.8 points. */
export const letterSize = 13;

/** A drawing as it stands on paper, with its key below it; its height is told, since the key takes what it needs. */
export function drawn(display: DisplayList, size: { readonly width: number; readonly height: number }, say: Say, id: string): { readonly tree: SvgNode; readonly height: number } {
  const tree = toSvg(display, { ...size, label: say, theme: 'print', hits: false, textSize: letterSize, maxRank: 6, idPrefix: id });
  return { tree, height: Number(tree.attrs['height']) };
}

export const placed = (tree: SvgNode, at: { readonly x: number; readonly y: number }): SvgNode => moved(at.x, at.y, tree.children);
