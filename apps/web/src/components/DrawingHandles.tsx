import { projection, type EditHandle } from '@yardfall/drawing';
import { useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { DrawingSize } from './Drawing.tsx';

type Extent = Parameters<typeof projection>[0];

interface DrawingHandlesProps {
  readonly extent: Extent;
  readonly size: DrawingSize;
  readonly handles: readonly EditHandle[];
  /** What a handle moves, and its level in words. */
  readonly nameOf: (handle: EditHandle) => string;
  readonly levelText: (level: number) => string;
  /** One press of an arrow key [m]; ten times as much with Shift. */
  readonly step: number;
  /** While the hand moves, and when it lets go. */
  readonly onLevel: (handle: EditHandle, level: number, done: boolean) => void;
}

interface Drag {
  readonly handle: EditHandle;
  readonly from: number;
  readonly level: number;
}

/** Levels of a drawing under the hand: dragged up and down, or moved by arrow keys. */
export function DrawingHandles({ extent, size, handles, nameOf, levelText, step, onLevel }: DrawingHandlesProps) {
  const [drag, setDrag] = useState<Drag | null>(null);
  const view = projection(extent, size.width, size.height);
  const perPixel = (extent.y1 - extent.y0) / size.height;
  const levelAt = (event: PointerEvent, { handle, from }: Drag) => Math.round((handle.level + (from - event.clientY) * perPixel) / step) * step;

  const move = (event: PointerEvent) => {
    if (!drag) return;
    const level = levelAt(event, drag);
    if (level === drag.level) return;
    setDrag({ ...drag, level });
    onLevel(drag.handle, level, false);
  };
  const end = (event: PointerEvent) => {
    if (!drag) return;
    const level = levelAt(event, drag);
    setDrag(null);
    if (level !== drag.handle.level) onLevel(drag.handle, level, true);
  };
  const key = (event: KeyboardEvent, handle: EditHandle) => {
    const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (direction === 0) return;
    event.preventDefault();
    onLevel(handle, handle.level + direction * step * (event.shiftKey ? 10 : 1), true);
  };
  return (
    <svg className="drawing-handles" viewBox={`0 0 ${String(size.width)} ${String(size.height)}`} width={size.width} height={size.height}>
      {handles.map((handle) => {
        const [x, y] = view.toPixels(handle.at);
        return (
          <g key={`${handle.part} ${handle.field}`} className="drawing-handle" role="slider" tabIndex={0} aria-orientation="vertical" aria-label={nameOf(handle)} aria-valuenow={handle.level}
            aria-valuemin={handle.level - 3} aria-valuemax={handle.level + 3} aria-valuetext={levelText(handle.level)} onKeyDown={(event) => key(event, handle)}
            onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); setDrag({ handle, from: event.clientY, level: handle.level }); }}
            onPointerMove={move} onPointerUp={end} onPointerCancel={() => setDrag(null)}>
            <rect x={x - 12} y={y - 12} width={24} height={24} className="drawing-handle-reach" />
            <path d={`M${x - 4} ${y}L${x} ${y - 6}L${x + 4} ${y}L${x} ${y + 6}Z`} className="drawing-handle-mark" />
          </g>
        );
      })}
    </svg>
  );
}
