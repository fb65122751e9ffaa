import type { PhotoPlace } from '@yardfall/contracts';
import { useState } from 'react';
import { useKeepPhotoMore } from '../../hooks/useRecord.ts';
import type { PhotoNow } from '../../lib/photosNow.ts';
import { useText } from '../../lib/reader.tsx';
import { Button } from '../Button.tsx';
import { KeepProblem } from '../KeepProblem.tsx';
import { PlaceFields } from './PlaceFields.tsx';

interface PlacePhotoProps {
  readonly jobId: string;
  readonly photo: PhotoNow;
  readonly onDone: () => void;
}

/** Where a photo that is kept belongs; it was said before, and both stay on record. */
export function PlacePhoto({ jobId, photo, onDone }: PlacePhotoProps) {
  const { t } = useText();
  const [place, setPlace] = useState<PhotoPlace>({ itemKey: photo.itemKey, part: photo.part, point: photo.point });
  const keep = useKeepPhotoMore(jobId, photo.id);
  return (
    <div className="stack">
      <PlaceFields jobId={jobId} place={place} onPlace={setPlace} />
      <KeepProblem problem={keep.error} />
      <div className="row">
        <Button kind="main" size="crew" disabled={keep.isPending} onClick={() => keep.mutate({ place }, { onSuccess: onDone })}>{t('photos.keepPlace')}</Button>
        <Button kind="text" size="crew" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </div>
  );
}
