import { Injectable, type OnModuleInit } from '@nestjs/common';
import { CalcProblem } from '@yardfall/calc';
import { canonicalBytes } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Clock } from '../common/clock.ts';
import { Database } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { Worker } from '../common/worker.ts';
import { SheetsService } from '../prices/sheets.service.ts';
import { RecordsService } from './records.service.ts';
import { jsonOf } from './studies.presenter.ts';
import { StoredRequest } from './studies.stored.ts';
import { StudyPool } from './study.pool.ts';
import type { StudyWork } from './study.work.ts';

interface Ending {
  readonly status: 'done' | 'failed';
  readonly result?: Uint8Array<ArrayBuffer>;
  readonly problem?: { readonly code: string; readonly params: Readonly<Record<string, string | number>> };
}

/** How often a running study looks whether it was stopped, and says how far it is [ms]. */
const lookEvery = 1000;

/** Does the studies that were asked for, one after the other; a stopped one is given up within a second or two. */
@Injectable()
export class StudyRunner implements OnModuleInit {
  private readonly worker: Worker;
  private readonly database: Database;
  private readonly pool: StudyPool;
  private readonly records: RecordsService;
  private readonly sheets: SheetsService;
  private readonly clock: Clock;

  constructor(worker: Worker, database: Database, pool: StudyPool, records: RecordsService, sheets: SheetsService, clock: Clock) {
    this.worker = worker;
    this.database = database;
    this.pool = pool;
    this.records = records;
    this.sheets = sheets;
    this.clock = clock;
  }

  onModuleInit(): void {
    this.worker.task('studies.run', (actor, { studyId }) => this.run(actor, String(studyId)));
  }

  /** May run twice: what has ended stays as it is, and what was cut off begins anew. */
  async run(actor: Actor, studyId: string): Promise<void> {
    const work = await this.workOf(actor, studyId);
    if (work === null || !(await this.note(actor, studyId, 0))) return;
    const givenUp = new AbortController();
    let share = 0;
    const look = async (): Promise<void> => {
      if (!(await this.note(actor, studyId, share))) givenUp.abort();
    };
    // A look that fails is made again a second later; the study itself goes on.
    const timer = setInterval(() => void look().catch(() => undefined), lookEvery);
    try {
      const result = await this.pool.run(work, (now) => { share = now; }, givenUp.signal);
      await this.end(actor, studyId, { status: 'done', result: canonicalBytes(result) });
    } catch (error) {
      if (givenUp.signal.aborted) return;
      if (!(error instanceof CalcProblem)) throw error;
      await this.end(actor, studyId, { status: 'failed', problem: { code: error.code, params: error.params } });
    } finally {
      clearInterval(timer);
    }
  }

  private async workOf(actor: Actor, id: string): Promise<StudyWork | null> {
    const read = await this.database.read(actor, async (tx) => {
      const row = await tx.study.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } }, select: { status: true, request: true } });
      if (row === null || (row.status !== 'waiting' && row.status !== 'running')) return null;
      const request = StoredRequest.parse(jsonOf(row.request));
      if ('asked' in request) {
        const { document, asked: { choices, bought } } = request;
        return { kind: 'options' as const, document, choices, bought, prices: await this.sheets.priceList(tx, actor) };
      }
      const { document, recordId, reportedPerYear } = request;
      return { kind: 'record' as const, document, reportedPerYear, ...(await this.records.packed(tx, actor, recordId)) };
    });
    if (read?.kind !== 'record') return read;
    const { packed, ...work } = read;
    return { ...work, text: await this.records.unpacked(packed) };
  }

  /** Says how far it is; false when it is no longer wanted. */
  private note(actor: Actor, id: string, progress: number): Promise<boolean> {
    return this.database.write(actor, async (tx) => {
      const where = { companyId: actor.companyId, id, status: { in: ['waiting', 'running'] } };
      return (await tx.study.updateMany({ where, data: { status: 'running', progress } })).count > 0;
    });
  }

  private async end(actor: Actor, id: string, { status, result, problem }: Ending): Promise<void> {
    await this.database.write(actor, async (tx) => {
      const data = { status, progress: 1, finishedAt: this.clock.now(), ...(result ? { result } : {}), ...(problem ? { problem } : {}) };
      const { count } = await tx.study.updateMany({ where: { companyId: actor.companyId, id, status: 'running' }, data });
      const row = count === 0 ? null : await tx.study.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } }, select: { jobId: true } });
      if (row !== null) await emit(tx, actor, 'studies', row.jobId, id);
    });
  }
}
