import { Injectable } from '@nestjs/common';
import type { Checklist, ChecklistItem, FieldFact, Held } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import type { Job } from '../generated/prisma/client.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { buildRevisionOf } from './build.ts';
import { isStoppedAt } from './circumstances.ts';
import { partNames, presentChecklist, presentItem } from './checklists.presenter.ts';
import { deskFact } from './desk.ts';
import { FactsService } from './facts.service.ts';
import { type LiveChecklist, type LiveItem, loadChecklist } from './live.ts';

@Injectable()
export class ChecklistsService {
  private readonly database: Database;
  private readonly facts: FactsService;

  constructor(database: Database, facts: FactsService) {
    this.database = database;
    this.facts = facts;
  }

  read(actor: Actor, jobId: string): Promise<Checklist> {
    return this.database.read(actor, async (tx) => {
      const job = await requireJob(tx, actor, jobId);
      return this.describe(tx, actor, job, await loadChecklist(tx, actor, jobId));
    });
  }

  /** The crew's "start": no role passes a hold point, nor what was found and is not answered. */
  begin(actor: Actor, jobId: string, key: string): Promise<ChecklistItem> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const revision = await buildRevisionOf(tx, actor, job);
      const live = await loadChecklist(tx, actor, jobId);
      const item = found(live.items.get(key));
      const moment = live.moment(actor.request.at);
      refuseHeld(key, live.heldBy(key, moment));
      if (await isStoppedAt(tx, actor, jobId, { template: item.row.template, part: item.row.part, requirement: item.requirement }, actor.request.at)) throw new DomainError('checklist.stopped', { item: key });
      if (!live.hasBegun(key)) await this.fromDesk(tx, actor, job, live, item, { kind: 'begun' });
      return presentItem(live, item, live.states(), partNames(revision.document), moment);
    });
  }

  waive(actor: Actor, jobId: string, key: string, reason: string): Promise<Checklist> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const live = await loadChecklist(tx, actor, jobId);
      const item = found(live.items.get(key));
      if (item.row.holdPoint === null || item.requirement.daily !== undefined) throw new DomainError('conflict.state', { item: key });
      await this.fromDesk(tx, actor, job, live, item, { kind: 'waived', reason });
      await audit(tx, actor, 'checklist.waived', { jobId, id: item.row.id }, { item: key, holdPoint: item.row.holdPoint });
      return this.describe(tx, actor, job, live);
    });
  }

  /** For proof: refuses while hold points guard the item. */
  async requireOpen(tx: Tx, actor: Actor, jobId: string, key: string): Promise<void> {
    const live = await loadChecklist(tx, actor, jobId);
    if (live.items.has(key)) refuseHeld(key, live.heldBy(key, live.moment(actor.request.at)));
  }

  /** For proof: the test on record is the document that the item asks for. */
  async attach(tx: Tx, actor: Actor, job: Job, key: string, reference: string): Promise<void> {
    const live = await loadChecklist(tx, actor, job.id);
    const item = live.items.get(key);
    if (item !== undefined) await this.fromDesk(tx, actor, job, live, item, { kind: 'document', reference, validOn: null });
  }

  private async fromDesk(tx: Tx, actor: Actor, job: Job, live: LiveChecklist, item: LiveItem, body: Parameters<typeof deskFact>[4]): Promise<void> {
    const fact: FieldFact = await deskFact(tx, actor, live, item, body);
    await this.facts.store(tx, actor, job, live, [fact], { memberId: actor.id, roles: actor.roles, deviceCutOff: false, clockBehind: 0 });
  }

  private async describe(tx: Tx, actor: Actor, job: Job, live: LiveChecklist): Promise<Checklist> {
    const { id: revisionId, document } = await buildRevisionOf(tx, actor, job);
    return presentChecklist(live, { jobId: job.id, revisionId, document }, live.moment(actor.request.at));
  }
}

function refuseHeld(key: string, held: readonly Held[]): void {
  const [first] = held;
  if (first === undefined) return;
  const issues = held.map(({ holdPoint, items }) => ({ path: holdPoint, message: items.join(', ') }));
  throw new DomainError('checklist.held', { item: key, holdPoint: first.holdPoint, missing: first.items.join(',') }, issues);
}
