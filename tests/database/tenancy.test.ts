import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/database.ts';
import { fillEveryTable, tenantTables } from '../support/rows.ts';

interface Asking {
  readonly company?: string;
  readonly roles?: string;
  readonly member?: string;
  readonly job?: string;
}

const officeTables = ['offer_sheet', 'price_item', 'price_line', 'price_sheet', 'study'];
const teamTables = ['daywork_entry', 'member', 'device', 'assignment', 'draft_operation', 'draft_presence', 'gas_rule', 'library_entry', 'locate_rule', 'rain_record', 'survey_fact'];

describe('raw SQL as the app role', () => {
  const [ours, theirs, id] = [randomUUID(), randomUUID(), randomUUID()];
  let database: TestDatabase;
  let owner: pg.Pool;
  let app: pg.Pool;
  let tables: readonly string[];

  beforeAll(async () => {
    database = await createTestDatabase();
    owner = new pg.Pool({ connectionString: database.ownerUrl, max: 2 });
    app = new pg.Pool({ connectionString: database.appUrl, max: 2 });
    await fillEveryTable(owner, ours, id, { job: { build_revision_id: null } });
    tables = [...(await tenantTables(owner)).keys()];
  });
  afterAll(async () => {
    await app.end();
    await owner.end();
    await database.drop();
  });

  /** Runs one statement and takes it back; the SQLSTATE when it is refused. */
  async function attempt(asking: Asking, sql: string, values: unknown[] = []): Promise<{ rows: number } | { refused: string }> {
    const client = await app.connect();
    try {
      await client.query('BEGIN');
      await client.query(`SELECT set_config('app.company_id', $1, true), set_config('app.roles', $2, true), set_config('app.member_id', $3, true), set_config('app.job_id', $4, true)`, [
        asking.company ?? '', asking.roles ?? '', asking.member ?? '', asking.job ?? '']);
      const { rowCount } = await client.query(sql, values);
      return { rows: rowCount ?? 0 };
    } catch (error) {
      return { refused: (error as pg.DatabaseError).code ?? '' };
    } finally {
      await client.query('ROLLBACK');
      client.release();
    }
  }

  const seen = async (asking: Asking): Promise<string[]> => {
    const visible: string[] = [];
    for (const table of tables) {
      const result = await attempt(asking, `SELECT 1 FROM "${table}"`);
      expect(result, table).toHaveProperty('rows');
      if ('rows' in result && result.rows > 0) visible.push(table);
    }
    return visible;
  };

  it('covers every table', () => {
    expect(tables.length).toBeGreaterThan(30);
  });

  it('sees the rows of its own company, which proves that there are some', async () => {
    expect(await seen({ company: ours, roles: 'owner', member: id })).toEqual(tables);
    expect(await attempt({ company: ours }, 'SELECT 1 FROM company')).toEqual({ rows: 1 });
  });

  it('sees nothing of another company, or without one', async () => {
    expect(await seen({ company: theirs, roles: 'owner', member: id })).toEqual([]);
    expect(await seen({ company: theirs, roles: 'system', member: id })).toEqual([]);
    expect(await seen({ roles: 'owner', member: id })).toEqual([]);
    expect(await attempt({ company: theirs }, 'SELECT 1 FROM company')).toEqual({ rows: 0 });
  });

  it('changes and deletes nothing of another company', async () => {
    for (const table of tables) {
      for (const sql of [`UPDATE "${table}" SET company_id = company_id`, `DELETE FROM "${table}"`]) {
        expect([{ rows: 0 }, { refused: '42501' }], `${sql}`).toContainEqual(await attempt({ company: theirs, roles: 'owner', member: id }, sql));
      }
    }
  });

  it('cannot write a row into another company', async () => {
    for (const table of tables) {
      const { rows } = await owner.query<{ row: object }>(`SELECT to_jsonb(t) || jsonb_build_object('id', $1::text) AS row FROM "${table}" t`, [randomUUID()]);
      const result = await attempt({ company: theirs, roles: 'owner', member: id }, `INSERT INTO "${table}" SELECT * FROM jsonb_populate_record(NULL::"${table}", $1::jsonb)`, [JSON.stringify(rows[0]?.row)]);
      expect(result, table).toEqual({ refused: '42501' });
    }
    expect(await attempt({ company: theirs }, `INSERT INTO company (id, name, time_zone, state, settings) VALUES ('${randomUUID()}', 'x', 'UTC', 'NC', '\\x00')`)).toEqual({ refused: '42501' });
  });

  it('shows cost, rate and margin to the office only', async () => {
    const crew = await seen({ company: ours, roles: 'crew', member: id });
    expect(tables.filter((table) => !crew.includes(table))).toEqual(officeTables);
    expect(await seen({ company: ours, roles: 'crew,estimator', member: id })).toEqual(tables);
  });

  it('shows a customer the own job and nothing else', async () => {
    const own = await seen({ company: ours, roles: 'customer', member: id, job: id });
    expect(tables.filter((table) => !own.includes(table)).sort()).toEqual([...officeTables, ...teamTables].sort());
    expect(await seen({ company: ours, roles: 'customer', member: randomUUID(), job: randomUUID() })).toEqual([]);
    expect(await seen({ company: ours, roles: 'customer', member: randomUUID() })).toEqual([]);
  });

  it('cannot truncate, nor read what only the owner reads', async () => {
    for (const table of tables) expect(await attempt({ company: ours, roles: 'owner' }, `TRUNCATE "${table}" CASCADE`), table).toEqual({ refused: '42501' });
    expect(await attempt({ company: ours }, 'SELECT 1 FROM setup_link')).toEqual({ refused: '42501' });
    expect(await attempt({ company: ours }, 'SELECT 1 FROM _prisma_migrations')).toEqual({ refused: '42501' });
  });

  it('queues work for its own company only', async () => {
    const job = (companyId: string) => attempt({ company: ours, roles: 'owner' }, `SELECT enqueue('x', json_build_object('companyId', '${companyId}'::text))`);
    expect(await job(theirs)).toEqual({ refused: '42501' });
    expect(await job(ours)).toEqual({ refused: '3F000' }); // let through to the queue, whose schema this database has not got
  });
});
