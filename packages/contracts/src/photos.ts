import { z } from 'zod';
import { Id, Instant, JobParams, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

export const Photo = z
  .object({
    id: Id, jobId: Id, sha256: Sha256, bytes: z.number().int(), mediaType: z.enum(['image/jpeg', 'image/png']), width: z.number().int(), height: z.number().int(),
    itemKey: z.string().nullable(), part: z.string().nullable(), note: z.string(), forCustomer: z.boolean(), takenAt: Instant, receivedAt: Instant, by: z.string(),
    ready: z.boolean(),
  })
  .meta({ id: 'Photo' });
export type Photo = z.infer<typeof Photo>;

export const PhotoMeta = z
  .strictObject({
    id: Id, sha256: Sha256, takenAt: Instant, itemKey: text(80, 1).nullable(), part: text(40, 1).nullable(), note: text(1000), forCustomer: z.boolean(),
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
    upload: { maxBytes: 25_000_000, types: ['image/jpeg', 'image/png'] },
    errors: ['notFound', 'photo.notAnImage', 'photo.tooLarge', 'photo.hashMismatch', 'storage.full'],
  }),
  file: endpoint({
    id: 'photos.file', method: 'GET', path: '/jobs/:jobId/photos/:photoId/:copy', summary: 'The original, the viewing copy or the thumbnail',
    access: { permission: 'photos.read' }, status: 200, params: PhotoParams.extend({ copy: z.enum(['original', 'view', 'thumb']) }), query: null, body: null, response: null,
    produces: 'image/*', errors: ['notFound'],
  }),
};
