import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { Actor } from '../common/actor.ts';
import { Clock } from '../common/clock.ts';
import { Database } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { Owner } from '../common/owner.ts';
import { Worker } from '../common/worker.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { holdForMarks, renewLead } from './tickets.ts';

/** A ticket becomes legal or runs out by itself: every minute the holds of the jobs concerned are looked at again. */
@Injectable()
export class LocateClockService implements OnModuleInit {
  private readonly worker: Worker;
  private readonly owner: Owner;
  private readonly clock: Clock;
  private readonly database: Database;
  /** Up to here every clock has been looked at. */
  private seenUntil = new Date(0);

  constructor(worker: Worker, owner: Owner, clock: Clock, database: Database) {
    this.worker = worker;
    this.owner = owner;
    this.clock = clock;
    this.database = database;
  }

  onModuleInit(): void {
    this.worker.routine('locates.clock', '* * * * *', () => this.queueRechecks());
    this.worker.task('locates.recheck', (actor, { jobId }) => this.recheck(actor, String(jobId)));
  }

  async recheck(actor: Actor, jobId: string): Promise<void> {
    await this.database.write(actor, async (tx) => {
      await holdForMarks(tx, actor, await lockJob(tx, actor, jobId));
      await emit(tx, actor, 'locates', jobId, null);
    });
  }

  /** From the last look on, the first time from the beginning: what ran out while the service stood still is not missed. Looking twice does no harm. */
  async queueRechecks(): Promise<void> {
    const now = this.clock.now();
    await this.owner.pool.query(
      `SELECT graphile_worker.add_job('locates.recheck', json_build_object('companyId', t.company_id, 'jobId', t.job_id), job_key := 'locates.recheck:' || t.job_id)
       FROM (SELECT DISTINCT company_id, job_id FROM locate_ticket
             WHERE status = 'open' AND (legal_start_at BETWEEN $1 AND $2 OR expires_at BETWEEN $1 AND $2 OR renew_by_at - $3 * interval '1 millisecond' BETWEEN $1 AND $2)) t`,
      [this.seenUntil, now, renewLead],
    );
    this.seenUntil = now;
  }
}
