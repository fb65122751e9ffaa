import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { isAlive } from '../../tools/child.mjs';
import { ensureAppRole } from '../../tools/database-roles.mjs';
import { startPostgres } from '../../tools/embedded-postgres.mjs';
import { applyMigrations } from '../../tools/migrations.mjs';
import { inRoot } from '../../tools/paths.mjs';
import { templateName } from './database.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The template database as its owner; every test file copies it. */
    templateUrl: string;
  }
}

const prefix = 'yardfall-test-';

/** One server for the run, its tables made once by the migrations themselves. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await endLeftovers();
  const dataDir = mkdtempSync(path.join(tmpdir(), prefix));
  chmodSync(dataDir, 0o711); // when root runs the tests, the database's user must be able to pass
  writeFileSync(path.join(dataDir, 'owner.pid'), String(process.pid));
  const postgres = await startPostgres({ dataDir, throwaway: true, database: templateName });
  const stop = async (): Promise<void> => {
    await postgres.stop();
    rmSync(dataDir, { recursive: true, force: true });
  };
  try {
    await ensureAppRole(postgres.url());
    await applyMigrations(postgres.url(), inRoot('prisma', 'migrations'));
  } catch (error) {
    await stop();
    throw error;
  }
  project.provide('templateUrl', postgres.url());
  return stop;
}

/** A run that was killed leaves its server behind. */
async function endLeftovers(): Promise<void> {
  for (const name of readdirSync(tmpdir()).filter((entry) => entry.startsWith(prefix))) {
    const dataDir = path.join(tmpdir(), name);
    const pid = readPid(path.join(dataDir, 'owner.pid'));
    if (pid === undefined || isAlive(pid)) continue;
    const server = readPid(path.join(dataDir, 'postgres', 'postmaster.pid'));
    if (server !== undefined && isAlive(server)) await (await startPostgres({ dataDir, database: templateName })).stop();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

function readPid(file: string): number | undefined {
  try {
    return Number.parseInt(readFileSync(file, 'utf8'), 10);
  } catch {
    return undefined; // no such file: nothing to end
  }
}
