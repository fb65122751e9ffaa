import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appUrlOf, ensureAppRole } from '../../tools/database-roles.mjs';
import { createTestDatabase, type TestDatabase } from '../support/database.ts';

let database: TestDatabase;

beforeAll(async () => {
  database = await createTestDatabase();
});

afterAll(() => database.drop());

async function ask(url: string, sql: string): Promise<unknown> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows[0];
  } finally {
    await client.end();
  }
}

describe('the role that the API runs under', () => {
  it('owns nothing and cannot pass row security', async () => {
    const role = await ask(database.appUrl, 'SELECT rolname, rolsuper, rolbypassrls, rolcreaterole, rolcreatedb FROM pg_roles WHERE rolname = current_user');
    expect(role).toEqual({ rolname: 'yardfall_app', rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false });
    expect(await ask(database.ownerUrl, "SELECT count(*)::int AS owned FROM pg_class WHERE relowner = 'yardfall_app'::regrole")).toEqual({ owned: 0 });
  });

  it('has a password that every instance derives alike and that is not the owner’s', async () => {
    expect(await ensureAppRole(database.ownerUrl)).toBe(database.appUrl);
    expect(new URL(appUrlOf('postgresql://boss:pear@db:5432/yard')).password).not.toBe(new URL(appUrlOf('postgresql://boss:plum@db:5432/yard')).password);
  });

  it('refuses an owner without a password, from which none could be derived', () => {
    expect(() => appUrlOf('postgresql://boss@db:5432/yard')).toThrow('has no password');
  });
});
