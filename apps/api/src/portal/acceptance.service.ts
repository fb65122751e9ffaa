import { Injectable } from '@nestjs/common';
import type { BodyOf, Portal, portal as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { CustomersService } from '../customers/customers.service.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { holdForPermits } from '../jobs/permits.ts';
import { advance } from '../jobs/stages.ts';
import { placeOf, statusOf } from '../offers/offers.presenter.ts';
import { jobOf } from './job.ts';
import { PortalService } from './portal.service.ts';

/** The customer's yes: a typed name against the hash of exactly what was read. */
@Injectable()
export class AcceptanceService {
  private readonly database: Database;
  private readonly portal: PortalService;
  private readonly customers: CustomersService;

  constructor(database: Database, portal: PortalService, customers: CustomersService) {
    this.database = database;
    this.portal = portal;
    this.customers = customers;
  }

  async accept(actor: Actor, offerId: string, { name, sha256 }: BodyOf<typeof api.accept>): Promise<Portal> {
    const names = await this.portal.names(actor);
    return this.database.write(actor, async (tx) => {
      const jobId = jobOf(actor);
      const job = await lockJob(tx, actor, jobId);
      const offer = await this.portal.sentOffer(tx, actor, offerId);
      const status = statusOf(offer, actor.request.at);
      if (status !== 'sent') throw new DomainError('offer.notOpen', { status });
      if (offer.sha256 !== sha256) throw new DomainError('offer.hashMismatch');
      const acceptedName = this.customers.sealText(offer.job.customer, placeOf.accepted(offerId), name);
      const data = { status: 'accepted', acceptedAt: actor.request.at, acceptedName, acceptedSha256: sha256 };
      await tx.offer.update({ where: { companyId_id: { companyId: actor.companyId, id: offerId } }, data });
      await advance(tx, actor, job, 'accepted');
      await clearHolds(tx, actor, jobId, ['jobs.hold.answer', 'jobs.hold.offer']);
      await setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.release', params: { number: offer.number } });
      await holdForPermits(tx, actor, await lockJob(tx, actor, jobId));
      await audit(tx, actor, 'offer.accepted', { jobId, id: offerId }, { number: offer.number, sha256, electronicRecords: true });
      await emit(tx, actor, 'offer', jobId, offerId);
      return this.portal.inside(tx, actor, names);
    });
  }
}
