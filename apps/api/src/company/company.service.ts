import { Injectable } from '@nestjs/common';
import { type BodyOf, type Company, type company as api, type CompanySettings, defaultSettings } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { expectedVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { presentCompany } from './company.presenter.ts';
import { readSettings, writeSettings } from './company.rules.ts';

export interface NewCompany {
  readonly id: string;
  readonly name: string;
  readonly state: string;
  readonly timeZone: string;
  readonly responsibleName: string;
}

@Injectable()
export class CompanyService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  read(actor: Actor): Promise<Company> {
    return this.database.read(actor, async (tx) => presentCompany(await this.row(tx, actor)));
  }

  /** For other features, inside their transaction. */
  async settings(tx: Tx, actor: Actor): Promise<CompanySettings> {
    return readSettings((await this.row(tx, actor)).settings);
  }

  update(actor: Actor, change: BodyOf<typeof api.update>): Promise<Company> {
    const { settings, ...fields } = change;
    const data = { ...definedOf(fields), ...(settings === undefined ? {} : { settings: writeSettings(settings) }), version: { increment: 1 } };
    return this.database.write(actor, async (tx) => {
      const { count } = await tx.company.updateMany({ where: { id: actor.companyId, version: expectedVersion(actor.request) }, data });
      if (count === 0) throw new DomainError('conflict.stale');
      await audit(tx, actor, 'company.updated', { id: actor.companyId }, { fields: Object.keys(change).sort().join(',') });
      await emit(tx, actor, 'company', null, actor.companyId);
      return presentCompany(await this.row(tx, actor));
    });
  }

  /** Only the set-up of an installation and the demo make companies; the transaction already acts for the new one. */
  async create(tx: Tx, company: NewCompany): Promise<void> {
    await tx.company.create({ data: { ...company, settings: writeSettings(defaultSettings) } });
  }

  private async row(tx: Tx, actor: Actor) {
    return found(await tx.company.findUnique({ where: { id: actor.companyId } }));
  }
}

/** exactOptional: what was not sent is not touched. */
function definedOf<T extends object>(fields: T): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;
}
