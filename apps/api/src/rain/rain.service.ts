import { Injectable } from '@nestjs/common';
import { CalcProblem, parseAtlas14, type RainTable } from '@yardfall/calc';
import { type BodyOf, canonicalBytes, type RainTableRow, RainTableSchema, type rain as api, sha256Hex } from '@yardfall/contracts';
import { isMessageCode, render } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import type { UploadedFile } from '../common/request.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { presentTable, rainParts, tableOf } from './rain.presenter.ts';
import { type Storm, stormOf } from './storm.rules.ts';
import { tableProblem } from './table.rules.ts';

@Injectable()
export class RainService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string): Promise<{ items: RainTableRow[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.rainTable.findMany({ where: { companyId: actor.companyId, jobId }, include: rainParts, omit: { original: true }, orderBy: { id: 'desc' } });
      return { items: rows.map(presentTable) };
    });
  }

  async upload(actor: Actor, jobId: string, { name }: BodyOf<typeof api.upload>, file: UploadedFile): Promise<RainTableRow> {
    return this.store(actor, jobId, name, readAtlas(actor, file, name), file);
  }

  async type(actor: Actor, jobId: string, { name, table }: BodyOf<typeof api.type>): Promise<RainTableRow> {
    const wrong = tableProblem(table);
    if (wrong !== null) {
      const { reason, row: line, column } = wrong;
      throw unreadable(actor, `rain.table.${reason}`, `body.table.depths.${String(line - 1)}.${String(column - 1)}`, { line, column });
    }
    return this.store(actor, jobId, name, table, null);
  }

  storm(actor: Actor, jobId: string, tableId: string, returnPeriod: number): Promise<Storm> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const row = found(await tx.rainTable.findFirst({ where: { companyId: actor.companyId, jobId, id: tableId }, select: { content: true } }));
      try {
        return stormOf(tableOf(row.content), returnPeriod);
      } catch (error) {
        if (!(error instanceof CalcProblem)) throw error;
        throw new DomainError('request.invalid', {}, [{ path: 'query.returnPeriod', message: error.code }], { cause: error });
      }
    });
  }

  private async store(actor: Actor, jobId: string, name: string, table: RainTable, file: UploadedFile | null): Promise<RainTableRow> {
    const content = canonicalBytes(table);
    const sha256 = await sha256Hex(content);
    const original = file === null ? {} : { original: new Uint8Array(file.bytes), originalName: file.name };
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const id = newId();
      await tx.rainTable.create({ data: { id, companyId: actor.companyId, jobId, name, content, sha256, ...original, createdById: actor.id, createdAt: actor.request.at } });
      await audit(tx, actor, 'rain.added', { jobId, id }, { sha256, uploaded: file !== null });
      await emit(tx, actor, 'rain', jobId, id);
      return this.describe(tx, actor, id);
    });
  }

  private async describe(tx: Tx, actor: Actor, id: string): Promise<RainTableRow> {
    return presentTable(found(await tx.rainTable.findFirst({ where: { companyId: actor.companyId, id }, include: rainParts, omit: { original: true } })));
  }
}

/** The server's file as a table; what is wrong with it is told by line and column. */
function readAtlas(actor: Actor, file: UploadedFile, name: string): RainTable {
  try {
    const { table } = parseAtlas14(file.bytes);
    const named = { ...table, name: (table.name === '' ? name : table.name).slice(0, 120), source: table.source.slice(0, 500) };
    return RainTableSchema.parse(named);
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    const { line, column } = error.params;
    throw unreadable(actor, error.code, `file:${String(line)}:${String(column)}`, error.params, error);
  }
}

function unreadable(actor: Actor, reason: string, path: string, place: Readonly<Record<string, string | number>>, cause?: unknown): DomainError {
  const message = isMessageCode(reason) ? render(actor.language, actor.units, reason, place) : reason;
  return new DomainError('rain.unreadable', { ...place, reason }, [{ path, message }], { cause });
}
