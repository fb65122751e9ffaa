import { Injectable } from '@nestjs/common';
import { DocumentError } from '@yardfall/calc';
import { type BodyOf, type Company, type company as api, type CompanySettings, defaultSettings } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { expectedVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { refused } from '../evaluate/refused.ts';
import { presentCompany } from './company.presenter.ts';
import { readSettings, stampedChecklist, stampedLimits, writeSettings } from './company.rules.ts';

export interface NewCompany {
  readonly id: string;
  readonly name: string;
  readonly state: string;
  readonly timeZone: string;
  readonly responsibleName: string;
  readonly phone: string;
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
    const { settings, limits, checklist, ...fields } = change;
    return this.database.write(actor, async (tx) => {
      const data = { ...definedOf(fields), ...(await this.changedSettings(tx, actor, { settings, limits, checklist })), version: { increment: 1 } };
      const { count } = await tx.company.updateMany({ where: { id: actor.companyId, version: expectedVersion(actor.request) }, data });
      if (count === 0) throw new DomainError('conflict.stale');
      await audit(tx, actor, 'company.updated', { id: actor.companyId }, { fields: Object.keys(change).sort().join(','), ...settingsTold({ limits, checklist }) });
      await emit(tx, actor, 'company', null, actor.companyId);
      return presentCompany(await this.row(tx, actor));
    });
  }

  private async changedSettings(tx: Tx, actor: Actor, { settings, limits, checklist }: Asked) {
    if (settings === undefined && limits === undefined && checklist === undefined) return {};
    const held = readSettings((await this.row(tx, actor)).settings);
    const { name } = found(await tx.member.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: actor.id } }, select: { name: true } }));
    const at = actor.request.at.toISOString();
    try {
      const set = {
        ...(limits === undefined ? {} : { limits: stampedLimits(limits, held.limits, name, at) }),
        ...(checklist === undefined ? {} : { checklist: stampedChecklist(checklist, held.checklist, name, at) }),
      };
      return { settings: writeSettings({ ...held, ...settings, ...set }) };
    } catch (error) {
      throw error instanceof DocumentError ? refused(error) : error;
    }
  }

  /** Only the set-up of an installation and the demo make companies; the transaction already acts for the new one. */
  async create(tx: Tx, company: NewCompany): Promise<void> {
    await tx.company.create({ data: { ...company, settings: writeSettings(defaultSettings) } });
  }

  private async row(tx: Tx, actor: Actor) {
    return found(await tx.company.findUnique({ where: { id: actor.companyId } }));
  }
}

type Asked = Pick<BodyOf<typeof api.update>, 'settings' | 'limits' | 'checklist'>;

/** What was set, for the trail. */
function settingsTold({ limits, checklist }: Omit<Asked, 'settings'>): Record<string, string> {
  return {
    ...(limits === undefined ? {} : { limits: limits.map(({ limit, pass, fail }) => `${limit} ${String(pass)} ${String(fail)}`).join('; ') }),
    ...(checklist === undefined ? {} : { steps: [...checklist.changes.map(({ item, leftOut, photos, limits = null }) => `${item}${leftOut ? ' left out' : ''}${photos === null ? '' : ` ${String(photos)} photos`}${limits === null ? '' : ` limits ${String(limits)}`}`), ...checklist.own.map(({ id }) => id)].join('; ') }),
  };
}

/** exactOptional: what was not sent is not touched. */
function definedOf<T extends object>(fields: T): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;
}
