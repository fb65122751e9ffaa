import type { Photo, PhotoAddition, PhotoMark, PhotoPlace } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Prisma } from '../generated/prisma/client.ts';

export const photoParts = {
  byMember: { select: { name: true } },
  photoAdditions_photo: { orderBy: [{ at: 'asc' }, { id: 'asc' }], include: { addedBy: { select: { name: true } } } },
} satisfies Prisma.PhotoInclude;
export type PhotoRecord = Prisma.PhotoGetPayload<{ include: typeof photoParts }>;

/** Whoever came by a link does not read members, and hears nothing of what they added. */
export const partsFor = ({ kind }: Actor) => ({ ...photoParts, photoAdditions_photo: { ...photoParts.photoAdditions_photo, ...(kind === 'member' ? {} : { take: 0 }) } }) satisfies Prisma.PhotoInclude;

export function presentPhoto(photo: PhotoRecord): Photo {
  return {
    id: photo.id, jobId: photo.jobId, sha256: photo.sha256, bytes: photo.bytes, mediaType: photo.mediaType as Photo['mediaType'], width: photo.width, height: photo.height,
    itemKey: photo.itemKey, part: photo.part, note: photo.note, forCustomer: photo.forCustomer, takenAt: photo.takenAt.toISOString(), receivedAt: photo.receivedAt.toISOString(),
    by: photo.byMember?.name ?? '', marks: photo.marks as PhotoMark[], additions: photo.photoAdditions_photo.map((row) => ({ ...presentAddition(row), by: row.addedBy.name })),
    fromCustomer: photo.linkId !== null, ready: photo.status === 'ready', unshown: photo.status === 'unshown',
  };
}

/** Without the name of who added it, which a customer does not read. */
export function presentAddition({ id, at, recordedAt, marks, note, place, hides }: Omit<PhotoRecord['photoAdditions_photo'][number], 'addedBy'>): Omit<PhotoAddition, 'by'> {
  return { id, at: at.toISOString(), recordedAt: recordedAt.toISOString(), marks: marks as PhotoMark[], note, place: place as PhotoPlace | null, hides };
}
