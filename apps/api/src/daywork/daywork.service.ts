import { Injectable } from '@nestjs/common';
import { canonicalBytes, DayworkEntry, type StoredDaywork } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import type { Prisma } from '../generated/prisma/client.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';

const parts = { member: { select: { name: true } } } satisfies Prisma.DayworkEntryInclude;
type EntryRecord = Prisma.DayworkEntryGetPayload<{ include: typeof parts }>;

/** Time and materials: entries of the crew, each stored once, in any order. */
@Injectable()
export class DayworkService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string): Promise<{ items: StoredDaywork[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      return { items: await this.all(tx, actor, jobId) };
    });
  }

  record(actor: Actor, jobId: string, entries: readonly DayworkEntry[]): Promise<{ items: StoredDaywork[] }> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      for (const entry of entries) await this.keep(tx, actor, jobId, entry);
      await emit(tx, actor, 'daywork', jobId);
      return { items: await this.all(tx, actor, jobId) };
    });
  }

  /** Sent again, an entry is the same one; another under its id is somebody's mistake, and the first stays. */
  private async keep(tx: Tx, actor: Actor, jobId: string, entry: DayworkEntry): Promise<void> {
    const payload = canonicalBytes(entry);
    const held = await tx.dayworkEntry.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: entry.id } } });
    if (held !== null) {
      if (held.jobId === jobId && held.memberId === actor.id && Buffer.from(held.payload).equals(payload)) return;
      throw new DomainError('conflict.state', { entry: entry.id });
    }
    await tx.dayworkEntry.create({ data: { id: entry.id, companyId: actor.companyId, jobId, memberId: actor.id, kind: entry.kind, at: new Date(entry.at), payload, serverTime: actor.request.at } });
    if (entry.kind === 'struck') await audit(tx, actor, 'daywork.struck', { jobId, id: entry.entry }, { reason: entry.reason });
  }

  private async all(tx: Tx, actor: Actor, jobId: string): Promise<StoredDaywork[]> {
    const rows = await tx.dayworkEntry.findMany({ where: { companyId: actor.companyId, jobId }, include: parts, orderBy: [{ at: 'asc' }, { id: 'asc' }] });
    return rows.map(presentEntry);
  }
}

function presentEntry(row: EntryRecord): StoredDaywork {
  return { entry: DayworkEntry.parse(JSON.parse(Buffer.from(row.payload).toString('utf8'))), memberId: row.memberId, by: row.member.name, serverTime: row.serverTime.toISOString() };
}
