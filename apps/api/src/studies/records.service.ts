import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { Injectable } from '@nestjs/common';
import { CalcProblem } from '@yardfall/calc';
import { type RainRecordRow, sha256Hex } from '@yardfall/contracts';
import { isMessageCode, render } from '@yardfall/text';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import type { UploadedFile } from '../common/request.ts';
import { presentRecord, recordParts } from './studies.presenter.ts';
import { StudyPool } from './study.pool.ts';

const pack = promisify(gzip);
const unpack = promisify(gunzip);

/** Years of rain that the company uploaded: read whole when they come, so that no study meets a broken file. */
@Injectable()
export class RecordsService {
  private readonly database: Database;
  private readonly pool: StudyPool;

  constructor(database: Database, pool: StudyPool) {
    this.database = database;
    this.pool = pool;
  }

  list(actor: Actor): Promise<{ items: RainRecordRow[] }> {
    return this.database.read(actor, async (tx) => {
      const rows = await tx.rainRecord.findMany({ where: { companyId: actor.companyId }, include: recordParts, omit: { original: true }, orderBy: { id: 'desc' } });
      return { items: rows.map(presentRecord) };
    });
  }

  async upload(actor: Actor, name: string, file: UploadedFile): Promise<RainRecordRow> {
    const { step, from, to, years, missingHours } = await this.span(actor, name, file);
    const [sha256, original] = await Promise.all([sha256Hex(new Uint8Array(file.bytes)), pack(file.bytes)]);
    return this.database.write(actor, async (tx) => {
      const id = newId();
      const columns = { name, originalName: file.name, sha256, step, span: { from, to, years, missingHours }, createdById: actor.id, createdAt: actor.request.at };
      await tx.rainRecord.create({ data: { id, companyId: actor.companyId, original: new Uint8Array(original), ...columns } });
      await audit(tx, actor, 'rain.recordAdded', { id }, { sha256, step });
      await emit(tx, actor, 'studies', null, id);
      return presentRecord(found(await tx.rainRecord.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } }, include: recordParts, omit: { original: true } })));
    });
  }

  /** The file as it came, for a study. */
  async packed(tx: Tx, actor: Actor, id: string): Promise<{ readonly name: string; readonly packed: Uint8Array }> {
    const row = found(await tx.rainRecord.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } }, select: { name: true, original: true } }));
    return { name: row.name, packed: row.original };
  }

  async unpacked(packed: Uint8Array): Promise<string> {
    return (await unpack(packed)).toString('utf8');
  }

  /** What is wrong with a file is told by line and column. */
  private async span(actor: Actor, name: string, file: UploadedFile) {
    try {
      return await this.pool.run({ kind: 'span', text: file.bytes.toString('utf8'), name });
    } catch (error) {
      if (!(error instanceof CalcProblem)) throw error;
      const message = isMessageCode(error.code) ? render(actor.language, actor.units, error.code, error.params) : error.code;
      throw new DomainError('rain.unreadable', { ...error.params, reason: error.code }, [{ path: `file:${error.path}`, message }], { cause: error });
    }
  }
}
