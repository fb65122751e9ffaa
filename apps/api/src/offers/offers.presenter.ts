import type { Offer } from '@yardfall/contracts';
import { render } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import type { CustomersService } from '../customers/customers.service.ts';
import type { Prisma } from '../generated/prisma/client.ts';
import { dayAt, dayOf } from '../jobs/propertyDay.ts';
import { isExpired } from './offer.rules.ts';

export const offerParts = {
  include: {
    revision: { select: { number: true, design: { select: { name: true } } } },
    job: { select: { customer: { include: { customerKey_customer: true } }, property: { select: { timeZone: true } } } },
  },
  omit: { content: true, texts: true },
} satisfies Prisma.OfferDefaultArgs;
export type OfferRecord = Prisma.OfferGetPayload<typeof offerParts>;

export const placeOf = { content: (id: string) => `offer:${id}`, texts: (id: string) => `offerTexts:${id}`, accepted: (id: string) => `accepted:${id}` };

/** An offer whose last day is over where the property stands has expired, whether or not anybody has looked. */
export function statusOf(row: Pick<OfferRecord, 'status' | 'validUntil' | 'job'>, now: Date): Offer['status'] {
  const over = isExpired(dayOf(row.validUntil), dayAt(now, row.job.property.timeZone));
  return row.status === 'sent' && over ? 'expired' : (row.status as Offer['status']);
}

export function presentOffer(row: OfferRecord, actor: Actor, customers: CustomersService): Offer {
  return {
    id: row.id, jobId: row.jobId, number: row.number, revisionId: row.revisionId, revisionNumber: row.revision.number, designName: row.revision.design.name,
    status: statusOf(row, actor.request.at), price: Number(row.price), language: row.language as Offer['language'], validUntil: dayOf(row.validUntil), sha256: row.sha256,
    createdAt: row.createdAt.toISOString(), sentAt: row.sentAt?.toISOString() ?? null, acceptedAt: row.acceptedAt?.toISOString() ?? null,
    acceptedName: acceptedName(row, actor, customers), acceptedSha256: row.acceptedSha256, withdrawnAt: row.withdrawnAt?.toISOString() ?? null,
  };
}

export function acceptedName(row: OfferRecord, actor: Actor, customers: CustomersService): string | null {
  if (row.acceptedName === null) return null;
  return customers.openText(row.job.customer, placeOf.accepted(row.id), row.acceptedName) ?? render(actor.language, actor.units, 'jobs.customer.erased');
}
