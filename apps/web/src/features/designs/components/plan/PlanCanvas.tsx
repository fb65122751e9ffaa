import { planChecks, planFigures, type DesignDocument, type Plan, type PlanShape, type Position } from '@yardfall/calc';
import { photos } from '@yardfall/contracts';
import { moved, movePoint, moveShape, plan, projection, shownScale, snap, toSvg, zoomed, type PlanGround, type Point } from '@yardfall/drawing';
import { useId, useState, type KeyboardEvent, type PointerEvent, type WheelEvent } from 'react';
import { elementOf } from '../../../../components/Drawing.tsx';
import { urlOf } from '../../../../lib/api.ts';
import { useText } from '../../../../lib/reader.tsx';
import type { Hand } from '../../model/plan/hand.ts';

type Extent = Parameters<typeof zoomed>[0];

interface PlanCanvasProps {
  readonly jobId: string;
  readonly document: DesignDocument;
  readonly ground: PlanGround | null;
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
  readonly onKey: (event: KeyboardEvent) => void;
}

/** How near a finger or pointer must come [pixels]. */
const reach = 12;
const inch = 0.0254;

interface Drag {
  readonly from: Position;
  /** Corner that moves, -1 for the whole shape; null for the sheet. */
  readonly corner: number | null;
  readonly shape: PlanShape | null;
  readonly extent: Extent;
  readonly moved: boolean;
}

/** The sheet itself: picture below, drawing, and what is under the hand on top. */
export function PlanCanvas({ jobId, document, ground, hand, extent, size, selected, path, onExtent, onSelect, onPlace, onChange, onKey }: PlanCanvasProps) {
  const { t, say, units } = useText();
  const id = useId().replace(/[^\w-]/g, '');
  const [drag, setDrag] = useState<Drag | null>(null);
  const [live, setLive] = useState<PlanShape | null>(null);
  const [hover, setHover] = useState<Position | null>(null);
  const view = projection(extent, size.width, size.height);
  const perPixel = (extent.x1 - extent.x0) / Math.max(size.width, 1);
  const shapes = document.site.plan?.shapes ?? [];
  const drawnPlan = document.site.plan;
  const shown = live === null || drawnPlan === null ? document : { ...document, site: { ...document.site, plan: { ...drawnPlan, shapes: shapes.map((shape) => (shape.id === live.id ? live : shape)) } } };
  const picture = drawnPlan?.picture ?? null;
  const display = plan(shown, { ...size, extent, ground, figures: planFigures(shown), checks: planChecks(shown), scaleUnit: units === 'us' ? 'foot' : 'metre', over: picture !== null });
  const tree = toSvg(display, { ...size, label: (code, params) => say(code, params), title: null, idPrefix: `plan-${id}`, selected: selected?.id ?? null, hits: hand === 'choose' });

  const placeOf = (event: { readonly clientX: number; readonly clientY: number; readonly currentTarget: Element }): Position => {
    const frame = event.currentTarget.getBoundingClientRect();
    const [x, y] = view.toDrawing([event.clientX - frame.left, event.clientY - frame.top]);
    return { x, y };
  };
  const snapped = (at: Position): Position => (hand === 'tie' ? at : snap(at, shapes, { reach: reach * perPixel, path, without: live?.id ?? null }).at);

  const down = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = placeOf(event);
    const corner = hand === 'choose' && selected ? nearestCorner(selected, at, reach * perPixel) : null;
    const inside = hand === 'choose' && selected !== null && event.target instanceof Element && event.target.getAttribute('data-hit') === selected.id;
    setDrag({ from: at, corner: corner ?? (inside ? -1 : null), shape: corner !== null || inside ? selected : null, extent, moved: false });
  };
  const move = (event: PointerEvent<HTMLDivElement>) => {
    const at = placeOf(event);
    if (!drag) {
      if (hand !== 'choose') setHover(snapped(at));
      return;
    }
    const far = Math.hypot(at.x - drag.from.x, at.y - drag.from.y) > 4 * perPixel;
    if (!far && !drag.moved) return;
    if (!drag.moved) setDrag({ ...drag, moved: true });
    if (drag.shape === null || drag.corner === null) onExtent(moved(extent, { x: drag.from.x - at.x, y: drag.from.y - at.y }));
    else if (drag.corner < 0) setLive(moveShape(drag.shape, { x: at.x - drag.from.x, y: at.y - drag.from.y }));
    else setLive(movePoint(drag.shape, drag.corner, snap(at, shapes, { reach: reach * perPixel, without: drag.shape.id }).at));
  };
  const up = (event: PointerEvent<HTMLDivElement>) => {
    const ended = drag;
    setDrag(null);
    if (ended?.moved) {
      if (live) onChange(live);
      setLive(null);
      return;
    }
    if (!ended) return;
    if (hand !== 'choose') onPlace(snapped(placeOf(event)));
    else onSelect(hitAt(event));
  };
  const wheel = (event: WheelEvent<HTMLDivElement>) => {
    if (event.ctrlKey || event.metaKey) onExtent(zoomed(extent, event.deltaY < 0 ? 1.25 : 0.8, placeOf(event)));
  };
  const keys = (event: KeyboardEvent<HTMLDivElement>) => {
    const step = steps[event.key];
    if (step && selected && hand === 'choose') {
      event.preventDefault();
      const by = event.shiftKey ? 12 * inch : inch;
      onChange(moveShape(selected, { x: step[0] * by, y: step[1] * by }));
    } else onKey(event);
  };
  const over = live ?? selected;
  return (
    // The drawing is a group whose shapes are buttons; the frame takes the pointer for moving and drawing.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <div className={`plan-canvas plan-hand-${hand}`} role="application" aria-label={t('plan.picture')} tabIndex={0}
      onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={() => { setDrag(null); setLive(null); }} onPointerLeave={() => setHover(null)} onWheel={wheel} onKeyDown={keys}>
      <svg viewBox={`0 0 ${String(size.width)} ${String(size.height)}`} width={size.width} height={size.height} aria-hidden="true">
        {picture ? <Backdrop href={urlOf(photos.file, { params: { jobId, photoId: picture.photo, copy: 'original' } })} picture={picture} view={view} /> : null}
        {elementOf(tree, 0, { onSelect: undefined, partName: undefined, selected: selected?.id ?? null })}
        {over && hand === 'choose' ? over.points.map((point, at) => <Corner key={at} at={view.toPixels([point.x, point.y])} />) : null}
        {path.length > 0 || hover ? <Path path={path} hover={hover} toPixels={(at) => view.toPixels(at)} /> : null}
      </svg>
    </div>
  );
}

const steps: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

function hitAt(event: PointerEvent<HTMLDivElement>): string | null {
  for (const element of event.currentTarget.ownerDocument.elementsFromPoint(event.clientX, event.clientY)) {
    const hit = element.getAttribute('data-hit');
    if (hit !== null) return hit;
  }
  return null;
}

function nearestCorner({ points }: PlanShape, at: Position, within: number): number | null {
  const index = points.findIndex((point) => Math.hypot(point.x - at.x, point.y - at.y) <= within);
  return index < 0 ? null : index;
}

function Backdrop({ href, picture, view }: { readonly href: string; readonly picture: NonNullable<Plan['picture']>; readonly view: ReturnType<typeof projection> }) {
  const scale = shownScale(picture);
  const [x, y] = view.toPixels([0, picture.height * scale]);
  const [x1, y1] = view.toPixels([picture.width * scale, 0]);
  return <image href={href} x={x} y={y} width={x1 - x} height={y1 - y} preserveAspectRatio="none" opacity={0.75} />;
}

function Corner({ at: [x, y] }: { readonly at: Point }) {
  return <rect x={x - 5} y={y - 5} width={10} height={10} className="plan-corner" />;
}

function Path({ path, hover, toPixels }: { readonly path: readonly Position[]; readonly hover: Position | null; readonly toPixels: (point: Point) => Point }) {
  const places = [...path, ...(hover ? [hover] : [])].map(({ x, y }) => toPixels([x, y]));
  return (
    <g>
      <polyline className="plan-path" points={places.map(([x, y]) => `${x},${y}`).join(' ')} />
      {places.map((at, index) => <Corner key={index} at={at} />)}
    </g>
  );
}
