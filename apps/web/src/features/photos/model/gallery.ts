import type { Photo, PhotoMark } from '@yardfall/contracts';
import type { OutboxEntry } from '../../../lib/outbox.ts';

export interface Shown {
  readonly id: string;
  readonly takenAt: string;
  readonly itemKey: string | null;
  readonly part: string | null;
  readonly note: string;
  readonly forCustomer: boolean;
  /** Who took it; null while it is only on this phone. */
  readonly by: string | null;
  readonly ready: boolean;
  readonly kind: 'picture' | 'video' | 'unshown';
  readonly fromCustomer: boolean;
  readonly marks: readonly PhotoMark[];
}

/** Photos of the office and of this phone together, the newest first. */
export function galleryOf(jobId: string, photos: readonly Photo[], outbox: readonly OutboxEntry[]): readonly Shown[] {
  const known = new Set(photos.map(({ id }) => id));
  const here = outbox.flatMap((entry) => (entry.kind === 'photo' && entry.jobId === jobId && !known.has(entry.id) ? [{ ...entry.meta, by: null, ready: false, kind: 'picture' as const, fromCustomer: false }] : []));
  const there = photos.map((photo) => ({ ...photo, kind: photo.mediaType.startsWith('video/') ? 'video' as const : photo.unshown ? 'unshown' as const : 'picture' as const }));
  return [...here, ...there].toSorted((a, b) => Date.parse(b.takenAt) - Date.parse(a.takenAt));
}
