import { useState } from 'react';
import type { KeptPhoto } from '../../../hooks/useRecord.ts';
import { doubtsOf, lookAt, type Look } from '../../../lib/look.ts';
import { dropPhoto } from '../../../lib/outbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { stillOf } from '../../../lib/still.ts';
import { videoType } from '../../../lib/videos.ts';
import type { ItemRecord } from './useItemRecord.ts';

export interface Doubted extends KeptPhoto {
  readonly look: Look;
}

/** Pictures as they are taken: each is looked at, kept, and counts; one that looks soft or small is kept and asked about once. */
export function useTaking({ keepPhoto, count }: ItemRecord) {
  const { t } = useText();
  const [doubted, setDoubted] = useState<readonly Doubted[]>([]);
  const [looking, setLooking] = useState(false);
  const settle = (id: string) => setDoubted((now) => now.filter((one) => one.id !== id));
  /** A film counts; a picture of it goes to the office before it, which proves nothing. */
  const takeFilm = async (file: File) => {
    await keepPhoto(file, true);
    const still = await stillOf(file);
    if (still !== null) await keepPhoto(still, false, t('photos.fromFilm'));
  };
  const takeOne = async (file: File) => {
    if (videoType(file) !== null) return takeFilm(file);
    const look = await lookAt(file);
    const isDoubtful = look !== null && doubtsOf(look).length > 0;
    const kept = await keepPhoto(file, !isDoubtful);
    if (isDoubtful) setDoubted((now) => [...now, { ...kept, look }]);
  };
  const take = async (files: readonly File[]) => {
    setLooking(true);
    try {
      for (const file of files) await takeOne(file);
    } catch {
      // `problem` of the record says why; what was kept before is kept
    } finally {
      setLooking(false);
    }
  };
  return {
    doubted, looking, take: (files: readonly File[]) => void take(files),
    keep: ({ id, takenAt }: Doubted) => { count({ id, takenAt }); settle(id); },
    drop: ({ id }: Doubted) => { settle(id); void dropPhoto(id).catch(() => undefined); },
  };
}
