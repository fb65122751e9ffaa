import { photos } from '@yardfall/contracts';
import { useState } from 'react';
import { useOutbox } from '../../hooks/useOutbox.ts';
import { urlOf } from '../../lib/api.ts';
import { pictureOf } from '../../lib/pictureOf.ts';

const copies = ['view', 'thumb', 'original'] as const;

/** Address of a picture that is drawn over: from this phone while it waits there, else the best copy that can be had. Null when none can. */
export function usePicture(jobId: string, photoId: string): { readonly src: string | null; readonly onUnseen: () => void } {
  const waiting = useOutbox().find((entry) => entry.kind === 'photo' && entry.id === photoId);
  const [at, setAt] = useState(0);
  const copy = copies[at];
  const there = copy === undefined ? null : urlOf(photos.file, { params: { jobId, photoId, copy } });
  return { src: waiting?.kind === 'photo' ? pictureOf(waiting) : there, onUnseen: () => setAt(at + 1) };
}
