import { makeWorkerUtils, type Logger } from 'graphile-worker';
import type pg from 'pg';

/** First half of the advisory locks by which workers show that they are alive (ours). */
const lockClass = 7_102_115;
/** A worker shows itself before it has taken anything for this long. */
const grace = '5 seconds';

/**
 * Frees what a worker held when its process died; the queue itself would wait four hours for it. Each living worker holds an advisory lock of its
 * name in a session that ends with its process, so that no clock decides who is dead, and several instances can share the queue.
 * Freed by the queue's own `forceUnlockWorkers`. A worker that lost its session and lives may be taken for dead: tasks may run twice and do not mind.
 */
export class DeadWorkers {
  private readonly pool: pg.Pool;
  private readonly logger: Logger;
  private readonly names: string[] = [];
  private session: pg.PoolClient | null = null;
  private turn: Promise<void> = Promise.resolve();

  constructor(pool: pg.Pool, logger: Logger) {
    this.pool = pool;
    this.logger = logger;
  }

  /** This process has a worker of this name from now on. */
  show(name: string): Promise<void> {
    this.names.push(name);
    return this.next(() => this.hold([name]));
  }

  /** @returns the names of the workers whose work was given free */
  async free(): Promise<readonly string[]> {
    await this.next(() => (this.session === null && this.names.length > 0 ? this.hold(this.names) : Promise.resolve()));
    const { rows } = await this.pool.query<{ name: string }>(
      `WITH held AS MATERIALIZED (SELECT DISTINCT locked_by AS name FROM graphile_worker.jobs WHERE locked_by IS NOT NULL AND locked_at < now() - $2::interval)
       SELECT name FROM held WHERE pg_try_advisory_xact_lock($1, hashtext(name))`, [lockClass, grace],
    );
    const dead = rows.map(({ name }) => name);
    if (dead.length === 0) return dead;
    const queue = await makeWorkerUtils({ pgPool: this.pool, logger: this.logger });
    try {
      await queue.forceUnlockWorkers(dead);
    } finally {
      await queue.release();
    }
    return dead;
  }

  /** The workers of this process have ended. */
  async end(): Promise<void> {
    await this.turn.catch(() => undefined);
    this.session?.release(true);
    this.session = null;
  }

  private async hold(names: readonly string[]): Promise<void> {
    const session = this.session ?? (await this.open());
    await session.query('SELECT pg_advisory_lock($1, hashtext(name)) FROM unnest($2::text[]) AS name', [lockClass, names]);
  }

  private async open(): Promise<pg.PoolClient> {
    const session = await this.pool.connect();
    session.once('error', () => {
      if (this.session === session) this.session = null;
      session.release(true);
    });
    this.session = session;
    return session;
  }

  /** One after the other, and a failure of one does not stop the next. */
  private next(work: () => Promise<void>): Promise<void> {
    this.turn = this.turn.catch(() => undefined).then(work);
    return this.turn;
  }
}
