import { Injectable } from '@nestjs/common';
import type { BodyOf, identity as api } from '@yardfall/contracts';
import type { RequestInfo } from '../common/actor.ts';
import { Clock } from '../common/clock.ts';
import { Database } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import { Owner } from '../common/owner.ts';
import { hashToken, newToken } from '../common/session.ts';
import { CompanyService } from '../company/company.service.ts';
import { hashPassword } from './password.ts';
import { memberOf, type Opened, SessionsService } from './sessions.service.ts';

const hour = 3_600_000;

@Injectable()
export class SetUpService {
  private readonly owner: Owner;
  private readonly clock: Clock;
  private readonly database: Database;
  private readonly companies: CompanyService;
  private readonly sessions: SessionsService;

  constructor(owner: Owner, clock: Clock, database: Database, companies: CompanyService, sessions: SessionsService) {
    this.owner = owner;
    this.clock = clock;
    this.database = database;
    this.companies = companies;
    this.sessions = sessions;
  }

  /** For an installation without a company: the path of a link that is good for an hour, or null. An earlier one stops working. */
  async offerLink(): Promise<string | null> {
    const { rowCount } = await this.owner.pool.query('SELECT 1 FROM company LIMIT 1');
    if (rowCount !== 0) return null;
    const token = newToken();
    const at = this.clock.now();
    await this.owner.pool.query('UPDATE setup_link SET expires_at = $1 WHERE used_at IS NULL AND expires_at > $1', [at]);
    await this.owner.pool.query('INSERT INTO setup_link (id, token_hash, created_at, expires_at) VALUES ($1, $2, $3, $4)', [
      newId(), Buffer.from(hashToken(token)), at, new Date(at.getTime() + hour),
    ]);
    return `/set-up#${token}`;
  }

  /** The first company and its owner, once. */
  async setUp(caller: RequestInfo, body: BodyOf<typeof api.setUp>): Promise<Opened> {
    const passwordHash = await hashPassword(body.password);
    const actor = memberOf(newId(), newId(), caller, ['owner']);
    return this.database.write(actor, async (tx) => {
      const used = await tx.$queryRaw<[{ used: boolean }]>`SELECT use_setup_link(${hashToken(body.token)}, ${caller.at}) AS used`;
      if (!used[0].used) throw new DomainError('auth.linkInvalid');
      await this.companies.create(tx, { id: actor.companyId, name: body.companyName, state: body.state, timeZone: body.timeZone, responsibleName: body.ownerName, phone: body.phone ?? '' });
      await tx.member.create({
        data: { id: actor.id, companyId: actor.companyId, email: body.email, name: body.ownerName, passwordHash, roles: ['owner'], language: caller.language, createdAt: caller.at },
      });
      return this.sessions.open(tx, actor, 'company.setUp');
    });
  }
}
