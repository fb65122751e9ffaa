import { Injectable } from '@nestjs/common';
import type { Me, Role } from '@yardfall/contracts';
import type { Actor, RequestInfo } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { hashToken, newToken } from '../common/session.ts';
import { Attempts } from './attempts.ts';
import { presentMe, presentVisitor } from './identity.presenter.ts';
import { checkPassword } from './password.ts';

const day = 86_400_000;
const memberDays = 30;
/** Who works with wet gloves signs in once a season; a lost phone is cut off by the owner. */
const crewDays = 120;
const customerDays = 90;

export interface Opened {
  readonly token: string;
  readonly expiresAt: Date;
  readonly me: Me;
}

@Injectable()
export class SessionsService {
  private readonly database: Database;
  private readonly attempts: Attempts;

  constructor(database: Database, attempts: Attempts) {
    this.database = database;
    this.attempts = attempts;
  }

  async signIn(caller: RequestInfo, email: string, password: string): Promise<Opened> {
    await this.attempts.count(email, caller.ip);
    const { rows } = await this.database.pool.query<SignInRow>('SELECT * FROM look_up_sign_in($1)', [email]);
    const row = rows[0];
    const right = await checkPassword(row?.password_hash ?? null, password);
    if (row === undefined || !right || !row.active) throw new DomainError('auth.wrongCredentials');
    await this.attempts.forget(email, caller.ip);
    const actor = memberOf(row.company_id, row.member_id, caller);
    return this.database.write(actor, (tx) => this.open(tx, actor, 'session.opened'));
  }

  /** Opens a session for the actor inside the transaction that made or proved them. */
  async open(tx: Tx, actor: Actor, action: string): Promise<Opened> {
    const token = newToken();
    const { at, userAgent } = actor.request;
    const me = await this.describe(tx, actor);
    const lasts = actor.kind === 'customer' ? customerDays : me.roles.every((role) => role === 'crew') ? crewDays : memberDays;
    const expiresAt = new Date(at.getTime() + lasts * day);
    const id = newId();
    const whose = actor.kind === 'customer' ? { customerId: actor.id, jobId: actor.jobId } : { memberId: actor.id };
    await tx.session.create({ data: { id, companyId: actor.companyId, ...whose, tokenHash: hashToken(token), createdAt: at, lastSeenAt: at, expiresAt, userAgent } });
    await audit(tx, actor, action, { id });
    return { token, expiresAt, me };
  }

  me(actor: Actor): Promise<Me> {
    return this.database.read(actor, (tx) => this.describe(tx, actor));
  }

  async signOut(actor: Actor): Promise<void> {
    if (actor.sessionId === null) return;
    const sessionId = actor.sessionId;
    await this.database.write(actor, async (tx) => {
      await tx.session.updateMany({ where: { companyId: actor.companyId, id: sessionId, revokedAt: null }, data: { revokedAt: actor.request.at } });
      await audit(tx, actor, 'session.closed', { id: sessionId });
      await emit(tx, actor, 'sessions', actor.jobId, actor.id);
    });
  }

  updatePreferences(actor: Actor, change: { language?: string | undefined; units?: string | undefined; theme?: string | undefined }): Promise<Me> {
    return this.database.write(actor, async (tx) => {
      const key = { companyId: actor.companyId, id: actor.id };
      const data = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
      if (actor.kind === 'member') await tx.member.updateMany({ where: key, data });
      else if (change.language !== undefined) await tx.customer.updateMany({ where: key, data: { language: change.language } });
      return this.describe(tx, actor);
    });
  }

  private async describe(tx: Tx, actor: Actor): Promise<Me> {
    const company = found(await tx.company.findUnique({ where: { id: actor.companyId } }));
    const key = { companyId_id: { companyId: actor.companyId, id: actor.id } };
    if (actor.kind === 'member') return presentMe(company, found(await tx.member.findUnique({ where: key })));
    return presentVisitor(company, found(await tx.customer.findUnique({ where: key })), actor.jobId);
  }
}

interface SignInRow {
  readonly company_id: string;
  readonly member_id: string;
  readonly password_hash: string | null;
  readonly active: boolean;
}

/** Somebody whose proof was just accepted; the roles do not matter before the session is read back. */
export function memberOf(companyId: string, id: string, request: RequestInfo, roles: readonly Role[] = []): Actor {
  return { kind: 'member', id, companyId, roles, jobId: null, language: request.language, units: 'us', sessionId: null, request };
}
