import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { StoredFact } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { Worker } from '../common/worker.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { circumstancesOf } from './circumstances.ts';
import { factOf, factParts, type FactRecord, presentFact } from './facts.presenter.ts';
import { FactsService } from './facts.service.ts';
import { judge } from './judge.rules.ts';
import { type LiveChecklist, loadChecklist } from './live.ts';

/** A fact may come before its photo: it waits on record, and is judged again when the photo is there. */
@Injectable()
export class RejudgeService implements OnModuleInit {
  private readonly worker: Worker;
  private readonly database: Database;
  private readonly facts: FactsService;

  constructor(worker: Worker, database: Database, facts: FactsService) {
    this.worker = worker;
    this.database = database;
    this.facts = facts;
  }

  onModuleInit(): void {
    this.worker.task('checklists.photoArrived', (actor, { jobId, photoId }) => this.photoArrived(actor, String(jobId), String(photoId)));
  }

  async photoArrived(actor: Actor, jobId: string, photoId: string): Promise<void> {
    await this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const waiting = await tx.fieldFact.findMany({
        where: { companyId: actor.companyId, jobId, kind: 'photo', reason: 'photoUnknown', payload: { path: ['photoId'], equals: photoId } }, include: factParts, orderBy: { seq: 'asc' },
      });
      if (waiting.length === 0) return;
      const live = await loadChecklist(tx, actor, jobId);
      for (const row of waiting) live.replace(await this.again(tx, actor, jobId, live, row));
      // What was held for want of this photo may count now.
      await this.facts.judgeAgain(tx, actor, live, new Set(waiting.map(({ id }) => id)));
      await this.facts.project(tx, actor, live, new Set(waiting.flatMap(({ itemKey }) => itemKey ?? [])));
      await emit(tx, actor, 'checklist', jobId);
    });
  }

  private async again(tx: Tx, actor: Actor, jobId: string, live: LiveChecklist, row: FactRecord): Promise<StoredFact> {
    const fact = factOf(row);
    const device = await tx.device.findUniqueOrThrow({ where: { companyId_id: { companyId: actor.companyId, id: fact.deviceId } } });
    const { verdict, reason } = judge(fact, await circumstancesOf(tx, actor, jobId, live, fact, { deviceCutOff: device.cutOffAt !== null, roles: [], clockBehind: row.clockBehind }));
    await tx.fieldFact.update({ where: { companyId_id: { companyId: actor.companyId, id: fact.id } }, data: { verdict, reason } });
    return { ...presentFact(row), verdict, reason };
  }
}
