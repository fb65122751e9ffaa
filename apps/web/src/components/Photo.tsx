import { photos } from '@yardfall/contracts';
import { lazy, Suspense, useState } from 'react';
import { useOutbox } from '../hooks/useOutbox.ts';
import { urlOf } from '../lib/api.ts';
import { pictureOf } from '../lib/pictureOf.ts';
import { useText } from '../lib/reader.tsx';
import { isVideo } from '../lib/videos.ts';
import { Button } from './Button.tsx';
import { Film } from './Film.tsx';
import './Photo.css';

interface PhotoProps {
  readonly jobId: string;
  readonly photoId: string;
  readonly alt: string;
  readonly kind?: 'picture' | 'video' | 'unshown';
}

// What is drawn over a photo, and what it is opened in, comes after the picture.
const OverThumb = lazy(() => import('./photo/OverThumb.tsx').then((one) => ({ default: one.OverThumb })));
const VideoWaits = lazy(() => import('./VideoWaits.tsx').then((one) => ({ default: one.VideoWaits })));
const PhotoSheet = lazy(() => import('./photo/PhotoSheet.tsx').then((one) => ({ default: one.PhotoSheet })));

/** A photo by its id, from this phone while it waits there and from the office after that; pressing it opens it large, where it is drawn on and placed. */
export function Photo({ jobId, photoId, alt, kind = 'picture' }: PhotoProps) {
  const { t } = useText();
  const waiting = useOutbox().find((entry) => entry.kind === 'photo' && entry.id === photoId);
  const at = (copy: 'thumb' | 'original') => urlOf(photos.file, { params: { jobId, photoId, copy } });
  const [copies, setCopies] = useState<readonly ('thumb' | 'original')[]>(['thumb', 'original']);
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  const [open, setOpen] = useState(false);
  const [copy] = copies;
  const sheet = open ? <Suspense fallback={null}><PhotoSheet jobId={jobId} photoIds={[photoId]} onClose={() => setOpen(false)} /></Suspense> : null;
  if (kind === 'video' || (waiting !== undefined && isVideo(waiting))) {
    return (
      <>
        <span className="photo-film">
          <Film src={waiting?.kind === 'photo' ? pictureOf(waiting) : at('original')} label={alt} />
          {waiting !== undefined && isVideo(waiting) && waiting.refused === null ? <Suspense fallback={null}><VideoWaits entry={waiting} /></Suspense> : null}
          <Button kind="text" size="crew" onClick={() => setOpen(true)}>{t('photos.openVideo')}</Button>
        </span>
        {sheet}
      </>
    );
  }
  if (kind === 'unshown') return <a className="photo photo-none" href={at('original')} download>{t('photos.unshown')}</a>;
  const src = waiting?.kind === 'photo' ? pictureOf(waiting) : copy === undefined ? null : at(copy);
  if (src === null) return <span className="photo photo-none">{t('photos.preparing')}</span>;
  return (
    <>
      <span className="photo">
        <button type="button" className="photo-open" onClick={() => setOpen(true)}>
          <img src={src} alt={alt} loading="lazy" onError={() => setCopies(copies.slice(1))} onLoad={({ currentTarget }) => setSize({ width: currentTarget.naturalWidth, height: currentTarget.naturalHeight })} />
          {size === null ? null : <Suspense fallback={null}><OverThumb jobId={jobId} photoId={photoId} {...size} /></Suspense>}
        </button>
        {waiting === undefined ? null : <span className="faint">{t('ui.phone.here')}</span>}
      </span>
      {sheet}
    </>
  );
}
