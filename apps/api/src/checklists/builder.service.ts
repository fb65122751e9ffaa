import { Injectable } from '@nestjs/common';
import type { DesignDocument } from '@yardfall/calc';
import { buildChecklist, type BuiltItem, groundLines, itemTemplate, itemTemplates, type PrivateAnswer, privateQuestions, privateStates, rulesOf, rulesVersion, templatesOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import type { Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { readSettings } from '../company/company.rules.ts';
import type { ChecklistItem } from '../generated/prisma/client.ts';
import { latestAnswers } from '../jobs/answers.ts';
import { forVerdict } from '../locates/locates.presenter.ts';
import { holdForMarks, ticketsOf } from '../locates/tickets.ts';
import { type BuildRevision, buildRevisionOf, revisionOf } from './build.ts';
import { FactsService } from './facts.service.ts';
import { holdForFailed } from './failedHold.ts';
import { type EarlierStep, inEarlierForm } from './forms.rules.ts';
import { loadChecklist, requirementOf } from './live.ts';
import { placeOf } from './place.ts';

/** Makes the items of a job from its build revision: what is proven under the same requirement stays proven, the rest opens again with the reason. */
@Injectable()
export class ChecklistBuilderService extends ChecklistBuilder {
  private readonly facts: FactsService;

  constructor(facts: FactsService) {
    super();
    this.facts = facts;
  }

  async rebuildFor(tx: Tx, actor: Actor, jobId: string): Promise<void> {
    const job = found(await tx.job.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: jobId } } }));
    const revision = await buildRevisionOf(tx, actor, job);
    const before = await this.rows(tx, actor, jobId);
    const built = await this.wanted(tx, actor, jobId, revision, before);
    for (const item of built) await this.write(tx, actor, jobId, revision.id, item, before.get(item.key));
    const retired = await this.retire(tx, actor, jobId, built.map(({ key }) => key));
    const reopened = await this.refold(tx, actor, jobId, before);
    await holdForMarks(tx, actor, job);
    await audit(tx, actor, 'checklist.built', { jobId, id: revision.id }, { items: built.length, reopened, retired });
    await emit(tx, actor, 'checklist', jobId, revision.id);
  }

  /** Only the steps at lines: the rest of the list is written when the job is released. */
  async linesChanged(tx: Tx, actor: Actor, jobId: string): Promise<void> {
    const job = found(await tx.job.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: jobId } } }));
    if (job.buildRevisionId === null) return;
    const revision = await buildRevisionOf(tx, actor, job);
    const before = new Map([...(await this.rows(tx, actor, jobId))].filter(([, { template }]) => isAtLines(template)));
    const wanted = (await this.wanted(tx, actor, jobId, revision, before)).filter(({ template, key }) => isAtLines(template) && key !== template);
    const known = new Set([...before.values()].filter(({ key, template, retiredAt }) => key !== template && retiredAt === null).map(({ key }) => key));
    if (wanted.length === known.size && wanted.every(({ key }) => known.has(key))) return;
    for (const item of wanted) if (!known.has(item.key)) await this.write(tx, actor, jobId, revision.id, { ...item, position: await this.placeOf(tx, actor, jobId, item) }, before.get(item.key));
    const gone = [...known].filter((key) => !wanted.some((item) => item.key === key));
    await tx.checklistItem.updateMany({ where: { companyId: actor.companyId, jobId, key: { in: gone } }, data: { retiredAt: actor.request.at, updatedAt: actor.request.at } });
    await this.facts.judgeAgain(tx, actor, await loadChecklist(tx, actor, jobId), new Set());
    await audit(tx, actor, 'checklist.lines', { jobId, id: revision.id }, { items: wanted.length, retired: gone.length });
    await emit(tx, actor, 'checklist', jobId, revision.id);
  }

  private async rows(tx: Tx, actor: Actor, jobId: string): Promise<ReadonlyMap<string, ChecklistItem>> {
    return new Map((await tx.checklistItem.findMany({ where: { companyId: actor.companyId, jobId } })).map((row) => [row.key, row]));
  }

  private async retire(tx: Tx, actor: Actor, jobId: string, keys: readonly string[]): Promise<number> {
    const { count } = await tx.checklistItem.updateMany({ where: { companyId: actor.companyId, jobId, retiredAt: null, key: { notIn: [...keys] } }, data: { retiredAt: actor.request.at, updatedAt: actor.request.at } });
    return count;
  }

  /** The steps by the rules of today; what was begun by earlier ones keeps its form. */
  private async wanted(tx: Tx, actor: Actor, jobId: string, revision: BuildRevision, rows: ReadonlyMap<string, ChecklistItem>): Promise<readonly BuiltItem[]> {
    const company = found(await tx.company.findUnique({ where: { id: actor.companyId }, select: { settings: true } }));
    const templates = templatesOf(readSettings(company.settings).checklist);
    const tickets = (await ticketsOf(tx, actor, jobId)).map(forVerdict);
    const declared = [...(await latestAnswers(tx, actor, jobId, 'privateLine')).values()].flatMap(({ kind, state }) => privateAnswer(kind, state));
    const place = await placeOf(tx, actor, jobId);
    const build = (document: DesignDocument) => buildChecklist(document, templates, groundLines(document, tickets, declared), place);
    const built = await build(revision.document);
    const before = [...rows.values()].filter(({ retiredAt }) => retiredAt === null).map(earlierStep);
    if (before.every(({ requirement }) => rulesOf(requirement) === rulesVersion)) return built;
    const { document } = await revisionOf(tx, actor, [...rows.values()].find(({ retiredAt }) => retiredAt === null)?.revisionId ?? revision.id);
    return inEarlierForm(built, before, new Map((await build(document)).map(({ key, requirementHash }) => [key, requirementHash])));
  }

  /** A new line stands with the steps that open the ground. */
  private async placeOf(tx: Tx, actor: Actor, jobId: string, { template }: BuiltItem): Promise<number> {
    const rows = await tx.checklistItem.findMany({ where: { companyId: actor.companyId, jobId, retiredAt: null }, select: { template: true, position: true } });
    const order = itemTemplates.map(({ id }) => id);
    return Math.max(0, ...rows.filter((row) => order.includes(row.template) && order.indexOf(row.template) <= order.indexOf(template)).map(({ position }) => position));
  }

  private async write(tx: Tx, actor: Actor, jobId: string, revisionId: string, item: BuiltItem, before: ChecklistItem | undefined): Promise<void> {
    const { key, template, part, holdPoint, guards, position, requirementBytes: requirement, requirementHash } = item;
    const askedSince = before?.requirementHash === requirementHash && before.retiredAt === null ? before.askedSince : actor.request.at;
    const columns = { askedSince, revisionId, template, part, holdPoint, guards: [...guards], position, requirement, requirementHash, retiredAt: null, updatedAt: actor.request.at };
    if (before === undefined) {
      await tx.checklistItem.create({ data: { id: newId(), companyId: actor.companyId, jobId, key, state: 'open', ...columns } });
    } else {
      await tx.checklistItem.update({ where: { companyId_id: { companyId: actor.companyId, id: before.id } }, data: columns });
    }
  }

  /** The states under the new requirements; an item that had come further than "open" says why it is open again. */
  private async refold(tx: Tx, actor: Actor, jobId: string, before: ReadonlyMap<string, ChecklistItem>): Promise<number> {
    const live = await loadChecklist(tx, actor, jobId);
    await holdForFailed(tx, actor, live, new Set(live.items.keys()));
    let reopened = 0;
    for (const item of live.items.values()) {
      const { state } = live.fold(item);
      const earlier = before.get(item.row.key);
      const again = earlier !== undefined && earlier.state !== 'open' && earlier.requirementHash !== item.row.requirementHash;
      if (again) reopened += 1;
      const reopenedReason = again ? 'reopened' : item.row.reopenedReason;
      if (state === item.row.state && reopenedReason === item.row.reopenedReason) continue;
      await tx.checklistItem.update({ where: { companyId_id: { companyId: actor.companyId, id: item.row.id } }, data: { state, reopenedReason } });
    }
    return reopened;
  }
}

function isAtLines(template: string): boolean {
  return !template.includes('.') && itemTemplate(template).per === 'line';
}

function privateAnswer(kind: string, state: string): PrivateAnswer[] {
  const [question, is] = [privateQuestions.find((one) => one === kind), privateStates.find((one) => one === state)];
  return question === undefined || is === undefined ? [] : [{ question, state: is }];
}

function earlierStep(row: ChecklistItem): EarlierStep {
  const { key, template, part, holdPoint, requirementHash } = row;
  return { key, template, part, holdPoint, begun: row.state !== 'open', requirement: requirementOf(row), requirementBytes: new Uint8Array(row.requirement), requirementHash };
}
