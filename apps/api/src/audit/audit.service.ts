import { Injectable } from '@nestjs/common';
import type { audit as api, AuditEntry, QueryOf, ResponseOf, TrailState } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { decodeTimeCursor, pageOf } from '../common/cursor.ts';
import { Database, type Tx } from '../common/database.ts';
import type { AuditEntry as AuditRow } from '../generated/prisma/client.ts';
import { chainHash, firstHash } from './chain.ts';

const step = 1000;

@Injectable()
export class AuditService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, query: QueryOf<typeof api.list>): Promise<ResponseOf<typeof api.list>> {
    return this.database.read(actor, async (tx) => {
      const after = query.cursor === undefined ? null : decodeTimeCursor(query.cursor);
      const older = after === null ? {} : { OR: [{ at: { lt: after.at } }, { at: after.at, id: { lt: after.id } }] };
      const rows = await tx.auditEntry.findMany({
        where: { companyId: actor.companyId, ...(query.jobId === undefined ? {} : { jobId: query.jobId }), ...older },
        orderBy: [{ at: 'desc' }, { id: 'desc' }], take: query.limit + 1,
      });
      const names = await namesOf(tx, actor, rows);
      return pageOf(rows, query.limit, (row) => present(row, names), (row) => [row.at.toISOString(), row.id]);
    });
  }

  /** Recomputes every hash; an entry that was changed, taken out or put in is broken. */
  verify(actor: Actor): Promise<TrailState> {
    return this.database.read(actor, async (tx) => {
      const unsealed = await tx.auditEntry.count({ where: { companyId: actor.companyId, sealNo: null } });
      const state = { sealed: 0, unsealed, broken: 0, firstBroken: null as string | null };
      let last: { number: bigint; hash: Uint8Array } = { number: 0n, hash: firstHash };
      for (let rows = await sealedAfter(tx, actor, 0n); rows.length > 0; rows = await sealedAfter(tx, actor, last.number)) {
        for (const row of rows) {
          const number = row.sealNo ?? 0n;
          const holds = number === last.number + 1n && row.sealHash !== null && chainHash(last.hash, number, row).equals(row.sealHash);
          if (holds) state.sealed += 1;
          else state.broken += 1;
          if (!holds) state.firstBroken ??= row.id;
          last = { number, hash: row.sealHash ?? firstHash };
        }
      }
      return state;
    });
  }
}

function sealedAfter(tx: Tx, actor: Actor, number: bigint): Promise<AuditRow[]> {
  return tx.auditEntry.findMany({ where: { companyId: actor.companyId, sealNo: { gt: number } }, orderBy: { sealNo: 'asc' }, take: step });
}

async function namesOf(tx: Tx, actor: Actor, rows: readonly AuditRow[]): Promise<ReadonlyMap<string, string>> {
  const ids = [...new Set(rows.flatMap((row) => (row.actorKind === 'member' && row.actorId !== null ? [row.actorId] : [])))];
  const members = await tx.member.findMany({ where: { companyId: actor.companyId, id: { in: ids } }, select: { id: true, name: true } });
  return new Map(members.map(({ id, name }) => [id, name]));
}

function present(row: AuditRow, names: ReadonlyMap<string, string>): AuditEntry {
  return {
    id: row.id, at: row.at.toISOString(), actorKind: row.actorKind as AuditEntry['actorKind'], actorId: row.actorId, actorName: row.actorId === null ? null : (names.get(row.actorId) ?? null),
    jobId: row.jobId, action: row.action, subjectId: row.subjectId, params: row.params as AuditEntry['params'], sealed: row.sealNo !== null,
  };
}
