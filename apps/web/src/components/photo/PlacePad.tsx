import type { DesignDocument } from '@yardfall/calc';
import type { SectionPoint } from '@yardfall/contracts';
import { projection, section, stationAt } from '@yardfall/drawing';
import { useState, type KeyboardEvent, type PointerEvent } from 'react';
import { useText } from '../../lib/reader.tsx';
import { Choices } from '../Choices.tsx';
import { Drawing, type DrawingSize } from '../Drawing.tsx';
import { pointAt } from './place.ts';

type DisplayList = ReturnType<typeof section>;

interface PlacePadProps {
  readonly document: DesignDocument;
  readonly point: SectionPoint | null;
  /** With the part that stands there, if there is one. */
  readonly onPoint: (point: SectionPoint, part: string | null) => void;
}

const height = 220;
/** One press of an arrow key [pixels]. */
const nudge = 4;

/** The section as what a photo is pinned to: touched, or moved by the arrow keys. */
export function PlacePad({ document, point, onPoint }: PlacePadProps) {
  const { t } = useText();
  const [window, setWindow] = useState<'whole' | 'house'>('whole');
  const pins = point === null ? [] : [{ id: 'point', part: null, point }];
  const draw = (size: DrawingSize) => section(document, null, { ...size, window, detail: 'mini', gravity: false, utilities: false, pins });
  return (
    <div className="stack">
      <Choices label={t('designs.window')} look="crew" value={window} onChange={setWindow} choices={[{ value: 'whole', label: t('designs.window.whole') }, { value: 'house', label: t('designs.window.house') }]} />
      <Drawing title={t('photos.section')} height={() => height} display={draw} over={(display, size) => <Touch display={display} size={size} onPoint={onPoint} />} />
      <p role="status">{point === null ? t('photos.touchSection') : t('photos.pointIs', point)}</p>
    </div>
  );
}

function Touch({ display, size, onPoint }: { readonly display: DisplayList; readonly size: DrawingSize; readonly onPoint: PlacePadProps['onPoint'] }) {
  const { t } = useText();
  const view = projection(display.extent, size.width, size.height);
  const at = display.pins?.[0]?.at ?? null;
  const [x, y] = at === null ? [size.width / 2, size.height / 2] : view.toPixels(at);
  const put = (px: number, py: number) => {
    const { point, part } = pointAt(display, view.toDrawing([px, py]), stationAt);
    onPoint(point, part);
  };
  const touch = (event: PointerEvent) => {
    const box = event.currentTarget.getBoundingClientRect();
    put(event.clientX - box.left, event.clientY - box.top);
  };
  const key = (event: KeyboardEvent) => {
    const by = ({ ArrowLeft: [-nudge, 0], ArrowRight: [nudge, 0], ArrowUp: [0, -nudge], ArrowDown: [0, nudge] } as Readonly<Record<string, readonly [number, number]>>)[event.key];
    if (by === undefined) return;
    event.preventDefault();
    put(x + by[0], y + by[1]);
  };
  return (
    <button type="button" className="place-pad" aria-label={t('photos.touchSection')} onKeyDown={key}
      onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); touch(event); }}
      onPointerMove={(event) => (event.buttons > 0 ? touch(event) : undefined)}>
      <svg viewBox={`0 0 ${String(size.width)} ${String(size.height)}`} width={size.width} height={size.height} aria-hidden="true">
        {at === null ? null : ['place-edge', 'place-mark'].map((name) => <path key={name} className={name} d={`M${x - 14} ${y}H${x + 14}M${x} ${y - 14}V${y + 14}M${x - 8} ${y}a8 8 0 1 0 16 0a8 8 0 1 0 -16 0`} />)}
      </svg>
    </button>
  );
}
