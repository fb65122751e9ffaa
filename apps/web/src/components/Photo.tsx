import { photos } from '@yardfall/contracts';
import { useState } from 'react';
import { useOutbox } from '../hooks/useOutbox.ts';
import { urlOf } from '../lib/api.ts';
import { pictureOf } from '../lib/outbox.ts';
import { useText } from '../lib/reader.tsx';
import './Photo.css';

interface PhotoProps {
  readonly jobId: string;
  readonly photoId: string;
  readonly alt: string;
  readonly kind?: 'picture' | 'video' | 'unshown';
}

/** A photo by its id, from this phone while it waits there and from the office after that; pressing it shows the viewing copy. */
export function Photo({ jobId, photoId, alt, kind = 'picture' }: PhotoProps) {
  const { t } = useText();
  const waiting = useOutbox().find((entry) => entry.kind === 'photo' && entry.id === photoId);
  const at = (copy: 'thumb' | 'view' | 'original') => urlOf(photos.file, { params: { jobId, photoId, copy } });
  const [copies, setCopies] = useState<readonly ('thumb' | 'original')[]>(['thumb', 'original']);
  const [copy] = copies;
  if (waiting?.kind === 'photo') return <span className="photo"><img src={pictureOf(waiting)} alt={alt} /><span className="faint">{t('ui.phone.here')}</span></span>;
  // oxlint-disable-next-line jsx-a11y/media-has-caption -- rain as somebody filmed it; there are no words to write out
  if (kind === 'video') return <video className="photo-video" controls preload="metadata" src={at('original')} aria-label={alt} />;
  if (kind === 'unshown') return <a className="photo photo-none" href={at('original')} download>{t('photos.unshown')}</a>;
  if (copy === undefined) return <span className="photo photo-none">{t('photos.preparing')}</span>;
  return (
    <a className="photo" href={at(copy === 'thumb' ? 'view' : 'original')} target="_blank" rel="noreferrer">
      <img src={at(copy)} alt={alt} loading="lazy" onError={() => setCopies(copies.slice(1))} />
    </a>
  );
}
