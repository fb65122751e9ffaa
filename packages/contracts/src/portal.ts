import type { DesignDocument } from '@yardfall/calc';
import { z } from 'zod';
import { CalendarDate, Cents, Id, Instant, Language, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { jobStages } from './jobs.ts';
import { OfferText } from './offers.ts';
import { PhotoMark } from './photos.ts';
import { TiesOnRecord } from './proof.ts';

/** The part of a design that the customer's drawing needs: no costs, no margins, no rates. */
export const PortalDrawing = z
  .object({
    document: z.custom<DesignDocument>((value) => typeof value === 'object' && value !== null).meta({ id: 'PortalDocument', type: 'object', description: 'The frozen design document' }),
    sillLevel: z.number(),
    /** The slider: highest pond level by return period and case, from the stored results. */
    family: z.array(
      z.object({ case: z.enum(['noSystem', 'system', 'powerOut', 'gutterOverflowing']), returnPeriod: z.number(), maxLevel: z.number(), minutesOverSill: z.number() }),
    ),
  })
  .meta({ id: 'PortalDrawing' });
export type PortalDrawing = z.infer<typeof PortalDrawing>;

export const PortalOffer = z
  .object({
    id: Id, number: z.number().int(), status: z.enum(['sent', 'accepted', 'withdrawn', 'expired']), price: Cents, validUntil: CalendarDate, sha256: Sha256, language: Language,
    texts: z.array(OfferText), acceptedAt: Instant.nullable(), acceptedName: z.string().nullable(), acceptedSha256: Sha256.nullable(),
  })
  .meta({ id: 'PortalOffer' });

export const Portal = z
  .object({
    company: z.object({ name: z.string(), responsibleName: z.string(), phone: z.string() }),
    jobTitle: z.string(), customerName: z.string(), address: z.string(), stage: z.enum(jobStages),
    next: z.object({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) }),
    /** What counts now and ends by itself: the time to cancel, an open trench, fresh concrete. */
    times: z.array(OfferText),
    why: z.array(OfferText), drawing: PortalDrawing.nullable(), offer: PortalOffer.nullable(),
    /** Hold points at which the company asks for fewer photos than are built in, on every job: by the owner's word. */
    weaker: z.array(z.object({ item: z.string(), photos: z.number().int(), builtIn: z.number().int(),
      /** How wide the limits of its figures are, as a share of the built-in ones; null where they are those. */
      limits: z.number().nullable(), reason: z.string(), by: z.string(),
    })),
    waivers: z.array(z.object({ holdPoint: z.string(), item: z.string(), reason: z.string(), by: z.string(), at: Instant })),
    photos: z.array(z.object({ id: Id, note: z.string(), takenAt: Instant, itemKey: z.string().nullable(), marks: z.array(PhotoMark) })),
    /** Flows in m3/s; `difference` is measured over predicted less one, and `within` is how far off still passes. */
    proof: z.object({ measured: z.number(), uncertainty: z.number(), predicted: z.number(), difference: z.number(), within: z.number(), verdict: z.string(), at: Instant }).nullable(),
    handover: z
      .object({ handedOverAt: Instant, warrantyFrom: CalendarDate, warrantyUntil: CalendarDate, breaker: z.string(), care: z.array(z.object({ code: z.string(), who: z.enum(['customer', 'company']), when: z.string() })), ties: TiesOnRecord.nullable() })
      .nullable(),
  })
  .meta({ id: 'Portal' });
export type Portal = z.infer<typeof Portal>;

export const portal = {
  read: endpoint({
    id: 'portal.read', method: 'GET', path: '/portal', summary: 'The customer page of the job that the link belongs to', access: { permission: 'portal.read' }, status: 200,
    params: null, query: null, body: null, response: Portal,
  }),
  offerBytes: endpoint({
    id: 'portal.offerBytes', method: 'GET', path: '/portal/offers/:offerId/text', summary: 'The exact text that is accepted; its SHA-256 is the offer hash',
    access: { permission: 'portal.read' }, status: 200, params: z.strictObject({ offerId: Id }), query: null, body: null, response: null, produces: 'text/plain; charset=utf-8', errors: ['notFound'],
  }),
  accept: endpoint({
    id: 'portal.accept', method: 'POST', path: '/portal/offers/:offerId/accept', summary: 'Accept the offer by typed name, against the hash of what was read',
    access: { permission: 'portal.answer' }, status: 200, params: z.strictObject({ offerId: Id }), query: null,
    body: z.strictObject({ name: text(120, 2), sha256: Sha256, electronicRecords: z.literal(true) }), response: Portal, errors: ['notFound', 'offer.notOpen', 'offer.hashMismatch'],
  }),
  photo: endpoint({
    id: 'portal.photo', method: 'GET', path: '/portal/photos/:photoId', summary: 'Viewing copy of a photo that the customer may see, without its location', access: { permission: 'portal.read' },
    status: 200, params: z.strictObject({ photoId: Id }), query: null, body: null, response: null, produces: 'image/*', errors: ['notFound'],
  }),
};
