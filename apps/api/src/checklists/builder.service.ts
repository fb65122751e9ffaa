import { Injectable } from '@nestjs/common';
import { buildChecklist, type BuiltItem, templatesOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import type { Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { readSettings } from '../company/company.rules.ts';
import type { ChecklistItem } from '../generated/prisma/client.ts';
import { holdForMarks } from '../locates/tickets.ts';
import { buildRevisionOf } from './build.ts';
import { holdForFailed } from './failedHold.ts';
import { loadChecklist } from './live.ts';

/** Makes the items of a job from its build revision: what is proven under the same requirement stays proven, the rest opens again with the reason. */
@Injectable()
export class ChecklistBuilderService extends ChecklistBuilder {
  async rebuildFor(tx: Tx, actor: Actor, jobId: string): Promise<void> {
    const job = found(await tx.job.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: jobId } } }));
    const revision = await buildRevisionOf(tx, actor, job);
    const company = found(await tx.company.findUnique({ where: { id: actor.companyId }, select: { settings: true } }));
    const built = await buildChecklist(revision.document, templatesOf(readSettings(company.settings).checklist));
    const before = new Map((await tx.checklistItem.findMany({ where: { companyId: actor.companyId, jobId } })).map((row) => [row.key, row]));
    for (const item of built) await this.write(tx, actor, jobId, revision.id, item, before.get(item.key));
    const retired = await tx.checklistItem.updateMany({
      where: { companyId: actor.companyId, jobId, retiredAt: null, key: { notIn: built.map(({ key }) => key) } }, data: { retiredAt: actor.request.at, updatedAt: actor.request.at },
    });
    const reopened = await this.refold(tx, actor, jobId, before);
    await holdForMarks(tx, actor, job);
    await audit(tx, actor, 'checklist.built', { jobId, id: revision.id }, { items: built.length, reopened, retired: retired.count });
    await emit(tx, actor, 'checklist', jobId, revision.id);
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
