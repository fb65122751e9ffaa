import { Injectable } from '@nestjs/common';
import { type BodyOf, type BuiltInLocateRule, type LocateRule, type locateRuleSets as api, locateRules, type ResponseOf, ruleProblem, type SignedLocateRule, unconfirmed } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { allRules, contentOf, type SignedRule, signedRules, storedRule } from './rules.ts';
import { givenTimes, lastGiven } from './given.ts';
import { clockOf } from './ticketClock.ts';
import { holdForMarks } from './tickets.ts';

/** What the clocks are counted by. For a state without a rule nobody may dig until the owner has read, entered and signed one. */
@Injectable()
export class RuleSetsService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor): Promise<ResponseOf<typeof api.list>> {
    return this.database.read(actor, async (tx) => {
      const signed = await signedRules(tx, actor);
      return {
        builtIn: locateRules.map(presentBuiltIn),
        unconfirmed: Object.entries(unconfirmed).map(([state, why]) => ({ state, why })),
        entered: signed.map((row) => presentRule(row, signed)).reverse(),
      };
    });
  }

  sign(actor: Actor, { rule, signedName }: BodyOf<typeof api.sign>): Promise<SignedLocateRule> {
    return this.database.write(actor, async (tx) => {
      const { companyId, request: { at } } = actor;
      const { name } = found(await tx.member.findUnique({ where: { companyId_id: { companyId, id: actor.id } }, select: { name: true } }));
      refuse(signedName.toLowerCase() === name.toLowerCase() ? null : { path: 'body.signedName', message: 'is not the name of who is signed in' });
      const problem = ruleProblem(rule);
      refuse(problem === null ? null : { path: 'body.rule', message: problem });
      refuse(rule.readOn <= at.toISOString().slice(0, 10) ? null : { path: 'body.rule.readOn', message: 'lies in the future' });
      const id = newId();
      const stored = storedRule(rule);
      await tx.locateRule.create({ data: { id, companyId, state: rule.state, ...stored, signedName, signedById: actor.id, signedAt: at } });
      const tickets = await this.count(tx, actor, rule.state);
      await audit(tx, actor, 'locate.ruleSigned', { jobId: null, id }, { state: rule.state, name: signedName, sha256: stored.sha256, tickets });
      const signed = await signedRules(tx, actor);
      return presentRule(found(signed.find((row) => row.id === id) ?? null), signed);
    });
  }

  /** Open tickets of the state that had no clock get theirs; one that was counted keeps its rule. */
  private async count(tx: Tx, actor: Actor, state: string): Promise<number> {
    const { companyId } = actor;
    const rules = allRules(await signedRules(tx, actor));
    const waiting = await tx.locateTicket.findMany({ where: { companyId, state, status: 'open', ruleVersion: null }, include: { ...lastGiven, job: { select: { property: { select: { timeZone: true } } } } }, orderBy: { jobId: 'asc' } });
    for (const { id, jobId, requestedAt, job, locateGivens_ticket } of waiting) {
      const locked = await lockJob(tx, actor, jobId);
      const clock = clockOf(rules, state, { requestedAt: requestedAt?.toISOString() ?? '', timeZone: job.property.timeZone, given: givenTimes(locateGivens_ticket) });
      await tx.locateTicket.update({ where: { companyId_id: { companyId, id } }, data: { ...clock, version: { increment: 1 } } });
      await holdForMarks(tx, actor, locked);
      await emit(tx, actor, 'locates', jobId, id);
    }
    return waiting.length;
  }
}

function presentBuiltIn({ holidays, ...rule }: LocateRule): BuiltInLocateRule {
  return { ...rule, holidays: { source: holidays.source, until: holidays.until, days: holidays.holidays.map(({ name, sure }) => ({ name, sure })) } };
}

function presentRule(row: SignedRule, all: readonly SignedRule[]): SignedLocateRule {
  const newest = all.findLast(({ state }) => state === row.state);
  return { id: row.id, rule: contentOf(row), signedName: row.signedName, by: row.signedBy.name, at: row.signedAt.toISOString(), inForce: newest?.id === row.id };
}

function refuse(issue: { readonly path: string; readonly message: string } | null): void {
  if (issue !== null) throw new DomainError('request.invalid', {}, [issue]);
}
