import { Injectable } from '@nestjs/common';
import { mostSent, type PhotoMeta, type Sending, type SendingLink, type SentMeta } from '@yardfall/contracts';
import type { Actor, RequestInfo } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { readSender } from '../common/sender.ts';
import type { Link } from '../generated/prisma/client.ts';
import { LinksService, type MintedLink } from '../identity/links.service.ts';
import { requireJob } from '../jobs/jobs.access.ts';

/** Days that a link waits for the next rain (ours); it is minted again in one touch. */
const linkDays = 60;

/** The link by which a customer sends photos and videos of the rain, and what its page shows. */
@Injectable()
export class SendingService {
  private readonly database: Database;
  private readonly links: LinksService;

  constructor(database: Database, links: LinksService) {
    this.database = database;
    this.links = links;
  }

  mint(actor: Actor, jobId: string): Promise<MintedLink> {
    return this.database.write(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const minted = await this.links.mint(tx, actor, { kind: 'sending', jobId, days: linkDays });
      await audit(tx, actor, 'sendingLink.minted', { jobId });
      await emit(tx, actor, 'job', jobId, jobId);
      return minted;
    });
  }

  state(actor: Actor, jobId: string): Promise<{ open: SendingLink | null }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const link = await openLink(tx, actor, jobId);
      return { open: link === null ? null : await presentLink(tx, link) };
    });
  }

  end(actor: Actor, jobId: string): Promise<{ open: SendingLink | null }> {
    return this.database.write(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const { count } = await tx.link.updateMany({ where: { companyId: actor.companyId, kind: 'sending', jobId, revokedAt: null }, data: { revokedAt: actor.request.at } });
      if (count > 0) await audit(tx, actor, 'sendingLink.ended', { jobId });
      return { open: null };
    });
  }

  /** The link is the session: ended, it is over at once. */
  async enter(caller: RequestInfo, token: string): Promise<Sending> {
    const actor = await readSender(this.database.pool, token, caller);
    if (actor === null) throw new DomainError('auth.linkInvalid');
    await this.database.write(actor, (tx) => tx.link.update({ where: keyOf(actor), data: { usedAt: caller.at } }));
    return this.read(actor);
  }

  read(actor: Actor): Promise<Sending> {
    return this.database.read(actor, async (tx) => {
      const company = found(await tx.company.findUnique({ where: { id: actor.companyId } }));
      const link = found(await tx.link.findUnique({ where: keyOf(actor) }));
      const photos = await tx.photo.findMany({ where: { companyId: actor.companyId, linkId: actor.id }, orderBy: { receivedAt: 'desc' } });
      return {
        company: { name: company.name, phone: company.phone }, expiresAt: link.expiresAt.toISOString(), filesLeft: Math.max(0, mostSent.files - photos.length),
        bytesLeft: Math.max(0, mostSent.bytes - photos.reduce((sum, { bytes }) => sum + bytes, 0)),
        arrived: photos.map(({ id, mediaType, bytes, note, receivedAt }) => ({ id, mediaType: mediaType as Sending['arrived'][number]['mediaType'], bytes, note, receivedAt: receivedAt.toISOString() })),
      };
    });
  }
}

/** A note of the customer's: about the place as a whole, and for the office to judge who else sees it. */
export function photoOf(meta: SentMeta): PhotoMeta {
  return { ...meta, itemKey: null, part: null, forCustomer: false, marks: [] };
}

const keyOf = ({ companyId, id }: Actor) => ({ companyId_id: { companyId, id } });

function openLink(tx: Tx, actor: Actor, jobId: string): Promise<Link | null> {
  return tx.link.findFirst({ where: { companyId: actor.companyId, kind: 'sending', jobId, revokedAt: null, expiresAt: { gt: actor.request.at } }, orderBy: { createdAt: 'desc' } });
}

async function presentLink(tx: Tx, { id, companyId, expiresAt, createdAt, usedAt }: Link): Promise<SendingLink> {
  const files = await tx.photo.count({ where: { companyId, linkId: id } });
  return { expiresAt: expiresAt.toISOString(), createdAt: createdAt.toISOString(), usedAt: usedAt?.toISOString() ?? null, files };
}
