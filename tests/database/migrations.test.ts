import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { applyMigrations } from '../../tools/migrations.mjs';
import { createTestDatabase, type TestDatabase } from '../support/database.ts';

let database: TestDatabase;
let dir: string;

beforeEach(async () => {
  database = await createTestDatabase();
  dir = mkdtempSync(path.join(tmpdir(), 'yardfall-migrations-'));
  cpSync(path.resolve(import.meta.dirname, '../../prisma/migrations'), dir, { recursive: true });
});

afterEach(async () => {
  rmSync(dir, { recursive: true, force: true });
  await database.drop();
});

function put(name: string, sql: string): void {
  mkdirSync(path.join(dir, name), { recursive: true });
  writeFileSync(path.join(dir, name, 'migration.sql'), sql);
}

async function rows(sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: database.ownerUrl });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows;
  } finally {
    await client.end();
  }
}

describe('applying migrations', () => {
  it('applies what is new once, even when three starts meet', async () => {
    put('29990101000000_shed', 'CREATE TABLE shed (id int); CREATE FUNCTION one() RETURNS int LANGUAGE sql AS $$ SELECT 1; $$;');
    const applied = await Promise.all([1, 2, 3].map(() => applyMigrations(database.ownerUrl, dir)));
    expect(applied.flat()).toEqual(['29990101000000_shed']);
    expect(await rows("SELECT migration_name, finished_at IS NOT NULL AS done FROM _prisma_migrations WHERE migration_name LIKE '2999%'")).toEqual([{ migration_name: '29990101000000_shed', done: true }]);
    expect(await applyMigrations(database.ownerUrl, dir)).toEqual([]);
  });

  it('refuses a file that was edited after it had been applied', async () => {
    put('29990101000000_shed', 'CREATE TABLE shed (id int);');
    await applyMigrations(database.ownerUrl, dir);
    put('29990101000000_shed', 'CREATE TABLE shed (id bigint);');
    await expect(applyMigrations(database.ownerUrl, dir)).rejects.toThrow('29990101000000_shed was edited after it had been applied');
  });

  it('leaves nothing of a migration that fails, and refuses to go on until it is resolved', async () => {
    put('29990101000000_shed', 'CREATE TABLE shed (id int); SELECT 1/0;');
    await expect(applyMigrations(database.ownerUrl, dir)).rejects.toThrow('29990101000000_shed failed: division by zero');
    expect(await rows("SELECT to_regclass('shed') AS found")).toEqual([{ found: null }]);
    await expect(applyMigrations(database.ownerUrl, dir)).rejects.toThrow('29990101000000_shed failed earlier');
  });

  it('refuses data that a newer version has written', async () => {
    put('29990101000000_shed', 'CREATE TABLE shed (id int);');
    await applyMigrations(database.ownerUrl, dir);
    rmSync(path.join(dir, '29990101000000_shed'), { recursive: true });
    await expect(applyMigrations(database.ownerUrl, dir)).rejects.toThrow('29990101000000_shed, which this version of Yardfall does not know');
  });
});
