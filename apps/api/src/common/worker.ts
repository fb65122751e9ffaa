import { EventEmitter } from 'node:events';
import { Inject, Injectable, type OnModuleDestroy } from '@nestjs/common';
import { Logger, parseCronItems, run, type Runner, runMigrations, runOnce, type TaskList, type WorkerEvents } from 'graphile-worker';
import { type Actor, systemActor } from './actor.ts';
import { Clock } from './clock.ts';
import { DeadWorkers } from './deadWorkers.ts';
import { describe, LOG, type Log } from './log.ts';
import { Owner } from './owner.ts';

export type Task = (actor: Actor, payload: Readonly<Record<string, unknown>>) => Promise<void>;
interface Routine {
  readonly name: string;
  readonly pattern: string;
}

/** Tasks side by side: a study may hold one for minutes, and what is short must not wait for it. */
const concurrency = 4;
/** How often the queue is looked through for what a dead process held [ms] (ours). */
const lookForDead = 15_000;

/** Runs queued work. The queue belongs to the owner; each task enters its company through the app role, as `systemActor`. */
@Injectable()
export class Worker implements OnModuleDestroy {
  private readonly tasks: TaskList = {};
  private readonly routines: Routine[] = [];
  private readonly owner: Owner;
  private readonly clock: Clock;
  private readonly log: Log;
  private readonly dead: DeadWorkers;
  private runner: Runner | null = null;
  private timer: NodeJS.Timeout | null = null;

  constructor(owner: Owner, clock: Clock, @Inject(LOG) log: Log) {
    this.owner = owner;
    this.clock = clock;
    this.log = log;
    this.dead = new DeadWorkers(owner.pool, this.logger());
  }

  /** In `onModuleInit` of the feature. A task may run twice: it must not mind. */
  task(name: string, work: Task): void {
    this.add(name, async (payload) => {
      const fields = typeof payload === 'object' && payload !== null ? (payload as Record<string, unknown>) : {};
      const { companyId } = fields;
      if (typeof companyId !== 'string') throw new Error(`${name} was queued without a company`);
      await work(systemActor(companyId, `task:${name}`, this.clock.now()), fields);
    });
  }

  /** Over all companies, as the owner, by a cron pattern in UTC. */
  routine(name: string, pattern: string, work: () => Promise<void>): void {
    this.add(name, work);
    this.routines.push({ name, pattern });
  }

  /** Brings the queue's own tables up to date; before the first request. */
  async install(): Promise<void> {
    await runMigrations({ pgPool: this.owner.pool, logger: this.logger() });
  }

  async start(): Promise<void> {
    const events: WorkerEvents = new EventEmitter();
    events.on('worker:create', ({ worker }) => void this.dead.show(worker.workerId).catch((error: unknown) => this.log.warn({ from: 'queue', err: describe(error) }, 'a worker could not show itself')));
    const cron = this.routines.map(({ name, pattern }) => ({ task: name, match: pattern }));
    await this.freeDead();
    this.runner = await run({
      events, pgPool: this.owner.pool, taskList: this.tasks, concurrency, noHandleSignals: true, pollInterval: 2_000, logger: this.logger(), parsedCronItems: parseCronItems(cron),
    });
    this.timer = setInterval(() => void this.freeDead().catch((error: unknown) => this.log.warn({ from: 'queue', err: describe(error) }, 'the queue could not be looked through')), lookForDead);
  }

  /** Everything that waits, once: for the tests and the seed. */
  async drain(): Promise<void> {
    await runOnce({ pgPool: this.owner.pool, taskList: this.tasks, noHandleSignals: true, logger: this.logger() });
  }

  /** What the workers of a dead process held may be taken by others again. */
  async freeDead(): Promise<readonly string[]> {
    const freed = await this.dead.free();
    if (freed.length > 0) this.log.warn({ from: 'queue', workers: freed }, 'work of a dead process begins anew');
    return freed;
  }

  async onModuleDestroy(): Promise<void> {
    if (this.timer !== null) clearInterval(this.timer);
    await this.runner?.stop();
    this.runner = null;
    await this.dead.end();
  }

  private add(name: string, work: TaskList[string]): void {
    if (this.tasks[name] !== undefined) throw new Error(`the task ${name} is registered twice`);
    this.tasks[name] = work;
  }

  private logger(): Logger {
    return new Logger(() => (level, message, meta) => {
      if (level === 'error' || level === 'warning') this.log.warn({ from: 'queue', err: describe(meta?.['error']) }, message);
      else this.log.debug({ from: 'queue' }, message);
    });
  }
}
