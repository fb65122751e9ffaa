// @ts-check
// Applies prisma/migrations/*/migration.sql in order and keeps Prisma's own table of them, so that the service starts without
// the command-line program and `prisma migrate status` still agrees.
import { createHash, randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import pg from 'pg';
import { asComplaint, Complaint, messageOf } from './complaint.mjs';

/** The advisory lock that Prisma's engine takes: whoever comes second waits, whichever program it is. */
const PRISMA_LOCK = 72707369;
const TABLE = `CREATE TABLE IF NOT EXISTS _prisma_migrations (
  id VARCHAR(36) PRIMARY KEY NOT NULL, checksum VARCHAR(64) NOT NULL, finished_at TIMESTAMPTZ, migration_name VARCHAR(255) NOT NULL,
  logs TEXT, rolled_back_at TIMESTAMPTZ, started_at TIMESTAMPTZ NOT NULL DEFAULT now(), applied_steps_count INTEGER NOT NULL DEFAULT 0)`;

/** @typedef {{ name: string, sql: string, checksum: string }} Migration */
/** @typedef {{ migration_name: string, checksum: string, finished_at: Date | null }} AppliedRow */

/** @param {string} dir @returns {Migration[]} */
export function readMigrations(dir) {
  if (!existsSync(dir)) return [];
  const names = readdirSync(dir, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name).sort();
  return names.map((name) => {
    const sql = readFileSync(path.join(dir, name, 'migration.sql'), 'utf8');
    return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
  });
}

/**
 * @param {AppliedRow[]} rows @param {Migration[]} known
 * @returns {Migration[]} those still to apply
 */
export function pending(rows, known) {
  const byName = new Map(known.map((migration) => [migration.name, migration]));
  for (const row of rows) {
    const migration = byName.get(row.migration_name);
    if (!migration) throw new Complaint(`The database has the migration ${row.migration_name}, which this version of Yardfall does not know: the data is from a newer version.`);
    if (!row.finished_at) throw new Complaint(`The migration ${row.migration_name} failed earlier: mend the database, then mark it with "npx prisma migrate resolve".`);
    if (row.checksum !== migration.checksum) throw new Complaint(`The migration ${row.migration_name} was edited after it had been applied to this database: restore the file, or start with a new database.`);
  }
  const applied = new Set(rows.map((row) => row.migration_name));
  return known.filter(({ name }) => !applied.has(name));
}

/** @param {pg.Client} client @param {Migration} migration */
async function applyOne(client, { name, sql, checksum }) {
  const id = randomUUID();
  await client.query('INSERT INTO _prisma_migrations (id, checksum, migration_name) VALUES ($1, $2, $3)', [id, checksum, name]);
  try {
    await client.query(sql); // one simple-protocol message: the whole file is one implicit transaction
  } catch (error) {
    await client.query('ROLLBACK'); // in case the file opened a transaction of its own
    await client.query('UPDATE _prisma_migrations SET logs = $2 WHERE id = $1', [id, messageOf(error)]);
    throw asComplaint(new Complaint(`The migration ${name} failed: ${messageOf(error)}.`, { cause: error }));
  }
  await client.query('RESET ALL');
  await client.query('UPDATE _prisma_migrations SET finished_at = now(), applied_steps_count = 1 WHERE id = $1', [id]);
}

/** @param {string} ownerUrl @param {string} dir @returns {Promise<string[]>} the names it applied */
export async function applyMigrations(ownerUrl, dir) {
  const known = readMigrations(dir);
  const client = new pg.Client({ connectionString: ownerUrl, application_name: 'yardfall-migrations' });
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', [PRISMA_LOCK]);
    await client.query('SET client_min_messages = warning');
    await client.query(TABLE);
    const { rows } = await client.query('SELECT migration_name, checksum, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL');
    const due = pending(rows, known);
    for (const migration of due) await applyOne(client, migration);
    return due.map(({ name }) => name);
  } finally {
    await client.end();
  }
}
