import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type pg from 'pg';
import { ENV, type Env } from '../env.ts';
import { LOG, type Log } from './log.ts';
import { openPool } from './pool.ts';

/** The owner's few connections: queue, sealing of the trail, the link of an empty installation. No request runs on them. */
@Injectable()
export class Owner implements OnApplicationShutdown {
  readonly pool: pg.Pool;

  constructor(@Inject(ENV) env: Env, @Inject(LOG) log: Log) {
    this.pool = openPool({ connectionString: env.MIGRATE_DATABASE_URL, max: 5, application_name: 'yardfall-worker' }, log);
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool.end();
  }
}
