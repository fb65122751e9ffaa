import { useMe } from '../../hooks/useMe.ts';
import { useKeepPhotoMore } from '../../hooks/useRecord.ts';
import type { PhotoNow } from '../../lib/photosNow.ts';
import { useText } from '../../lib/reader.tsx';
import { Button } from '../Button.tsx';
import { KeepProblem } from '../KeepProblem.tsx';

/** Who drew when, in words as well; a set that is wrong is drawn no longer, and stays on record. */
export function MarkSets({ jobId, photo }: { readonly jobId: string; readonly photo: PhotoNow }) {
  const { t } = useText();
  const { may } = useMe();
  const keep = useKeepPhotoMore(jobId, photo.id);
  if (photo.sets.length === 0) return null;
  return (
    <>
      <ul className="photo-sets" aria-label={t('photos.sets')}>
        {photo.sets.map(({ id, at, by, marks, hidden }) => {
          const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.words] : [])).join(', ');
          return (
            <li key={id}>
              <span>
                {by === null ? t('photos.drawnHere', { at }) : t('photos.drawnBy', { at, by })}{words === '' ? '' : `: ${words}`}
                {hidden ? <em> {t('photos.setHidden')}</em> : null}
              </span>
              {hidden || !may('photos.add') ? null : <Button kind="text" size="crew" disabled={keep.isPending} onClick={() => keep.mutate({ hides: [id] })}>{t('photos.hideSet')}</Button>}
            </li>
          );
        })}
      </ul>
      <KeepProblem problem={keep.error} />
    </>
  );
}
