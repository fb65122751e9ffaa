import { photoAsIs, type Photo, type PhotoAdded, type PhotoAsIs } from '@yardfall/contracts';
import type { OutboxEntry, OutboxPhoto, OutboxPhotoMore } from './outbox.ts';

/** A photo as it stands, with what was added to it here and in the office. */
export interface PhotoNow extends PhotoAsIs {
  readonly id: string;
  /** Which of the job's photos it is, the oldest first. */
  readonly number: number;
  readonly takenAt: string;
  readonly forCustomer: boolean;
  /** Who took it; null while it is only on this phone. */
  readonly by: string | null;
  readonly ready: boolean;
  readonly kind: 'picture' | 'video' | 'unshown';
  readonly fromCustomer: boolean;
  /** Things added to it that are on this phone only. */
  readonly waiting: number;
}

/** Photos of the office and of this phone together, the newest first. */
export function photosNow(jobId: string, photos: readonly Photo[], outbox: readonly OutboxEntry[]): readonly PhotoNow[] {
  const more = outbox.filter((entry): entry is OutboxPhotoMore => entry.kind === 'photoMore' && entry.jobId === jobId);
  const known = new Set(photos.map(({ id }) => id));
  const here = outbox.filter((entry): entry is OutboxPhoto => entry.kind === 'photo' && entry.jobId === jobId && !known.has(entry.id));
  const all = [
    ...here.map(({ meta, file }) => ({ ...asIs(meta, [], more), takenAt: meta.takenAt, forCustomer: meta.forCustomer, by: null, ready: false, kind: file.type.startsWith('video/') ? 'video' as const : 'picture' as const, fromCustomer: false })),
    // An answer that was kept by an earlier version of the page has no additions.
    ...photos.map((photo) => ({ ...asIs(photo, photo.additions ?? [], more), takenAt: photo.takenAt, forCustomer: photo.forCustomer, by: photo.by, ready: photo.ready, kind: kindOf(photo), fromCustomer: photo.fromCustomer })),
  ];
  const oldest = all.toSorted((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt) || (a.id < b.id ? -1 : 1));
  return oldest.map((photo, at) => ({ ...photo, number: at + 1 })).toReversed();
}

function asIs(photo: Parameters<typeof photoAsIs>[0], additions: readonly PhotoAdded[], outbox: readonly OutboxPhotoMore[]) {
  const added = outbox.filter((entry) => entry.photoId === photo.id && additions.every(({ id }) => id !== entry.id));
  return { id: photo.id, waiting: added.length, ...photoAsIs(photo, [...additions, ...added.map((entry) => ({ ...entry.more, by: null }))]) };
}

function kindOf({ mediaType, unshown }: Photo): PhotoNow['kind'] {
  return mediaType.startsWith('video/') ? 'video' : unshown ? 'unshown' : 'picture';
}
