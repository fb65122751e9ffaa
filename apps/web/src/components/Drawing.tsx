import { reactProps, toSvg, type SvgNode } from '@yardfall/drawing';
import { createElement, useId, type KeyboardEvent, type ReactElement, type ReactNode } from 'react';
import { useWidth } from '../hooks/useWidth.ts';
import { useText } from '../lib/reader.tsx';
import './Drawing.css';

type DisplayList = Parameters<typeof toSvg>[0];

export interface DrawingSize {
  readonly width: number;
  readonly height: number;
}

interface DrawingProps {
  /** What is drawn, made for the size on screen. */
  readonly display: (size: DrawingSize) => DisplayList;
  /** Accessible name: what the drawing shows, in a sentence. */
  readonly title: string;
  readonly height: (width: number) => number;
  readonly selected?: string | null;
  /** Makes the parts pressable, by pointer and by keyboard. */
  readonly onSelect?: (part: string) => void;
  readonly partName?: (part: string) => string;
  /** The same as a table, for readers who do not see the drawing. */
  readonly table?: ReactNode;
  /** What lies over the picture at the same size: handles. */
  readonly over?: (display: DisplayList, size: DrawingSize) => ReactNode;
  /** Lines drawn over the picture, or a caption under it. */
  readonly children?: ReactNode;
}

/** A drawing of @yardfall/drawing as elements of the page: no markup is ever made from strings. */
export function Drawing({ display, title, height, selected = null, onSelect, partName, table, over, children }: DrawingProps) {
  const { say, t } = useText();
  const [frame, width] = useWidth<HTMLDivElement>();
  const id = useId().replace(/[^\w-]/g, '');
  const size = { width, height: Math.round(height(width)) };
  const shown = width > 0 ? display(size) : null;
  const tree = shown ? toSvg(shown, { ...size, label: (code, params) => say(code, params), title, idPrefix: `dl-${id}`, selected, hits: onSelect !== undefined }) : null;
  return (
    <figure className="drawing">
      <div ref={frame} className="drawing-frame">{tree ? elementOf(tree, 0, { onSelect, partName, selected }) : null}{shown ? over?.(shown, size) : null}</div>
      {children}
      {table ? (
        <details className="drawing-table">
          <summary>{t('ui.drawing.asTable')}</summary>
          {table}
        </details>
      ) : null}
    </figure>
  );
}

export interface Press {
  readonly onSelect: ((part: string) => void) | undefined;
  readonly partName: ((part: string) => string) | undefined;
  readonly selected: string | null;
}

/** A node of a drawing as an element of the page. */
export function elementOf(node: SvgNode, key: number, press: Press): ReactElement {
  const children = node.children.map((child, at) => (typeof child === 'string' ? child : elementOf(child, at, press)));
  return createElement(node.tag, { key, ...reactProps(node.attrs), ...pressProps(node, press) }, ...children);
}

function pressProps(node: SvgNode, { onSelect, partName, selected }: Press): Record<string, unknown> {
  if (!onSelect) return {};
  // A picture hides what is in it; one with parts to press is a group.
  if (node.tag === 'svg') return { role: 'group' };
  const part = node.attrs['data-hit'];
  if (typeof part !== 'string') return {};
  return {
    role: 'button',
    tabIndex: 0,
    'aria-label': partName?.(part) ?? part,
    'aria-pressed': selected === part,
    onClick: () => onSelect(part),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      onSelect(part);
    },
  };
}
