// @ts-check
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { capture } from '../child.mjs';
import { startPostgres } from '../embedded-postgres.mjs';
import { inRoot, root } from '../paths.mjs';

const SAME = 0;
const DIFFERS = 2;

/** Do the migrations make what prisma/schema.prisma says? @returns {Promise<string>} the SQL that is missing, or nothing */
export async function checkSchemaDrift() {
  const dataDir = mkdtempSync(path.join(tmpdir(), 'yardfall-drift-'));
  chmodSync(dataDir, 0o711); // when root checks, the database's user must be able to pass
  const postgres = await startPostgres({ dataDir, throwaway: true });
  try {
    const args = ['migrate', 'diff', '--from-migrations', 'prisma/migrations', '--to-schema', 'prisma/schema.prisma', '--script', '--exit-code'];
    const { code, output, stdout } = await capture(process.execPath, [inRoot('node_modules/prisma/build/index.js'), ...args], { cwd: root, env: { ...process.env, DATABASE_URL: postgres.url(), MIGRATE_DATABASE_URL: '', NO_COLOR: '1' } });
    if (code === SAME) return '';
    return code === DIFFERS ? `The migrations lack:\n${stdout.trim()}` : output.trim();
  } finally {
    await postgres.stop();
    rmSync(dataDir, { recursive: true, force: true });
  }
}
