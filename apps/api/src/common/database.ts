import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { PrismaPg } from '@prisma/adapter-pg';
import type pg from 'pg';
import { ENV, type Env } from '../env.ts';
import { PrismaClient } from '../generated/prisma/client.ts';
import type { Prisma } from '../generated/prisma/client.ts';
import type { Actor } from './actor.ts';
import { claimKey, keepAnswer } from './idempotency.ts';
import { LOG, type Log } from './log.ts';
import { openPool } from './pool.ts';

/** A transaction that already carries the actor's company and roles. */
export type Tx = Prisma.TransactionClient;

const patience = { maxWait: 5_000, timeout: 15_000 };

/** The app role's connections. One use case is one transaction; what an actor may see is enforced by Postgres as well. */
@Injectable()
export class Database implements OnApplicationShutdown {
  readonly pool: pg.Pool;
  private readonly prisma: PrismaClient;

  constructor(@Inject(ENV) env: Env, @Inject(LOG) log: Log) {
    this.pool = openPool({ connectionString: env.DATABASE_URL, max: env.POOL_SIZE, application_name: 'yardfall-api' }, log);
    this.prisma = new PrismaClient({ adapter: new PrismaPg(this.pool, { disposeExternalPool: false }) });
  }

  /** A use case that only reads: Postgres refuses any write in it. */
  read<T>(actor: Actor, fn: (tx: Tx) => Promise<T>): Promise<T> {
    return this.transaction(actor, true, fn);
  }

  /**
   * A use case that writes, once per request. State, audit rows, events, queued work and the Idempotency-Key commit together.
   * What `fn` returns is the answer of the endpoint: the repeat of a key gets the same one without running `fn`.
   */
  write<T>(actor: Actor, fn: (tx: Tx) => Promise<T>): Promise<T> {
    const claim = actor.request.idempotency;
    if (claim === null) return this.transaction(actor, false, fn);
    if (claim.claimed) throw new Error('a request with an Idempotency-Key writes in one transaction only');
    claim.claimed = true;
    return this.transaction(actor, false, async (tx) => {
      const earlier = await claimKey(tx, actor, claim);
      if (earlier !== null) return earlier.body as T;
      const answer = await fn(tx);
      await keepAnswer(tx, actor, claim, answer);
      return answer;
    });
  }

  /** Plain SQL through pg for a hot list, under the same policies; read only. */
  async sql<T>(actor: Actor, fn: (client: pg.PoolClient) => Promise<T>): Promise<T> {
    const client = await this.pool.connect();
    try {
      await client.query('BEGIN READ ONLY');
      await client.query(`SELECT set_config('app.company_id', $1, true), set_config('app.roles', $2, true), set_config('app.member_id', $3, true), set_config('app.job_id', $4, true)`, identityOf(actor));
      const result = await fn(client);
      await client.query('COMMIT');
      client.release();
      return result;
    } catch (error) {
      client.release(true); // the connection is closed, and the transaction with it
      throw error;
    }
  }

  async onApplicationShutdown(): Promise<void> {
    await this.prisma.$disconnect();
    await this.pool.end();
  }

  private transaction<T>(actor: Actor, readOnly: boolean, fn: (tx: Tx) => Promise<T>): Promise<T> {
    const [company, roles, member, job] = identityOf(actor);
    return this.prisma.$transaction(async (tx) => {
      await tx.$executeRaw`SELECT set_config('app.company_id', ${company}, true), set_config('app.roles', ${roles}, true), set_config('app.member_id', ${member}, true),
        set_config('app.job_id', ${job}, true), set_config('lock_timeout', '4s', true), set_config('transaction_read_only', ${readOnly ? 'on' : 'off'}, true)`;
      return fn(tx);
    }, patience);
  }
}

/** To the row policies a sender is a customer: of the own job only. */
function identityOf(actor: Actor): [string, string, string, string] {
  const roles = actor.kind === 'system' ? 'system' : actor.kind === 'sender' ? 'customer' : actor.roles.join(',');
  return [actor.companyId, roles, actor.id, actor.jobId ?? ''];
}
