import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Server } from 'node:http';
import type { NestExpressApplication } from '@nestjs/platform-express';
import pg from 'pg';
import { createApp } from '../../apps/api/src/app.ts';
import { Clock } from '../../apps/api/src/common/clock.ts';
import { createLog } from '../../apps/api/src/common/log.ts';
import { type Env, readEnv } from '../../apps/api/src/env.ts';
import { createTestDatabase } from './database.ts';

/** Stands still until it is moved. */
export class TestClock extends Clock {
  private at: Date;

  constructor(at: string) {
    super();
    this.at = new Date(at);
  }

  override now(): Date {
    return new Date(this.at);
  }

  forward(seconds: number): void {
    this.at = new Date(this.at.getTime() + seconds * 1000);
  }

  set(at: string): void {
    this.at = new Date(at);
  }
}

export interface TestApp {
  readonly app: NestExpressApplication;
  readonly server: Server;
  readonly clock: TestClock;
  readonly env: Env;
  /** As the owner of the tables: for looking, and for the few rows that no endpoint makes. */
  readonly owner: pg.Pool;
  close(): Promise<void>;
}

/** The whole service on a fresh database; only the clock is ours. */
export async function startApp(at = '2026-03-02T15:00:00Z', settings: Record<string, string> = {}): Promise<TestApp> {
  const database = await createTestDatabase();
  const folder = mkdtempSync(path.join(tmpdir(), 'yardfall-test-'));
  const env = readEnv({ DATABASE_URL: database.appUrl, MIGRATE_DATABASE_URL: database.ownerUrl, DATA_DIR: folder, LOG_LEVEL: process.env['TEST_LOG'] ?? 'silent', EVALUATE_LIMIT: '60000', ...settings });
  const clock = new TestClock(at);
  const app = await createApp({ env, log: createLog(env.LOG_LEVEL), clock });
  await app.listen(0, '127.0.0.1');
  const owner = new pg.Pool({ connectionString: database.ownerUrl, max: 2 });
  return {
    app, clock, env, owner, server: app.getHttpServer() as Server,
    async close() {
      await app.close();
      await owner.end();
      await database.drop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
