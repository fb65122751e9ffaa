import { useState } from 'react';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepPhoto } from '../../../hooks/useRecord.ts';
import { lookAt, type Look } from '../../../lib/look.ts';
import { useText } from '../../../lib/reader.tsx';
import { Doubts } from '../../../components/Doubts.tsx';

/** A photo of the site in one touch: the camera opens, and what it takes is kept at once. */
export function OneTap({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const keep = useKeepPhoto(jobId);
  const [kept, setKept] = useState(0);
  const [look, setLook] = useState<Look | null>(null);
  const take = (file: File) => {
    setLook(null);
    keep.mutate({ file, itemKey: null, part: null, note: '', forCustomer: false }, { onSuccess: () => {
      setKept((now) => now + 1);
      void lookAt(file).then(setLook);
    } });
  };
  return (
    <div className="stack">
      <PhotoPick label={t('photos.oneTap')} words={t(kept === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} disabled={keep.isPending} onPick={take} />
      <p role="status">{kept === 0 ? '' : t('photos.keptHere', { n: kept })}</p>
      <Doubts look={look} />
      <KeepProblem problem={keep.error} />
    </div>
  );
}
