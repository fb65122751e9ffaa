import pg from 'pg';
import type { Log } from './log.ts';

/** A lost connection fails the query under way and is replaced by the pool; unheard, its error event would end the process. */
export function openPool(config: pg.PoolConfig, log: Log): pg.Pool {
  const pool = new pg.Pool({ connectionTimeoutMillis: 5_000, ...config });
  const note = (error: Error): void => log.warn({ err: error.message, pool: config.application_name }, 'a database connection was lost');
  pool.on('error', note);
  pool.on('connect', (client) => client.on('error', note));
  return pool;
}
