import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/database.ts';
import { fillEveryTable, type Overrides } from '../support/rows.ts';

const at = '2026-01-02T00:00:00Z';

/** As the owner: what a trigger refuses, nobody does. */
describe('records stay as they were written', () => {
  let database: TestDatabase;
  let owner: pg.Pool;
  beforeAll(async () => {
    database = await createTestDatabase();
    owner = new pg.Pool({ connectionString: database.ownerUrl, max: 2 });
  });
  afterAll(async () => {
    await owner.end();
    await database.drop();
  });

  async function company(overrides: Overrides = {}): Promise<{ id: string; run: (sql: string) => Promise<string> }> {
    const [companyId, id] = [randomUUID(), randomUUID()];
    await fillEveryTable(owner, companyId, id, overrides);
    const run = async (sql: string): Promise<string> => {
      try {
        const { rowCount } = await owner.query(sql.replace('$here', `company_id = '${companyId}'`));
        return `${rowCount} row`;
      } catch (error) {
        return (error as pg.DatabaseError).code ?? String(error);
      }
    };
    return { id, run };
  }

  const issued: Overrides = { revision: { status: 'issued', issued_at: at, evaluation: '\\x00' } };

  it('a draft revision may change, an issued one may only be superseded, once', async () => {
    const draft = await company();
    expect(await draft.run(`UPDATE revision SET document = '\\x01' WHERE $here`)).toBe('1 row');
    expect(await draft.run(`UPDATE revision SET status = 'issued', issued_at = NULL WHERE $here`)).toBe('23514');
    expect(await draft.run(`UPDATE revision SET status = 'issued', issued_at = now() WHERE $here`)).toBe('1 row');
    const { run } = await company(issued);
    for (const change of [`document = '\\x01'`, `evaluation = '\\x01'`, `number = 9`, `acknowledgements = '[1]'`, `status = 'draft'`, `status = 'superseded', version = version + 1`]) {
      expect(await run(`UPDATE revision SET ${change} WHERE $here`), change).toBe('YF001');
    }
    expect(await run('DELETE FROM revision WHERE $here')).toBe('YF001');
    expect(await run(`UPDATE revision SET status = 'superseded' WHERE $here`)).toBe('1 row');
    expect(await run(`UPDATE revision SET status = 'issued' WHERE $here`)).toBe('YF001');
  });

  it('facts, operations, proofs, handovers and stages are only added', async () => {
    const { run } = await company();
    for (const [table, change] of [
      ['field_fact', `payload = '{"a":1}'`], ['field_fact', 'seq = 2'], ['survey_fact', `body = '\\x01'`], ['survey_fact', 'seq = 2'], ['daywork_entry', `payload = '\\x01'`], ['draft_operation', 'seq = 2'], ['proof_test', `verdict = 'y'`], ['handover', `customer_name = 'y'`], ['job_stage', `stage = 'y'`], ['job_answer', `state = 'y'`], ['locate_event', `kind = 'y'`], ['locate_given', `note = 'y'`], ['gas_rule', `rule = 'y'`], ['found_addition', `note = 'y'`], ['photo_addition', `note = 'y'`], ['locate_rule', `signed_name = 'y'`],
    ]) {
      expect(await run(`UPDATE ${table} SET ${change} WHERE $here`), `${table} ${change}`).toBe('YF001');
      expect(await run(`DELETE FROM ${table} WHERE $here`), `${table} delete`).toBe('YF001');
    }
    expect(await run(`UPDATE survey_fact SET verdict = 'late', reason = 'after the fact' WHERE $here`)).toBe('1 row');
    expect(await run(`UPDATE field_fact SET verdict = 'late', reason = 'after the fact' WHERE $here`)).toBe('1 row');
  });

  it('a trail entry is sealed once and otherwise untouched', async () => {
    const { run } = await company();
    expect(await run(`UPDATE audit_entry SET params = '{"a":1}' WHERE $here`)).toBe('YF001');
    expect(await run(`UPDATE audit_entry SET seal_no = 1, seal_hash = '\\x01', action = 'y' WHERE $here`)).toBe('YF001');
    expect(await run(`UPDATE audit_entry SET seal_no = 1, seal_hash = '\\x01' WHERE $here`)).toBe('1 row');
    expect(await run(`UPDATE audit_entry SET seal_no = 2, seal_hash = '\\x02' WHERE $here`)).toBe('YF001');
    expect(await run('DELETE FROM audit_entry WHERE $here')).toBe('YF001');
  });

  it('a frozen price sheet and its lines stay', async () => {
    const open = await company();
    expect(await open.run('UPDATE price_line SET cost = 2 WHERE $here')).toBe('1 row');
    expect(await open.run('UPDATE price_sheet SET labour_rate = 2, frozen_at = now() WHERE $here')).toBe('1 row');
    expect(await open.run('UPDATE price_sheet SET labour_rate = 3 WHERE $here')).toBe('YF001');
    expect(await open.run('UPDATE price_line SET cost = 3 WHERE $here')).toBe('YF001');
    expect(await open.run('DELETE FROM price_line WHERE $here')).toBe('YF001');
    const line = `INSERT INTO price_line SELECT gen_random_uuid(), company_id, sheet_id, position + 1, code, name, kind, unit, quantity, unit_cost, cost, taxable, origin, reason FROM price_line WHERE $here`;
    expect(await open.run(line)).toBe('YF001');
    expect(await (await company()).run(line)).toBe('1 row');
  });

  it('a sent offer may be answered or withdrawn, an accepted one stays', async () => {
    const draft = await company();
    expect(await draft.run('UPDATE offer SET price = 2 WHERE $here')).toBe('1 row');
    const sent = await company({ offer: { status: 'sent', sent_at: at } });
    expect(await sent.run('UPDATE offer SET price = 2 WHERE $here')).toBe('YF001');
    expect(await sent.run(`UPDATE offer SET status = 'accepted', accepted_at = now(), accepted_name = 'y', accepted_sha256 = sha256 WHERE $here`)).toBe('1 row');
    expect(await sent.run(`UPDATE offer SET status = 'withdrawn', withdrawn_at = now() WHERE $here`)).toBe('YF001');
    expect(await sent.run('DELETE FROM offer WHERE $here')).toBe('YF001');
  });

  it('only an issued revision of the same job is built', async () => {
    const draft = await company({ job: { build_revision_id: null } });
    expect(await draft.run(`UPDATE job SET build_revision_id = id WHERE $here`)).toBe('YF001');
    const right = await company(issued);
    expect(await right.run(`UPDATE job SET build_revision_id = id WHERE $here`)).toBe('1 row');
    const other = await company({ revision: { ...issued['revision'], job_id: randomUUID() } });
    expect(await other.run(`UPDATE job SET build_revision_id = id WHERE $here`)).toBe('YF001');
  });

  it('an event carries the number of its transaction', async () => {
    const { run } = await company();
    expect(await run(`INSERT INTO event SELECT gen_random_uuid(), company_id, 0, job_id, topic, subject_id, at FROM event WHERE $here`)).toBe('1 row');
    const { rows } = await owner.query<{ same: boolean }>('SELECT xid = xmin::text::bigint AS same FROM event WHERE xid > 1'); // no epoch has passed in a fresh server
    expect(rows).toEqual([{ same: true }]);
  });
});
