import { Injectable } from '@nestjs/common';
import type { Actor, RequestInfo } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { hashToken, newToken } from '../common/session.ts';
import { CompanyService } from '../company/company.service.ts';
import { hashPassword } from './password.ts';
import { memberOf, type Opened, SessionsService } from './sessions.service.ts';

const day = 86_400_000;

export interface MintedLink {
  readonly link: string;
  readonly expiresAt: string;
}

interface LinkFor {
  readonly kind: 'invitation' | 'customer' | 'sending';
  readonly memberId?: string;
  readonly jobId?: string;
  readonly days: number;
}

interface LinkRow {
  readonly id: string;
  readonly company_id: string;
  readonly kind: string;
  readonly member_id: string | null;
  readonly job_id: string | null;
  readonly expires_at: Date;
  readonly used_at: Date | null;
  readonly revoked_at: Date | null;
}

/** Tokens stand behind `#`: no server, proxy or referrer sees them, and opening the page changes nothing. */
const pages = { invitation: '/join', customer: '/drain', sending: '/send' };

@Injectable()
export class LinksService {
  private readonly database: Database;
  private readonly company: CompanyService;
  private readonly sessions: SessionsService;

  constructor(database: Database, company: CompanyService, sessions: SessionsService) {
    this.database = database;
    this.company = company;
    this.sessions = sessions;
  }

  /** A new link; what was minted before for the same person or job stops working. */
  async mint(tx: Tx, actor: Actor, { kind, memberId, jobId, days }: LinkFor): Promise<MintedLink> {
    const { at, origin } = actor.request;
    const whose = { companyId: actor.companyId, kind, memberId: memberId ?? null, jobId: jobId ?? null };
    await tx.link.updateMany({ where: { ...whose, revokedAt: null }, data: { revokedAt: at } });
    const token = newToken();
    const expiresAt = new Date(at.getTime() + days * day);
    await tx.link.create({ data: { id: newId(), ...whose, tokenHash: hashToken(token), createdById: actor.kind === 'member' ? actor.id : null, createdAt: at, expiresAt } });
    return { link: `${origin}${pages[kind]}#${token}`, expiresAt: expiresAt.toISOString() };
  }

  customerLink(actor: Actor, jobId: string): Promise<MintedLink> {
    return this.database.write(actor, (tx) => this.mintForCustomer(tx, actor, jobId));
  }

  /** For whoever sends an offer or a handover, in their transaction. */
  async mintForCustomer(tx: Tx, actor: Actor, jobId: string): Promise<MintedLink> {
    found(await tx.job.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: jobId } }, select: { id: true } }));
    const { customerLinkDays } = await this.company.settings(tx, actor);
    const minted = await this.mint(tx, actor, { kind: 'customer', jobId, days: customerLinkDays });
    await audit(tx, actor, 'customerLink.minted', { jobId });
    return minted;
  }

  async redeemInvitation(caller: RequestInfo, token: string, password: string): Promise<Opened> {
    const link = await this.open(caller, token, 'invitation');
    if (link.member_id === null || link.used_at !== null) throw new DomainError('auth.linkInvalid');
    const actor = memberOf(link.company_id, link.member_id, caller);
    const passwordHash = await hashPassword(password);
    return this.database.write(actor, async (tx) => {
      const { count } = await tx.link.updateMany({ where: { companyId: link.company_id, id: link.id, usedAt: null, revokedAt: null }, data: { usedAt: caller.at } });
      if (count === 0) throw new DomainError('auth.linkInvalid');
      await tx.member.update({ where: { companyId_id: { companyId: actor.companyId, id: actor.id } }, data: { passwordHash } });
      await emit(tx, actor, 'members', null, actor.id);
      return this.sessions.open(tx, actor, 'invitation.redeemed');
    });
  }

  /** The link itself lasts: each visit with it opens a session, until it is minted anew or runs out. */
  async openCustomerLink(caller: RequestInfo, token: string): Promise<Opened> {
    const link = await this.open(caller, token, 'customer');
    const jobId = found(link.job_id);
    const scout: Actor = { ...memberOf(link.company_id, link.id, caller), kind: 'customer', roles: ['customer'], jobId };
    const job = await this.database.read(scout, (tx) => tx.job.findUnique({ where: { companyId_id: { companyId: link.company_id, id: jobId } }, select: { customerId: true } }));
    const actor: Actor = { ...scout, id: found(job).customerId };
    return this.database.write(actor, async (tx) => {
      const { count } = await tx.link.updateMany({ where: { companyId: link.company_id, id: link.id, revokedAt: null }, data: { usedAt: caller.at } });
      if (count === 0) throw new DomainError('auth.linkInvalid');
      return this.sessions.open(tx, actor, 'customerLink.opened');
    });
  }

  private async open(caller: RequestInfo, token: string, kind: LinkFor['kind']): Promise<LinkRow> {
    const { rows } = await this.database.pool.query<LinkRow>('SELECT * FROM look_up_link($1)', [Buffer.from(hashToken(token))]);
    const row = rows[0];
    if (row === undefined || row.kind !== kind || row.revoked_at !== null || row.expires_at <= caller.at) throw new DomainError('auth.linkInvalid');
    return row;
  }
}
