import { section } from '@yardfall/drawing';
import { useSectionDocument } from '../../hooks/useSectionDocument.ts';
import type { PhotoNow } from '../../lib/photosNow.ts';
import { useText } from '../../lib/reader.tsx';
import { Drawing } from '../Drawing.tsx';
import { PhotoPins } from './PhotoPins.tsx';
import { pinsOf } from './place.ts';

/** The section of a job with its photos, small and without lettering. */
export function PinnedSection({ jobId, photos }: { readonly jobId: string; readonly photos: readonly PhotoNow[] }) {
  const { t } = useText();
  const document = useSectionDocument(jobId);
  if (document === null) return null;
  return (
    <Drawing title={t('photos.onSection')} height={() => 180} display={(size) => section(document, null, { ...size, detail: 'mini', gravity: false, utilities: false, pins: pinsOf(photos) })}
      over={(display, size) => <PhotoPins jobId={jobId} photos={photos} display={display} size={size} inRow />} />
  );
}
