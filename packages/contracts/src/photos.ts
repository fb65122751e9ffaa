import { z } from 'zod';
import { finite, Id, Instant, JobParams, Level, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** What is kept, by content and never by name. */
export const mediaTypes = ['image/jpeg', 'image/png', 'image/heic', 'video/mp4', 'video/quicktime', 'video/webm'] as const;
export const MediaType = z.enum(mediaTypes).meta({ id: 'MediaType' });
export type MediaType = z.infer<typeof MediaType>;

/** Most bytes of one file (ours): far above a phone's photo, and some minutes of its video. */
export const largestPhoto = 25_000_000;
export const largestVideo = 500_000_000;

const share = z.number().min(0).max(1);
const Spot = z.strictObject({ x: share, y: share });

/** A mark that lies over a photo and never alters it: places are shares of the upright picture's width and height. */
export const PhotoMark = z
  .strictObject({ kind: z.enum(['arrow', 'line', 'text']), from: Spot, to: Spot, words: text(60) })
  .meta({ id: 'PhotoMark' });
export type PhotoMark = z.infer<typeof PhotoMark>;

/** A point of the section: how far from the wall along it, and at which level [m]. */
export const SectionPoint = z.strictObject({ station: finite(-1000, 10_000), level: Level }).meta({ id: 'SectionPoint' });
export type SectionPoint = z.infer<typeof SectionPoint>;

/** Where a photo belongs, said as a whole: the step, the part, and the point in the section. */
export const PhotoPlace = z.strictObject({ itemKey: text(80, 1).nullable(), part: text(40, 1).nullable(), point: SectionPoint.nullable() }).meta({ id: 'PhotoPlace' });
export type PhotoPlace = z.infer<typeof PhotoPlace>;

export const mostMarks = 12;
const more = {
  id: Id, at: Instant, marks: z.array(PhotoMark).max(mostMarks), note: text(1000),
  /** Null speaks of no place; a later place counts instead of an earlier. */
  place: PhotoPlace.nullable(),
  /** Sets of marks that are drawn no longer, by the id under which they were added; the photo's own id for those it came with. They stay on record. */
  hides: z.array(Id).max(20),
};

/** What somebody laid over a photo after it was kept, wrote to it, or where they placed it: only ever added. */
export const NewPhotoAddition = z.strictObject(more).meta({ id: 'NewPhotoAddition' });
export type NewPhotoAddition = z.infer<typeof NewPhotoAddition>;
export const PhotoAddition = z.object({ ...more, by: z.string(), recordedAt: Instant }).meta({ id: 'PhotoAddition' });
export type PhotoAddition = z.infer<typeof PhotoAddition>;

export const Photo = z
  .object({
    id: Id, jobId: Id, sha256: Sha256, bytes: z.number().int(), mediaType: MediaType,
    /** As it is looked at [pixels]; null for a video. */
    width: z.number().int().nullable(), height: z.number().int().nullable(),
    itemKey: z.string().nullable(), part: z.string().nullable(), note: z.string(), forCustomer: z.boolean(), takenAt: Instant, receivedAt: Instant, by: z.string(),
    /** As it came; what was added to it stands in `additions`, and `photoAsIs` says what comes of both. */
    marks: z.array(PhotoMark), additions: z.array(PhotoAddition),
    /** Sent by the customer through a link, without an account. */
    fromCustomer: z.boolean(),
    /** `ready`: there is a copy to look at, or it is a video; `unshown`: kept as it came, but no copy of it can be made. */
    ready: z.boolean(), unshown: z.boolean(),
  })
  .meta({ id: 'Photo' });
export type Photo = z.infer<typeof Photo>;

export const PhotoMeta = z
  .strictObject({
    id: Id, sha256: Sha256, takenAt: Instant, itemKey: text(80, 1).nullable(), part: text(40, 1).nullable(), note: text(1000), forCustomer: z.boolean(),
    marks: z.array(PhotoMark).max(mostMarks).default([]),
  })
  .meta({ id: 'PhotoMeta' });
export type PhotoMeta = z.infer<typeof PhotoMeta>;

const PhotoParams = z.strictObject({ jobId: Id, photoId: Id });

export const photos = {
  list: endpoint({
    id: 'photos.list', method: 'GET', path: '/jobs/:jobId/photos', summary: 'Photos and photo notes of a job', access: { permission: 'photos.read' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ items: z.array(Photo) }), errors: ['notFound'],
  }),
  add: endpoint({
    id: 'photos.add', method: 'POST', path: '/jobs/:jobId/photos', summary: 'Add a photo (JPEG or PNG) with its SHA-256; the original is kept as it came',
    access: { permission: 'photos.add' }, status: 201, params: JobParams, query: null, body: PhotoMeta, response: Photo,
    upload: { maxBytes: largestPhoto, types: ['image/jpeg', 'image/png'] },
    errors: ['notFound', 'photo.notAnImage', 'photo.tooLarge', 'photo.hashMismatch', 'storage.full'],
  }),
  amend: endpoint({
    id: 'photos.amend', method: 'POST', path: '/jobs/:jobId/photos/:photoId/additions', summary: 'Lay marks and words over a photo that is kept, or say where it belongs; the picture itself is never altered',
    access: { permission: 'photos.add' }, status: 200, params: PhotoParams, query: null, body: NewPhotoAddition, response: Photo, errors: ['notFound', 'conflict.duplicate'],
  }),
  file: endpoint({
    id: 'photos.file', method: 'GET', path: '/jobs/:jobId/photos/:photoId/:copy', summary: 'The original, the viewing copy or the thumbnail; parts of an original by Range',
    access: { permission: 'photos.read' }, status: 200, params: PhotoParams.extend({ copy: z.enum(['original', 'view', 'thumb']) }), query: null, body: null, response: null,
    produces: '*/*', errors: ['notFound'],
  }),
};
