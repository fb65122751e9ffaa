import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { usePhotoWords } from '../../../hooks/usePhotoWords.ts';
import type { PhotoNow } from '../../../lib/photosNow.ts';
import { useText } from '../../../lib/reader.tsx';
import './photos.css';

interface GalleryProps {
  readonly jobId: string;
  readonly timeZone: string;
  readonly list: readonly PhotoNow[];
}

const firstShown = 12;

/** Each photo with what it is of, when, and by whom. */
export function Gallery({ jobId, timeZone, list }: GalleryProps) {
  const { t } = useText();
  const [all, setAll] = useState(false);
  const shown = all ? list : list.slice(0, firstShown);
  const subject = usePhotoWords(jobId);
  return (
    <>
      <ul className="gallery">
        {shown.map((photo) => (
          <li key={photo.id}>
            <Photo key={String(photo.ready)} jobId={jobId} photoId={photo.id} kind={photo.kind} alt={t(photo.kind === 'video' ? 'photos.altVideo' : 'photos.alt', { what: subject(photo), at: photo.takenAt }, { timeZone })} />
            <p><strong>{photo.number}</strong> {subject(photo)}</p>
            {photo.fromCustomer ? <p><strong>{t('photos.fromCustomer')}</strong></p> : null}
            <p className="faint">{photo.by === null || photo.fromCustomer ? t('photos.takenHere', { at: photo.takenAt }, { timeZone }) : t('photos.taken', { at: photo.takenAt, by: photo.by }, { timeZone })}</p>
            {photo.waiting > 0 ? <p className="faint">{t('photos.addedHere')}</p> : null}
            {photo.forCustomer ? <p className="faint">{t('photos.isForCustomer')}</p> : null}
          </li>
        ))}
      </ul>
      {list.length > shown.length ? <div><Button onClick={() => setAll(true)}>{t('photos.showAll', { n: list.length })}</Button></div> : null}
    </>
  );
}
