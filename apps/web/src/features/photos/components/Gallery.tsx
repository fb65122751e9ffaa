import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { useBuildParts } from '../../../hooks/useBuildParts.ts';
import { useItemWords } from '../../../hooks/useItemWords.ts';
import { useText } from '../../../lib/reader.tsx';
import type { Shown } from '../model/gallery.ts';
import { Marked } from './Marked.tsx';
import './photos.css';

interface GalleryProps {
  readonly jobId: string;
  readonly timeZone: string;
  readonly list: readonly Shown[];
}

const firstShown = 12;

/** Each photo with what it is of, when, and by whom. */
export function Gallery({ jobId, timeZone, list }: GalleryProps) {
  const { t } = useText();
  const [all, setAll] = useState(false);
  const names = new Map(useBuildParts(jobId).map(({ id, name }) => [id, name]));
  const shown = all ? list : list.slice(0, firstShown);
  const step = useItemWords(jobId);
  const subject = ({ itemKey, part, note }: Shown) => [itemKey === null ? undefined : step(itemKey), part === null ? undefined : (names.get(part) ?? part), note].filter(Boolean).join(', ') || t('photos.site');
  return (
    <>
      <ul className="gallery">
        {shown.map((photo) => (
          <li key={photo.id}>
            <Photo key={String(photo.ready)} jobId={jobId} photoId={photo.id} kind={photo.kind} alt={t(photo.kind === 'video' ? 'photos.altVideo' : 'photos.alt', { what: subject(photo), at: photo.takenAt }, { timeZone })} />
            <p>{subject(photo)}</p>
            {photo.marks.length > 0 && photo.ready ? <Marked jobId={jobId} photoId={photo.id} marks={photo.marks} alt={subject(photo)} /> : null}
            {photo.fromCustomer ? <p><strong>{t('photos.fromCustomer')}</strong></p> : null}
            <p className="faint">{photo.by === null || photo.fromCustomer ? t('photos.takenHere', { at: photo.takenAt }, { timeZone }) : t('photos.taken', { at: photo.takenAt, by: photo.by }, { timeZone })}</p>
            {photo.forCustomer ? <p className="faint">{t('photos.isForCustomer')}</p> : null}
          </li>
        ))}
      </ul>
      {list.length > shown.length ? <div><Button onClick={() => setAll(true)}>{t('photos.showAll', { n: list.length })}</Button></div> : null}
    </>
  );
}
