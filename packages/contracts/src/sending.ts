import { z } from 'zod';
import { Id, Instant, JobParams, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { largestVideo, MediaType } from './photos.ts';
import { arrivalErrors, UploadFrom, UploadState } from './uploads.ts';

/** What one link takes (ours): a rain from every window, and a disk that stays one. */
export const mostSent = { files: 60, bytes: 2_000_000_000 } as const;

const Token = z.string().regex(/^[A-Za-z0-9_-]{43}$/);
const SendingUploadParams = z.strictObject({ uploadId: Id });

export const SendingLink = z.object({ expiresAt: Instant, createdAt: Instant, usedAt: Instant.nullable(), files: z.number().int() }).meta({ id: 'SendingLink' });
export type SendingLink = z.infer<typeof SendingLink>;

/** What whoever has the link is told: whom it goes to, and what has arrived by it. Neither name nor address of the customer. */
export const Sending = z
  .object({
    company: z.object({ name: z.string(), phone: z.string() }), expiresAt: Instant, filesLeft: z.number().int(), bytesLeft: z.number().int(),
    arrived: z.array(z.object({ id: Id, mediaType: MediaType, bytes: z.number().int(), note: z.string(), receivedAt: Instant })),
  })
  .meta({ id: 'Sending' });
export type Sending = z.infer<typeof Sending>;

export const SentMeta = z.strictObject({ id: Id, sha256: Sha256, takenAt: Instant, note: text(500) }).meta({ id: 'SentMeta' });
export type SentMeta = z.infer<typeof SentMeta>;
export const NewSentUpload = z.strictObject({ length: z.number().int().min(1).max(largestVideo), meta: SentMeta }).meta({ id: 'NewSentUpload' });

/** Photos and videos of the rain from the customer's phone, before there is any account: a link that takes files and shows nothing of the job. */
export const sending = {
  link: endpoint({
    id: 'sending.link', method: 'POST', path: '/jobs/:jobId/sending-link', summary: 'Mint the link by which the customer sends photos and videos; an earlier one stops working',
    access: { permission: 'sending.manage' }, status: 201, params: JobParams, query: null, body: z.strictObject({}), response: z.object({ link: z.string(), expiresAt: Instant }), errors: ['notFound'],
  }),
  linkState: endpoint({
    id: 'sending.linkState', method: 'GET', path: '/jobs/:jobId/sending-link', summary: 'Whether a link is open, and how much came by it', access: { permission: 'sending.manage' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ open: SendingLink.nullable() }), errors: ['notFound'],
  }),
  end: endpoint({
    id: 'sending.end', method: 'POST', path: '/jobs/:jobId/sending-link/end', summary: 'End the link: nothing more can be sent by it', access: { permission: 'sending.manage' }, status: 200,
    params: JobParams, query: null, body: z.strictObject({}), response: z.object({ open: SendingLink.nullable() }), errors: ['notFound'],
  }),
  open: endpoint({
    id: 'sending.open', method: 'POST', path: '/sending', summary: 'Enter by the link', access: { public: 'customers have no account; the token in the body is checked' }, status: 201, idempotency: 'none',
    params: null, query: null, body: z.strictObject({ token: Token }), response: Sending, errors: ['auth.linkInvalid'],
  }),
  read: endpoint({
    id: 'sending.read', method: 'GET', path: '/sending', summary: 'Whom it goes to, and what has arrived', access: { permission: 'sending.send' }, status: 200, params: null, query: null, body: null, response: Sending,
  }),
  create: endpoint({
    id: 'sending.create', method: 'POST', path: '/sending/uploads', summary: 'Begin, or find again, the upload of a photo or video', tus: 'creation', access: { permission: 'sending.send' }, status: 201, idempotency: 'none',
    params: null, query: null, body: NewSentUpload, response: UploadState, errors: [...arrivalErrors, 'conflict.duplicate', 'upload.tooMany', 'sending.full'],
  }),
  state: endpoint({
    id: 'sending.state', method: 'GET', path: '/sending/uploads/:uploadId', summary: 'How far an upload has come', tus: 'state', access: { permission: 'sending.send' }, status: 200,
    params: SendingUploadParams, query: null, body: null, response: UploadState, errors: [...arrivalErrors],
  }),
  append: endpoint({
    id: 'sending.append', method: 'PATCH', path: '/sending/uploads/:uploadId', summary: 'The bytes from an offset on', tus: 'append', access: { permission: 'sending.send' }, status: 204, idempotency: 'none',
    params: SendingUploadParams, query: null, body: UploadFrom, response: null, errors: [...arrivalErrors, 'upload.offset', 'request.unsupportedType', 'request.tooLarge'],
  }),
  stop: endpoint({
    id: 'sending.stop', method: 'DELETE', path: '/sending/uploads/:uploadId', summary: 'Give up an upload', tus: 'termination', access: { permission: 'sending.send' }, status: 204, idempotency: 'none',
    params: SendingUploadParams, query: null, body: null, response: null, errors: ['notFound', 'upload.version', 'conflict.state'],
  }),
};
