import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { Actor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { Worker } from '../common/worker.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { circumstancesOf } from './circumstances.ts';
import { factOf, factParts, presentFact } from './facts.presenter.ts';
import { FactsService } from './facts.service.ts';
import { judge } from './judge.rules.ts';
import { loadChecklist } from './live.ts';

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
      const keys = new Set<string>();
      for (const row of waiting) keys.add(await this.again(tx, actor, jobId, row));
      if (keys.size === 0) return;
      await this.facts.project(tx, actor, await loadChecklist(tx, actor, jobId), keys);
      await emit(tx, actor, 'checklist', jobId);
    });
  }

  private async again(tx: Tx, actor: Actor, jobId: string, row: Parameters<typeof presentFact>[0]): Promise<string> {
    const fact = factOf(row);
    const live = await loadChecklist(tx, actor, jobId);
    const device = await tx.device.findUniqueOrThrow({ where: { companyId_id: { companyId: actor.companyId, id: fact.deviceId } } });
    const { verdict, reason } = judge(fact, await circumstancesOf(tx, actor, jobId, live, fact, { deviceCutOff: device.cutOffAt !== null, roles: [] }));
    await tx.fieldFact.update({ where: { companyId_id: { companyId: actor.companyId, id: fact.id } }, data: { verdict, reason } });
    return fact.itemKey;
  }
}
