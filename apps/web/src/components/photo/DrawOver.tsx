import { type PhotoMark } from '@yardfall/contracts';
import { useState } from 'react';
import { useKeepPhotoMore } from '../../hooks/useRecord.ts';
import type { PhotoNow } from '../../lib/photosNow.ts';
import { useText } from '../../lib/reader.tsx';
import { Button } from '../Button.tsx';
import { TextArea } from '../Field.tsx';
import { KeepProblem } from '../KeepProblem.tsx';
import { MarkPad } from './MarkPad.tsx';
import { usePicture } from './usePicture.ts';

interface DrawOverProps {
  readonly jobId: string;
  readonly photo: PhotoNow;
  readonly onDone: () => void;
}

/** Marks and words for a photo that is kept: they are laid over it, beside what was drawn before. */
export function DrawOver({ jobId, photo, onDone }: DrawOverProps) {
  const { t } = useText();
  const [marks, setMarks] = useState<readonly PhotoMark[]>([]);
  const [note, setNote] = useState('');
  const { src, onUnseen } = usePicture(jobId, photo.id);
  const keep = useKeepPhotoMore(jobId, photo.id);
  const nothing = marks.length === 0 && note.trim() === '';
  return (
    <div className="stack">
      {src === null ? <p>{t('photos.notSeen')}</p> : <MarkPad src={src} onUnseen={onUnseen} under={photo.marks} marks={marks} onMarks={setMarks} />}
      <TextArea label={t('photos.note')} rows={2} maxLength={1000} optional value={note} onChange={(event) => setNote(event.target.value)} />
      {photo.forCustomer ? <p>{t('photos.customerSees')}</p> : null}
      <KeepProblem problem={keep.error} />
      <div className="row">
        <Button kind="main" size="crew" disabled={nothing || keep.isPending} onClick={() => keep.mutate({ marks, note: note.trim() }, { onSuccess: onDone })}>{t('photos.keepMarks')}</Button>
        <Button kind="text" size="crew" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </div>
  );
}
