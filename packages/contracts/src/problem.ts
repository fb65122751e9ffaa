import { z } from 'zod';

/** Every error that the API answers with: code -> HTTP status. The sentence comes from the text package by the code. */
export const errorCodes = {
  'request.invalid': 400,
  'request.tooLarge': 413,
  'request.unsupportedType': 415,
  'request.unreadable': 400,
  'auth.required': 401,
  'auth.wrongCredentials': 401,
  'auth.tooManyAttempts': 429,
  'auth.forbidden': 403,
  'auth.phoneCutOff': 403,
  'auth.badOrigin': 403,
  'auth.linkInvalid': 410,
  'auth.lastOwner': 409,
  'notFound': 404,
  'conflict.stale': 412,
  'conflict.preconditionRequired': 428,
  'conflict.state': 409,
  /** A design has one draft at a time: params say who is at it, its number and its revision. */
  'design.draftOpen': 409,
  'conflict.duplicate': 409,
  'idempotency.required': 400,
  'idempotency.mismatch': 409,
  'idempotency.inFlight': 409,
  'document.invalid': 422,
  'levelBook.invalid': 422,
  'rain.unreadable': 422,
  'length.ambiguous': 422,
  'design.stopFindings': 409,
  'design.unacknowledged': 409,
  'design.notDraft': 409,
  'design.referred': 409,
  'draft.conflict': 409,
  'price.incomplete': 409,
  'offer.notOpen': 409,
  'offer.hashMismatch': 409,
  'release.held': 409,
  'locate.unknownRule': 409,
  'checklist.held': 409,
  'checklist.stopped': 409,
  'checklist.rule': 422,
  'checklist.evidenceMissing': 409,
  'checklist.notBuildRevision': 409,
  'photo.notAnImage': 422,
  'photo.tooLarge': 413,
  'photo.hashMismatch': 422,
  'video.unreadable': 422,
  'video.tooLarge': 413,
  'upload.offset': 409,
  'upload.version': 412,
  'upload.tooMany': 429,
  'sending.full': 409,
  'proof.invalid': 422,
  'handover.notReady': 409,
  'storage.full': 507,
  'busy': 503,
  'internal': 500,
} as const;

export type ErrorCode = keyof typeof errorCodes;

const parameter = z.union([z.string(), z.number(), z.boolean()]);

/** RFC 9457 problem document. `code` and `params` carry what the reader's language needs; `issues` name each bad field. */
export const Problem = z
  .object({
    type: z.string().meta({ description: 'urn:yardfall:problem:<code>' }),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    code: z.enum(Object.keys(errorCodes) as [ErrorCode, ...ErrorCode[]]),
    params: z.record(z.string(), parameter),
    issues: z.array(z.object({ path: z.string(), message: z.string() })),
    requestId: z.string(),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof Problem>;
