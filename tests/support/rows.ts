import type pg from 'pg';

export interface Column {
  readonly name: string;
  readonly type: string;
}

/** Tables of the application with their columns; not Prisma's, not the queue's. */
export async function tablesOf(owner: pg.Pool): Promise<ReadonlyMap<string, readonly Column[]>> {
  const { rows } = await owner.query<{ table: string; name: string; type: string }>(
    `SELECT c.relname AS table, a.attname AS name, format_type(a.atttypid, NULL) AS type FROM pg_class c
     JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public' JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
     WHERE c.relkind IN ('r', 'p') AND c.relname <> '_prisma_migrations' ORDER BY c.relname, a.attnum`);
  const tables = new Map<string, Column[]>();
  for (const { table, name, type } of rows) tables.set(table, [...(tables.get(table) ?? []), { name, type }]);
  return tables;
}

export async function tenantTables(owner: pg.Pool): Promise<ReadonlyMap<string, readonly Column[]>> {
  return new Map([...(await tablesOf(owner))].filter(([, columns]) => columns.some(({ name }) => name === 'company_id')));
}

const samples: Readonly<Record<string, string>> = {
  uuid: '', text: 'x', citext: 'x@example.test', character: 'x', 'character varying': 'x', bytea: '\\x00', integer: '1', bigint: '1', numeric: '1', boolean: 'false', jsonb: '{}', date: '2026-01-01',
  'timestamp with time zone': '2026-01-01T00:00:00Z', 'text[]': '{}', 'uuid[]': '{}', 'double precision': '1',
};

export type Overrides = Readonly<Record<string, Readonly<Record<string, string | null>>>>;

/** What was set later in the life of a row stays empty, so that the row begins as a draft. */
const empty = new Set(['frozen_at', 'accepted_at', 'accepted_name', 'accepted_sha256', 'withdrawn_at', 'sent_at', 'cleared_at', 'seal_no', 'seal_hash', 'issued_at', 'revoked_at', 'cut_off_at', 'retired_at']);

function valueOf({ name, type }: Column, companyId: string, id: string): string | null {
  if (name === 'company_id') return companyId;
  if (type === 'uuid') return id;
  if (name === 'status' && type === 'text') return 'draft';
  if (empty.has(name)) return null;
  if (name === 'token_hash') return `\\x${id.replaceAll('-', '')}`;
  if (type === 'citext') return `${id}@example.test`;
  const sample = samples[type];
  if (sample === undefined) throw new Error(`no sample for the column type ${type}: add one`);
  return sample;
}

/** One row in every tenant table, all related by having the same id; keys and triggers are off while they are written. */
export async function fillEveryTable(owner: pg.Pool, companyId: string, id: string, overrides: Overrides = {}): Promise<void> {
  const client = await owner.connect();
  try {
    await client.query('BEGIN');
    await client.query('SET LOCAL session_replication_role = replica');
    await client.query(`INSERT INTO company (id, name, time_zone, state, settings) VALUES ($1, 'Filled', 'America/New_York', 'NC', convert_to('{}', 'UTF8'))`, [companyId]);
    for (const [table, columns] of await tenantTables(owner)) {
      const given = overrides[table] ?? {};
      const values = columns.map((column) => (column.name in given ? given[column.name] : valueOf(column, companyId, id)));
      await client.query(`INSERT INTO "${table}" (${columns.map(({ name }) => `"${name}"`).join(', ')}) VALUES (${columns.map(({ type }, index) => `$${index + 1}::${type}`).join(', ')})`, values);
    }
    await client.query('COMMIT');
    client.release();
  } catch (error) {
    client.release(true);
    throw error;
  }
}

const questions = new WeakMap<pg.Pool, Promise<string>>();

async function versionsOf(owner: pg.Pool): Promise<string> {
  const names = [...(await tablesOf(owner)).keys()].filter((name) => name !== 'rate_limit');
  const parts = names.map((name) => `SELECT '${name}' AS name, count(*) AS rows, md5(coalesce(string_agg(xmin::text || ctid::text, ' ' ORDER BY ctid), '')) AS hash FROM "${name}"`);
  return `SELECT string_agg(concat_ws(' ', name, rows, hash), ', ' ORDER BY name) AS all FROM (${parts.join(' UNION ALL ')}) tables`;
}

/**
 * One hash over the version of every row of every table: equal before and after means that nothing was written. PostgreSQL never changes a row in place;
 * each write, even of the same values, makes a version with a place (ctid) and a transaction (xmin) of its own, so that the megabytes inside need no look.
 */
export async function fingerprint(owner: pg.Pool): Promise<string> {
  const question = questions.get(owner) ?? versionsOf(owner);
  questions.set(owner, question);
  const { rows } = await owner.query<{ all: string }>(await question);
  return rows[0]?.all ?? '';
}
