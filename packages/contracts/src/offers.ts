import { z } from 'zod';
import { CalendarDate, Cents, Id, Instant, JobParams, Language, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

export const OfferStatus = z.enum(['draft', 'sent', 'accepted', 'withdrawn', 'expired']).meta({ id: 'OfferStatus' });

const offerCore = {
  id: Id, jobId: Id, number: z.number().int(), revisionId: Id, revisionNumber: z.number().int(), designName: z.string(), status: OfferStatus,
  price: Cents, language: Language, validUntil: CalendarDate, sha256: Sha256, createdAt: Instant, sentAt: Instant.nullable(),
  acceptedAt: Instant.nullable(), acceptedName: z.string().nullable(), acceptedSha256: Sha256.nullable(), withdrawnAt: Instant.nullable(),
};
export const Offer = z.object(offerCore).meta({ id: 'Offer' });
export type Offer = z.infer<typeof Offer>;

/** Text that the customer reads: code and parameters in SI, rendered in their language; what they sign is kept as bytes. */
export const OfferText = z.object({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) }).meta({ id: 'OfferText' });

const OfferParams = z.strictObject({ jobId: Id, offerId: Id });

export const offers = {
  list: endpoint({
    id: 'offers.list', method: 'GET', path: '/jobs/:jobId/offers', summary: 'Offers of a job', access: { permission: 'offers.read' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ items: z.array(Offer) }), errors: ['notFound'],
  }),
  create: endpoint({
    id: 'offers.create', method: 'POST', path: '/jobs/:jobId/offers', summary: 'Make an offer: freezes the issued revision and the price sheet, and the page the customer will read',
    access: { permission: 'offers.send' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ sheetId: Id, validUntil: CalendarDate, message: text(2000) }), response: Offer, errors: ['notFound', 'conflict.state', 'price.incomplete'],
  }),
  send: endpoint({
    id: 'offers.send', method: 'POST', path: '/jobs/:jobId/offers/:offerId/send', summary: 'Send the offer: it becomes visible on the customer page; the answer holds the link to hand over',
    access: { permission: 'offers.send' }, status: 200, params: OfferParams, query: null, body: z.strictObject({}),
    response: z.object({ offer: Offer, link: z.string() }), errors: ['notFound', 'offer.notOpen'],
  }),
  withdraw: endpoint({
    id: 'offers.withdraw', method: 'POST', path: '/jobs/:jobId/offers/:offerId/withdraw', summary: 'Take an offer back before it is accepted',
    access: { permission: 'offers.send' }, status: 200, params: OfferParams, query: null, body: z.strictObject({}), response: Offer, errors: ['notFound', 'offer.notOpen'],
  }),
};
