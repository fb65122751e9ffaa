import type { Photo, PhotoMark } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const photoParts = { byMember: { select: { name: true } } } satisfies Prisma.PhotoInclude;
export type PhotoRecord = Prisma.PhotoGetPayload<{ include: typeof photoParts }>;

export function presentPhoto(photo: PhotoRecord): Photo {
  return {
    id: photo.id, jobId: photo.jobId, sha256: photo.sha256, bytes: photo.bytes, mediaType: photo.mediaType as Photo['mediaType'], width: photo.width, height: photo.height,
    itemKey: photo.itemKey, part: photo.part, note: photo.note, forCustomer: photo.forCustomer, takenAt: photo.takenAt.toISOString(), receivedAt: photo.receivedAt.toISOString(),
    by: photo.byMember?.name ?? '', marks: photo.marks as PhotoMark[], fromCustomer: photo.linkId !== null, ready: photo.status === 'ready', unshown: photo.status === 'unshown',
  };
}
