import type { PlanShape, Position } from '@yardfall/calc';
import { moved, movePoint, moveShape, projection, snap, zoomed } from '@yardfall/drawing';
import { useState, type KeyboardEvent, type PointerEvent, type WheelEvent } from 'react';
import type { Hand } from '../model/plan/hand.ts';

type Extent = Parameters<typeof zoomed>[0];

/** What the sheet shows and what a hand on it does. */
export interface Sheet {
  readonly hand: Hand;
  readonly extent: Extent;
  readonly size: { readonly width: number; readonly height: number };
  readonly selected: PlanShape | null;
  /** Places of what is being drawn. */
  readonly path: readonly Position[];
  readonly onExtent: (extent: Extent) => void;
  readonly onSelect: (id: string | null) => void;
  /** A tap with a drawing hand, snapped. */
  readonly onPlace: (at: Position) => void;
  readonly onChange: (shape: PlanShape) => void;
}

/** What is held: a corner of a shape, the whole shape (-1), or the sheet. */
interface Drag {
  readonly from: Position;
  readonly held: { readonly shape: PlanShape; readonly corner: number } | null;
  readonly moved: boolean;
}

/** How near a finger or pointer must come, and how far it must go to move something [pixels]. */
const reach = 12;
const least = 4;
const inch = 0.0254;
const steps: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** Pointer, wheel and arrow keys on the sheet: choose, drag, draw, move the view. */
export function usePlanHand(shapes: readonly PlanShape[], sheet: Sheet, onKey: (event: KeyboardEvent) => void) {
  const { hand, extent, size, selected, path } = sheet;
  const [drag, setDrag] = useState<Drag | null>(null);
  const [live, setLive] = useState<PlanShape | null>(null);
  const [hover, setHover] = useState<Position | null>(null);
  const perPixel = (extent.x1 - extent.x0) / Math.max(size.width, 1);
  const near = reach * perPixel;
  const placeOf = (event: { readonly clientX: number; readonly clientY: number; readonly currentTarget: Element }): Position => {
    const frame = event.currentTarget.getBoundingClientRect();
    const [x, y] = projection(extent, size.width, size.height).toDrawing([event.clientX - frame.left, event.clientY - frame.top]);
    return { x, y };
  };
  const drawn = (at: Position): Position => (hand === 'tie' ? at : snap(at, shapes, { reach: near, path }).at);
  const release = () => { setDrag(null); setLive(null); };

  const follow = (at: Position, { from, held }: Drag): void => {
    if (held === null) sheet.onExtent(moved(extent, { x: from.x - at.x, y: from.y - at.y }));
    else if (held.corner < 0) setLive(moveShape(held.shape, { x: at.x - from.x, y: at.y - from.y }));
    else setLive(movePoint(held.shape, held.corner, snap(at, shapes, { reach: near, without: held.shape.id }).at));
  };
  const on = {
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      const from = placeOf(event);
      setDrag({ from, held: hand === 'choose' && selected ? heldAt(selected, from, near, event.target) : null, moved: false });
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      const at = placeOf(event);
      if (drag === null) return setHover(hand === 'choose' ? null : drawn(at));
      if (!drag.moved && Math.hypot(at.x - drag.from.x, at.y - drag.from.y) <= least * perPixel) return;
      setDrag({ ...drag, moved: true });
      follow(at, drag);
    },
    onPointerUp: (event: PointerEvent<HTMLDivElement>) => {
      release();
      if (drag === null) return;
      if (drag.moved) {
        if (live) sheet.onChange(live);
      } else if (hand === 'choose') sheet.onSelect(hitAt(event));
      else sheet.onPlace(drawn(placeOf(event)));
    },
    onPointerCancel: release,
    onPointerLeave: () => setHover(null),
    onWheel: (event: WheelEvent<HTMLDivElement>) => {
      if (event.ctrlKey || event.metaKey) sheet.onExtent(zoomed(extent, event.deltaY < 0 ? 1.25 : 0.8, placeOf(event)));
    },
    onKeyDown: (event: KeyboardEvent<HTMLDivElement>) => {
      const step = steps[event.key];
      if (step === undefined || selected === null || hand !== 'choose') return onKey(event);
      event.preventDefault();
      const by = event.shiftKey ? 12 * inch : inch;
      sheet.onChange(moveShape(selected, { x: step[0] * by, y: step[1] * by }));
    },
  };
  return { live, hover, on };
}

/** The corner of the chosen shape under the hand, else the shape itself; null beside it. */
function heldAt(shape: PlanShape, at: Position, near: number, target: EventTarget): Drag['held'] {
  const corner = shape.points.findIndex((point) => Math.hypot(point.x - at.x, point.y - at.y) <= near);
  const inside = target instanceof Element && target.getAttribute('data-hit') === shape.id;
  return corner >= 0 || inside ? { shape, corner } : null;
}

function hitAt(event: PointerEvent<HTMLDivElement>): string | null {
  const under = event.currentTarget.ownerDocument.elementsFromPoint(event.clientX, event.clientY);
  return under.map((element) => element.getAttribute('data-hit')).find((hit) => hit !== null) ?? null;
}
