import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/database.ts';
import { tablesOf, tenantTables } from '../support/rows.ts';

/** Tables of the installation, not of a company. */
const shared = ['company', 'rate_limit', 'setup_link'];
const globallyUnique = ['member_email_key', 'session_token_hash_key', 'link_token_hash_key'];

describe('keys, policies and functions', () => {
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

  const list = async (sql: string): Promise<string[]> => (await owner.query<{ name: string }>(sql)).rows.map(({ name }) => name);

  it('every table is of a company, except the named ones', async () => {
    const tenant = await tenantTables(owner);
    expect([...(await tablesOf(owner)).keys()].filter((table) => !tenant.has(table))).toEqual(shared);
  });

  it('no foreign key between tables of a company ignores the company', async () => {
    const columns = (keys: string, relation: string): string => `ARRAY(SELECT a.attname::text FROM unnest(${keys}) WITH ORDINALITY k(n, i) JOIN pg_attribute a ON a.attrelid = ${relation} AND a.attnum = k.n ORDER BY k.i)`;
    const { rows } = await owner.query<{ name: string; target: string; here: string[]; there: string[] }>(
      `SELECT conname AS name, confrelid::regclass::text AS target, ${columns('conkey', 'conrelid')} AS here, ${columns('confkey', 'confrelid')} AS there FROM pg_constraint WHERE contype = 'f' AND connamespace = 'public'::regnamespace`);
    expect(rows.length).toBeGreaterThan(60);
    const wrong = rows.filter(({ target, here, there }) => {
      const at = here.indexOf('company_id');
      return at < 0 || there[at] !== (target === 'company' ? 'id' : 'company_id');
    });
    expect(wrong).toEqual([]);
  });

  it('no unique index ignores the company, except e-mail and token hashes', async () => {
    const without = await list(
      `SELECT i.relname AS name FROM pg_index x JOIN pg_class i ON i.oid = x.indexrelid JOIN pg_class t ON t.oid = x.indrelid JOIN pg_namespace n ON n.oid = t.relnamespace
       WHERE n.nspname = 'public' AND x.indisunique AND t.relname NOT IN ('_prisma_migrations', 'company', 'rate_limit', 'setup_link')
         AND NOT EXISTS (SELECT FROM pg_attribute a WHERE a.attrelid = t.oid AND a.attnum = ANY (x.indkey) AND a.attname = 'company_id') ORDER BY 1`);
    expect(without).toEqual([...globallyUnique].sort());
  });

  it('every table of a company has row security on and the policy of the company', async () => {
    const tenant = [...(await tenantTables(owner)).keys(), 'company'].sort();
    const guarded = await list(
      `SELECT c.relname AS name FROM pg_class c JOIN pg_policy p ON p.polrelid = c.oid AND p.polname = 'company_rows' AND p.polpermissive AND p.polcmd = '*' AND p.polwithcheck IS NOT NULL
       WHERE c.relrowsecurity AND NOT c.relforcerowsecurity ORDER BY 1`);
    expect(guarded.sort()).toEqual(tenant);
  });

  it('every function that runs as the owner has its search path pinned and is not open to everyone', async () => {
    const definers = await list(`SELECT proname AS name FROM pg_proc WHERE pronamespace = 'public'::regnamespace AND prosecdef ORDER BY 1`);
    expect(definers.length).toBeGreaterThan(5);
    expect(await list(`SELECT proname AS name FROM pg_proc WHERE pronamespace = 'public'::regnamespace AND prosecdef AND NOT coalesce(proconfig::text LIKE '%search_path=pg_catalog, public, pg_temp%', false)`)).toEqual([]);
    expect(await list(`SELECT proname AS name FROM pg_proc p WHERE pronamespace = 'public'::regnamespace AND prosecdef AND EXISTS (SELECT FROM aclexplode(coalesce(p.proacl, acldefault('f', p.proowner))) a WHERE a.grantee = 0 AND a.privilege_type = 'EXECUTE')`)).toEqual([]);
  });

  it('the app role owns nothing, is nobody special and deletes only what may go', async () => {
    const { rows } = await owner.query(`SELECT rolsuper, rolbypassrls, rolcreaterole, rolcreatedb FROM pg_roles WHERE rolname = 'yardfall_app'`);
    expect(rows).toEqual([{ rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false }]);
    expect(await list(`SELECT relname AS name FROM pg_class WHERE relowner = 'yardfall_app'::regrole`)).toEqual([]);
    const may = (privilege: string) => list(`SELECT relname AS name FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace AND has_table_privilege('yardfall_app', oid, '${privilege}') ORDER BY 1`);
    expect(await may('DELETE')).toEqual(['assignment', 'customer_key', 'price_line', 'rate_limit']);
    expect(await may('TRUNCATE')).toEqual([]);
  });
});
