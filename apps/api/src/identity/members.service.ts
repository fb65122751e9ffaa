import { Injectable } from '@nestjs/common';
import type { BodyOf, identity as api, Member } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { CompanyService } from '../company/company.service.ts';
import { presentMember } from './identity.presenter.ts';
import { LinksService, type MintedLink } from './links.service.ts';

export interface Invitation extends MintedLink {
  readonly member: Member;
}

@Injectable()
export class MembersService {
  private readonly database: Database;
  private readonly company: CompanyService;
  private readonly links: LinksService;

  constructor(database: Database, company: CompanyService, links: LinksService) {
    this.database = database;
    this.company = company;
    this.links = links;
  }

  list(actor: Actor): Promise<{ items: Member[] }> {
    return this.database.read(actor, async (tx) => {
      const rows = await tx.member.findMany({ where: { companyId: actor.companyId }, orderBy: [{ name: 'asc' }, { id: 'asc' }] });
      return { items: rows.map(presentMember) };
    });
  }

  invite(actor: Actor, body: BodyOf<typeof api.invite>): Promise<Invitation> {
    return this.database.write(actor, async (tx) => {
      const { invitationDays } = await this.company.settings(tx, actor);
      const id = newId();
      const member = await tx.member.create({
        data: { id, companyId: actor.companyId, email: body.email, name: body.name, roles: [...new Set(body.roles)], language: actor.language, units: actor.units, createdAt: actor.request.at },
      });
      const minted = await this.links.mint(tx, actor, { kind: 'invitation', memberId: id, days: invitationDays });
      await audit(tx, actor, 'member.invited', { id }, { roles: member.roles.join(',') });
      await emit(tx, actor, 'members', null, id);
      return { member: presentMember(member), ...minted };
    });
  }

  update(actor: Actor, memberId: string, change: BodyOf<typeof api.updateMember>): Promise<Member> {
    return this.database.write(actor, async (tx) => {
      await lockMembers(tx, actor);
      const key = { companyId_id: { companyId: actor.companyId, id: memberId } };
      const before = found(await tx.member.findUnique({ where: key }));
      const roles = change.roles === undefined ? before.roles : [...new Set(change.roles)];
      const active = change.active ?? before.active;
      const after = await tx.member.update({ where: key, data: { roles, active } });
      await requireOwner(tx, actor);
      if (!active) await endSessions(tx, actor, memberId);
      await audit(tx, actor, 'member.updated', { id: memberId }, { roles: roles.join(','), active });
      await emit(tx, actor, 'members', null, memberId);
      return presentMember(after);
    });
  }
}

/** Two owners who demote each other at the same moment would leave none. */
async function lockMembers(tx: Tx, actor: Actor): Promise<void> {
  await tx.$queryRaw`SELECT id FROM company WHERE id = ${actor.companyId}::uuid FOR UPDATE`;
}

async function requireOwner(tx: Tx, actor: Actor): Promise<void> {
  const owners = await tx.member.count({ where: { companyId: actor.companyId, active: true, roles: { has: 'owner' }, passwordHash: { not: null } } });
  if (owners === 0) throw new DomainError('auth.lastOwner');
}

async function endSessions(tx: Tx, actor: Actor, memberId: string): Promise<void> {
  await tx.session.updateMany({ where: { companyId: actor.companyId, memberId, revokedAt: null }, data: { revokedAt: actor.request.at } });
  await tx.link.updateMany({ where: { companyId: actor.companyId, memberId, usedAt: null, revokedAt: null }, data: { revokedAt: actor.request.at } });
  await emit(tx, actor, 'sessions', null, memberId);
}
