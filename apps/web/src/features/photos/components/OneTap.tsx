import { useState } from 'react';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepPhoto } from '../../../hooks/useRecord.ts';
import { lookAt, type Look } from '../../../lib/look.ts';
import { useText } from '../../../lib/reader.tsx';
import { Doubts } from '../../../components/Doubts.tsx';
import './oneTap.css';

interface OneTapProps {
  readonly jobId: string;
  /** Beside other large controls: the button itself says what it is. */
  readonly bare?: boolean;
}

/** A photo of the site in one touch: the camera opens, and what it takes is kept at once. It is written to, drawn on and placed after that, when there is time. */
export function OneTap({ jobId, bare = false }: OneTapProps) {
  const { t } = useText();
  const keep = useKeepPhoto(jobId);
  const [kept, setKept] = useState<readonly string[]>([]);
  const [look, setLook] = useState<Look | null>(null);
  const last = kept.at(-1);
  const take = (file: File) => {
    setLook(null);
    keep.mutate({ file, itemKey: null, part: null, note: '', forCustomer: false }, { onSuccess: ({ id }) => {
      setKept((now) => [...now, id]);
      void lookAt(file).then(setLook);
    } });
  };
  return (
    <div className="one-tap">
      <PhotoPick bare={bare} label={t('photos.oneTap')} words={t(kept.length > 0 ? 'ui.phone.takeAnother' : bare ? 'photos.oneTap' : 'ui.phone.takePhoto')} disabled={keep.isPending} onPick={take} />
      <p role="status">{kept.length === 0 ? '' : t('photos.keptHere', { n: kept.length })}</p>
      {last === undefined ? null : <Photo key={last} jobId={jobId} photoId={last} alt={t('photos.lastTaken')} />}
      <Doubts look={look} />
      <KeepProblem problem={keep.error} />
    </div>
  );
}
