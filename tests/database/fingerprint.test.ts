import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/database.ts';
import { fillEveryTable, fingerprint, tenantTables } from '../support/rows.ts';

/** The tests that say "and changes nothing" rest on it. */
describe('the fingerprint of a database', () => {
  let database: TestDatabase;
  let owner: pg.Pool;
  const companyId = randomUUID();
  beforeAll(async () => {
    database = await createTestDatabase();
    owner = new pg.Pool({ connectionString: database.ownerUrl, max: 2 });
    await fillEveryTable(owner, companyId, randomUUID());
  });
  afterAll(async () => {
    await owner.end();
    await database.drop();
  });

  /** Keys and triggers are off, so that every table can be written alone. */
  async function changes(sql: string): Promise<boolean> {
    const before = await fingerprint(owner);
    await owner.query(`BEGIN; SET LOCAL session_replication_role = replica; ${sql}; COMMIT`);
    return (await fingerprint(owner)) !== before;
  }

  it('stays as it is while nobody writes, whatever is read, locked, undone or cleaned up', async () => {
    expect(await changes('SELECT * FROM company FOR UPDATE')).toBe(false);
    expect(await changes(`SAVEPOINT here; UPDATE company SET name = 'Other'; INSERT INTO company SELECT * FROM company WHERE false; ROLLBACK TO here`)).toBe(false);
    const before = await fingerprint(owner);
    await owner.query('VACUUM (FREEZE, ANALYZE)');
    expect(await fingerprint(owner)).toBe(before);
  });

  it('moves when a row of any table is written with what it held, is taken away or is added', async () => {
    const tables = [...(await tenantTables(owner)).keys()].filter((name) => name !== 'rate_limit');
    expect(tables.length).toBeGreaterThan(20);
    const blind: string[] = [];
    for (const table of tables) {
      if (!(await changes(`UPDATE "${table}" SET company_id = company_id`))) blind.push(`${table}: update`);
      if (!(await changes(`CREATE TEMP TABLE kept ON COMMIT DROP AS SELECT * FROM "${table}"; DELETE FROM "${table}"; INSERT INTO "${table}" SELECT * FROM kept`))) blind.push(`${table}: written anew`);
      if (!(await changes(`DELETE FROM "${table}"`))) blind.push(`${table}: delete`);
    }
    expect(blind).toEqual([]);
    expect(await changes(`INSERT INTO company (id, name, time_zone, state, settings) VALUES ('${randomUUID()}', 'New', 'America/New_York', 'NC', convert_to('{}', 'UTF8'))`)).toBe(true);
  });
});
