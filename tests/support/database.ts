import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { appUrlOf } from '../../tools/database-roles.mjs';

export const templateName = 'yardfall_template';

export interface TestDatabase {
  /** As the role that the API runs under. */
  readonly appUrl: string;
  /** As the owner of the tables. */
  readonly ownerUrl: string;
  drop(): Promise<void>;
}

/** A fresh database with all tables and no rows, for one test file. */
export async function createTestDatabase(): Promise<TestDatabase> {
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  const template = inject('templateUrl');
  await asOwner(template, `CREATE DATABASE ${name} TEMPLATE ${templateName}`);
  const url = new URL(template);
  url.pathname = `/${name}`;
  return {
    ownerUrl: url.href,
    appUrl: appUrlOf(url.href),
    drop: () => asOwner(template, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`),
  };
}

/** From the maintenance database: a template that someone is connected to cannot be copied. */
async function asOwner(template: string, sql: string): Promise<void> {
  const url = new URL(template);
  url.pathname = '/postgres';
  const client = new pg.Client({ connectionString: url.href });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}
