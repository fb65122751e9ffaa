import { readdirSync } from 'node:fs';
import { Injectable } from '@nestjs/common';
import type { Readiness } from '@yardfall/contracts';
import { Database } from '../common/database.ts';

const folder = new URL('../../../../prisma/migrations/', import.meta.url);

interface RoleRow {
  readonly superuser: boolean;
  readonly bypasses: boolean;
  readonly owns: boolean;
}

/** Ready means: the database answers, its tables are those of this version, and our role could not read past a row policy. */
@Injectable()
export class ReadinessService {
  private readonly database: Database;
  private readonly expected: readonly string[];

  constructor(database: Database) {
    this.database = database;
    this.expected = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  }

  async check(): Promise<Readiness> {
    try {
      const [migrations, role] = [await this.migrations(), await this.role()];
      return { ready: migrations.ok && role.ok, database: { ok: true, code: 'reachable' }, migrations, role };
    } catch {
      const unknown = { ok: false, code: 'unknown' };
      return { ready: false, database: { ok: false, code: 'unreachable' }, migrations: unknown, role: unknown };
    }
  }

  private async migrations(): Promise<Readiness['migrations']> {
    const { rows } = await this.database.pool.query<{ name: string }>('SELECT name FROM applied_migrations()');
    const applied = new Set(rows.map((row) => row.name));
    return this.expected.every((name) => applied.has(name)) ? { ok: true, code: 'applied' } : { ok: false, code: 'pending' };
  }

  private async role(): Promise<Readiness['role']> {
    const { rows } = await this.database.pool.query<RoleRow>(
      `SELECT r.rolsuper AS superuser, r.rolbypassrls AS bypasses,
         EXISTS (SELECT FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = 'public' AND pg_has_role(r.oid, c.relowner, 'USAGE')) AS owns
       FROM pg_roles r WHERE r.rolname = current_user`);
    const row = rows[0];
    if (row === undefined || row.superuser) return { ok: false, code: 'superuser' };
    if (row.bypasses) return { ok: false, code: 'bypassesRowSecurity' };
    return row.owns ? { ok: false, code: 'ownsTables' } : { ok: true, code: 'restricted' };
  }
}
