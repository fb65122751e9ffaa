import type { PhotoNow } from '../lib/photosNow.ts';
import { useText } from '../lib/reader.tsx';
import { useBuildParts } from './useBuildParts.ts';
import { useItemWords } from './useItemWords.ts';

/** What a photo is of, in words: the step, the part and what was written to it. */
export function usePhotoWords(jobId: string): (photo: Pick<PhotoNow, 'itemKey' | 'part' | 'note'>) => string {
  const { t } = useText();
  const names = new Map(useBuildParts(jobId).map(({ id, name }) => [id, name]));
  const step = useItemWords(jobId);
  return ({ itemKey, part, note }) => [itemKey === null ? undefined : step(itemKey), part === null ? undefined : (names.get(part) ?? part), note].filter(Boolean).join(', ') || t('photos.site');
}
