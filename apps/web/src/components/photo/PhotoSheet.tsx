import { useState } from 'react';
import { photos } from '@yardfall/contracts';
import { useMe } from '../../hooks/useMe.ts';
import { usePhotosNow } from '../../hooks/usePhotosNow.ts';
import { usePhotoWords } from '../../hooks/usePhotoWords.ts';
import { urlOf } from '../../lib/api.ts';
import type { PhotoNow } from '../../lib/photosNow.ts';
import { useText } from '../../lib/reader.tsx';
import { Button } from '../Button.tsx';
import { Dialog } from '../Dialog.tsx';
import { Film } from '../Film.tsx';
import { DrawOver } from './DrawOver.tsx';
import { MarksOver } from './MarksOver.tsx';
import { PlacePhoto } from './PlacePhoto.tsx';
import { MarkSets } from './MarkSets.tsx';
import { usePicture } from './usePicture.ts';
import './photo.css';

interface PhotoSheetProps {
  readonly jobId: string;
  /** One, or several that stand at the same place. */
  readonly photoIds: readonly string[];
  readonly onClose: () => void;
}

/** A photo large, with what was drawn over it and where it belongs; whoever may add photos draws, writes and places here. */
export function PhotoSheet({ jobId, photoIds, onClose }: PhotoSheetProps) {
  const { t } = useText();
  const [at, setAt] = useState(0);
  const photo = usePhotosNow(jobId).find(({ id }) => id === photoIds[at]);
  const step = (by: number) => setAt((at + by + photoIds.length) % photoIds.length);
  return (
    <Dialog open title={photo === undefined ? t('photos.one') : t('photos.number', { n: photo.number })} size="crew" onClose={onClose}>
      <div className="photo-sheet">
        {photoIds.length < 2 ? null : (
          <div className="row">
            <Button size="crew" onClick={() => step(-1)}>{t('photos.before')}</Button>
            <Button size="crew" onClick={() => step(1)}>{t('photos.next')}</Button>
            <span className="faint">{t('photos.ofSeveral', { n: at + 1, all: photoIds.length })}</span>
          </div>
        )}
        {photo === undefined ? <p>{t('photos.preparing')}</p> : <OnePhoto key={photo.id} jobId={jobId} photo={photo} />}
      </div>
    </Dialog>
  );
}

function OnePhoto({ jobId, photo }: { readonly jobId: string; readonly photo: PhotoNow }) {
  const { t } = useText();
  const { may } = useMe();
  const [doing, setDoing] = useState<'look' | 'draw' | 'place'>('look');
  const words = usePhotoWords(jobId);
  const done = () => setDoing('look');
  if (doing === 'draw') return <DrawOver jobId={jobId} photo={photo} onDone={done} />;
  if (doing === 'place') return <PlacePhoto jobId={jobId} photo={photo} onDone={done} />;
  return (
    <>
      <Large jobId={jobId} photo={photo} alt={t(photo.kind === 'video' ? 'photos.altVideo' : 'photos.alt', { what: words(photo), at: photo.takenAt })} />
      <p>{words({ ...photo, note: '' })}{photo.point === null ? '' : t('photos.placedAt', { station: photo.point.station, level: photo.point.level })}</p>
      {photo.note === '' ? null : <p className="photo-note"><strong>{photo.note}</strong></p>}
      <p className="faint">{photo.by === null || photo.fromCustomer ? t('photos.takenHere', { at: photo.takenAt }) : t('photos.taken', { at: photo.takenAt, by: photo.by })}</p>
      {photo.forCustomer ? <p className="faint">{t('photos.isForCustomer')}</p> : null}
      {photo.waiting > 0 ? <p role="status">{t('photos.addedHere')}</p> : null}
      {may('photos.add') ? (
        <div className="row">
          {photo.kind === 'picture' ? <Button kind="main" size="crew" onClick={() => setDoing('draw')}>{t('photos.drawOn')}</Button> : null}
          <Button size="crew" onClick={() => setDoing('place')}>{t('photos.place')}</Button>
        </div>
      ) : null}
      <MarkSets jobId={jobId} photo={photo} />
      {photo.by === null ? null : <p><a href={urlOf(photos.file, { params: { jobId, photoId: photo.id, copy: 'original' } })} target="_blank" rel="noreferrer">{t('photos.original')}</a></p>}
    </>
  );
}

function Large({ jobId, photo, alt }: { readonly jobId: string; readonly photo: PhotoNow; readonly alt: string }) {
  const { t } = useText();
  const { src, onUnseen } = usePicture(jobId, photo.id);
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  if (src !== null && photo.kind === 'video') return <Film src={photo.by === null ? src : urlOf(photos.file, { params: { jobId, photoId: photo.id, copy: 'original' } })} label={alt} />;
  if (src === null) return <p className="photo-none">{t('photos.notSeen')}</p>;
  return (
    <div className="marked">
      <img src={src} alt={alt} onError={onUnseen} onLoad={({ currentTarget }) => setSize({ width: currentTarget.naturalWidth, height: currentTarget.naturalHeight })} />
      {size === null ? null : <MarksOver marks={photo.marks} {...size} />}
    </div>
  );
}
