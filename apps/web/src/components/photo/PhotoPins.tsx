import { projection, type section } from '@yardfall/drawing';
import { lazy, Suspense, useState } from 'react';
import type { PhotoNow } from '../../lib/photosNow.ts';
import { useText } from '../../lib/reader.tsx';
import type { DrawingSize } from '../Drawing.tsx';
import { gathered } from './place.ts';
import './photo.css';

const PhotoSheet = lazy(() => import('./PhotoSheet.tsx').then((one) => ({ default: one.PhotoSheet })));

interface PhotoPinsProps {
  readonly jobId: string;
  readonly photos: readonly PhotoNow[];
  readonly display: ReturnType<typeof section>;
  readonly size: DrawingSize;
  /** Heads in a row along the top, so that what lies below can be pressed; else each at its place. */
  readonly inRow?: boolean;
}

/** The reach of a gloved thumb [pixels]; pins that are nearer to each other open together. */
const reach = 56;
const headHeight = 28;

/** Small numbered pins of a section's photos, which open them. */
export function PhotoPins({ jobId, photos, display, size, inRow = false }: PhotoPinsProps) {
  const { t } = useText();
  const [open, setOpen] = useState<readonly string[] | null>(null);
  const view = projection(display.extent, size.width, size.height);
  const numbers = new Map(photos.map(({ id, number }) => [id, number]));
  const pins = (display.pins ?? []).map(({ id, at }) => {
    const [x, y] = view.toPixels(at);
    return { id, number: numbers.get(id) ?? 0, x: Math.min(size.width - reach / 2, Math.max(reach / 2, x)), y, to: x };
  });
  return (
    <div className="photo-pins">
      <svg viewBox={`0 0 ${String(size.width)} ${String(size.height)}`} width={size.width} height={size.height} aria-hidden="true">
        {gathered(pins, reach).map((group) => group.map((pin) => <path key={pin.id} className="photo-pin-stem" d={`M${headX(group)} ${headTop(group, inRow) + headHeight}L${pin.to} ${pin.y}`} />))}
      </svg>
      {gathered(pins, reach).map((group) => {
        const ordered = group.toSorted((a, b) => a.number - b.number);
        const [first] = ordered;
        return first === undefined ? null : (
          <button key={first.id} type="button" className="photo-pin" style={{ left: headX(group), top: headTop(group, inRow) }} aria-label={t('photos.pin', { n: group.length, numbers: ordered.map(({ number }) => String(number)).join(', ') })} onClick={() => setOpen(ordered.map(({ id }) => id))}>
            <span>{group.length === 1 ? first.number : `${String(first.number)}+${String(group.length - 1)}`}</span>
          </button>
        );
      })}
      {open === null ? null : <Suspense fallback={null}><PhotoSheet jobId={jobId} photoIds={open} onClose={() => setOpen(null)} /></Suspense>}
    </div>
  );
}

const headX = (group: readonly { readonly x: number }[]): number => group.reduce((sum, { x }) => sum + x, 0) / Math.max(1, group.length);
const headTop = (group: readonly { readonly y: number }[], inRow: boolean): number => (inRow ? 0 : Math.max(0, Math.min(...group.map(({ y }) => y)) - headHeight - 10));
