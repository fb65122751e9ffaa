import { z } from 'zod';
import { Id, Instant, JobParams } from './common.ts';
import { endpoint } from './endpoint.ts';
import { largestVideo, PhotoMeta } from './photos.ts';

const UploadParams = z.strictObject({ jobId: Id, uploadId: Id });

/** `Upload-Length` [bytes] and `Upload-Metadata`, whose one key `meta` is the JSON of the photo's description in base64. The photo's id is the upload's. */
export const NewUpload = z.strictObject({ length: z.number().int().min(1).max(largestVideo), meta: PhotoMeta }).meta({ id: 'NewUpload' });
/** `Upload-Offset` [bytes]. */
export const UploadFrom = z.strictObject({ offset: z.number().int().min(0).max(largestVideo) }).meta({ id: 'UploadFrom' });

export const UploadState = z
  .object({
    id: Id,
    /** Bytes that have arrived; equal to `length` when the photo is in the job. */
    offset: z.number().int(), length: z.number().int(),
    /** What arrived of an unfinished upload is thrown away then. */
    expiresAt: Instant,
  })
  .meta({ id: 'UploadState' });
export type UploadState = z.infer<typeof UploadState>;

export const arrivalErrors = ['notFound', 'upload.version', 'photo.notAnImage', 'photo.tooLarge', 'photo.hashMismatch', 'video.unreadable', 'storage.full'] as const;

/** Photos and videos that go on where they stopped, by the open protocol tus 1.0.0. A repeat of any request changes nothing twice, so none carries an Idempotency-Key. */
export const uploads = {
  capabilities: endpoint({
    id: 'uploads.capabilities', method: 'OPTIONS', path: '/uploads', summary: 'What the service can do of the protocol', tus: 'capabilities',
    access: { public: 'the protocol asks before anybody is known, and nothing of a company is answered' }, status: 204, idempotency: 'none', params: null, query: null, body: null, response: null,
  }),
  create: endpoint({
    id: 'uploads.create', method: 'POST', path: '/jobs/:jobId/uploads', summary: 'Begin, or find again, the upload of a photo or video; bytes that the company has already are not asked for', tus: 'creation',
    access: { permission: 'photos.add' }, status: 201, idempotency: 'none', params: JobParams, query: null, body: NewUpload, response: UploadState,
    errors: [...arrivalErrors, 'conflict.duplicate', 'upload.tooMany'],
  }),
  read: endpoint({
    id: 'uploads.read', method: 'GET', path: '/jobs/:jobId/uploads/:uploadId', summary: 'How far an upload has come', tus: 'state',
    access: { permission: 'photos.add' }, status: 200, params: UploadParams, query: null, body: null, response: UploadState, errors: [...arrivalErrors],
  }),
  append: endpoint({
    id: 'uploads.append', method: 'PATCH', path: '/jobs/:jobId/uploads/:uploadId', summary: 'The bytes from an offset on; with the last one the photo is checked against its SHA-256 and stands in the job', tus: 'append',
    access: { permission: 'photos.add' }, status: 204, idempotency: 'none', params: UploadParams, query: null, body: UploadFrom, response: null,
    errors: [...arrivalErrors, 'upload.offset', 'request.unsupportedType', 'request.tooLarge'],
  }),
  stop: endpoint({
    id: 'uploads.stop', method: 'DELETE', path: '/jobs/:jobId/uploads/:uploadId', summary: 'Give up an upload; what arrived of it is thrown away', tus: 'termination',
    access: { permission: 'photos.add' }, status: 204, idempotency: 'none', params: UploadParams, query: null, body: null, response: null, errors: ['notFound', 'upload.version', 'conflict.state'],
  }),
};
