import { Injectable, type OnModuleInit } from '@nestjs/common';
import { Clock } from './clock.ts';
import { Owner } from './owner.ts';
import { Worker } from './worker.ts';

const day = 86_400_000;
const keyDays = 400;
const noticeDays = 14;

/** What nobody needs any more, once a night. Records and the trail are never among it. */
@Injectable()
export class Housekeeping implements OnModuleInit {
  private readonly owner: Owner;
  private readonly worker: Worker;
  private readonly clock: Clock;

  constructor(owner: Owner, worker: Worker, clock: Clock) {
    this.owner = owner;
    this.worker = worker;
    this.clock = clock;
  }

  onModuleInit(): void {
    this.worker.routine('housekeeping', '17 8 * * *', () => this.run());
  }

  async run(): Promise<void> {
    const now = this.clock.now().getTime();
    await this.owner.pool.query('DELETE FROM idempotency_key WHERE created_at < $1', [new Date(now - keyDays * day)]);
    await this.owner.pool.query('DELETE FROM event WHERE at < $1', [new Date(now - noticeDays * day)]);
    await this.owner.pool.query('DELETE FROM draft_presence WHERE seen_at < $1', [new Date(now - day)]);
    await this.owner.pool.query('DELETE FROM rate_limit WHERE expire < $1', [now]);
  }
}
