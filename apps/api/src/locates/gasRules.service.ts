import { Injectable } from '@nestjs/common';
import type { BodyOf, GasRule, gasRules as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import { dayOf } from '../jobs/propertyDay.ts';

/** A gas company's own rule for a line that was hit: sources differ on running engines, so the company's word stands beside the built-in one. */
@Injectable()
export class GasRulesService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor): Promise<{ items: GasRule[] }> {
    return this.database.read(actor, async (tx) => ({ items: await rulesOf(tx, actor) }));
  }

  enter(actor: Actor, { gasCompany, rule, source, readOn }: BodyOf<typeof api.enter>): Promise<GasRule> {
    return this.database.write(actor, async (tx) => {
      const { companyId, request: { at } } = actor;
      if (readOn > dayOf(at)) throw new DomainError('request.invalid', {}, [{ path: 'body.readOn', message: 'lies in the future' }]);
      const id = newId();
      await tx.gasRule.create({ data: { id, companyId, gasCompany, rule, source, readOn: new Date(`${readOn}T00:00:00Z`), enteredById: actor.id, at } });
      if (rule === '') await audit(tx, actor, 'gasRule.takenBack', { jobId: null, id }, { gasCompany });
      else await audit(tx, actor, 'gasRule.entered', { jobId: null, id }, { gasCompany });
      return found((await rulesOf(tx, actor)).find((one) => one.id === id) ?? null);
    });
  }
}

/** The newest first; the newest of each gas company is in force. */
async function rulesOf(tx: Tx, actor: Actor): Promise<GasRule[]> {
  const rows = await tx.gasRule.findMany({ where: { companyId: actor.companyId }, include: { enteredBy: { select: { name: true } } }, orderBy: [{ at: 'desc' }, { id: 'desc' }] });
  const newest = (name: string) => rows.find(({ gasCompany }) => gasCompany.toLowerCase() === name.toLowerCase());
  return rows.map(({ id, gasCompany, rule, source, readOn, at, enteredBy }) => ({
    id, gasCompany, rule, source, readOn: dayOf(readOn), by: enteredBy.name, at: at.toISOString(), inForce: rule !== '' && newest(gasCompany)?.id === id,
  }));
}
