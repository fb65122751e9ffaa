import { Injectable } from '@nestjs/common';
import { calcVersion } from '@yardfall/calc';
import { type BodyOf, canonicalBytes, type OptionsRequest, type ResponseOf, type Study, type studies as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { enqueue } from '../common/queue.ts';
import { requireJob } from '../jobs/jobs.access.ts';
import { LibraryService } from '../library/library.service.ts';
import { storedDocument } from '../common/storedDocument.ts';
import { askedOptions } from './options.rules.ts';
import { jsonOf, presentStudy, studyParts } from './studies.presenter.ts';

type Detail = ResponseOf<typeof api.read>;

/** Long work on a revision: asked here, done by the queue, read while it runs and after. */
@Injectable()
export class StudiesService {
  private readonly database: Database;
  private readonly library: LibraryService;

  constructor(database: Database, library: LibraryService) {
    this.database = database;
    this.library = library;
  }

  list(actor: Actor, jobId: string, revisionId: string): Promise<{ items: Study[] }> {
    return this.database.read(actor, async (tx) => {
      await this.revision(tx, actor, jobId, revisionId);
      const rows = await tx.study.findMany({ where: { companyId: actor.companyId, jobId, revisionId }, ...studyParts, orderBy: { id: 'desc' } });
      return { items: rows.map(presentStudy) };
    });
  }

  read(actor: Actor, jobId: string, studyId: string): Promise<Detail> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const { request, result, ...row } = found(await tx.study.findFirst({ where: { companyId: actor.companyId, jobId, id: studyId }, include: studyParts.include }));
      return { ...presentStudy(row), request: jsonOf(request), result: result === null ? null : jsonOf(result) };
    });
  }

  /** What is asked is settled now: later changes of the library or of the draft change nothing of it. */
  options(actor: Actor, jobId: string, revisionId: string, body: OptionsRequest): Promise<Study> {
    return this.database.write(actor, async (tx) => {
      const revision = await this.revision(tx, actor, jobId, revisionId);
      const document = storedDocument(revision.document);
      return this.start(tx, actor, 'options', revision, { document, asked: askedOptions(document, body, await this.library.all(tx, actor)) });
    });
  }

  record(actor: Actor, jobId: string, revisionId: string, { recordId, reportedPerYear }: BodyOf<typeof api.record>): Promise<Study> {
    return this.database.write(actor, async (tx) => {
      const revision = await this.revision(tx, actor, jobId, revisionId);
      const record = found(await tx.rainRecord.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: recordId } }, select: { id: true, name: true } }));
      return this.start(tx, actor, 'record', revision, { document: storedDocument(revision.document), recordId: record.id, recordName: record.name, reportedPerYear });
    });
  }

  stop(actor: Actor, jobId: string, studyId: string): Promise<Study> {
    return this.database.write(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const { companyId } = actor;
      found(await tx.study.findFirst({ where: { companyId, jobId, id: studyId }, select: { id: true } }));
      const { count } = await tx.study.updateMany({ where: { companyId, id: studyId, status: { in: ['waiting', 'running'] } }, data: { status: 'stopped', finishedAt: actor.request.at } });
      if (count === 0) throw new DomainError('conflict.state');
      await audit(tx, actor, 'study.stopped', { jobId, id: studyId });
      return this.told(tx, actor, jobId, studyId);
    });
  }

  private async start(tx: Tx, actor: Actor, kind: Study['kind'], revision: { id: string; jobId: string; documentSha256: string }, request: unknown): Promise<Study> {
    const id = newId();
    const { companyId } = actor;
    await tx.study.create({
      data: {
        id, companyId, jobId: revision.jobId, revisionId: revision.id, kind, status: 'waiting', progress: 0, request: canonicalBytes(request), documentSha256: revision.documentSha256, calcVersion,
        createdById: actor.id, createdAt: actor.request.at,
      },
    });
    await audit(tx, actor, 'study.asked', { jobId: revision.jobId, id }, { kind });
    await enqueue(tx, actor, 'studies.run', { studyId: id }, `studies.run:${id}`);
    return this.told(tx, actor, revision.jobId, id);
  }

  private async told(tx: Tx, actor: Actor, jobId: string, id: string): Promise<Study> {
    await emit(tx, actor, 'studies', jobId, id);
    return presentStudy(found(await tx.study.findUnique({ where: { companyId_id: { companyId: actor.companyId, id } }, ...studyParts })));
  }

  private async revision(tx: Tx, actor: Actor, jobId: string, revisionId: string) {
    await requireJob(tx, actor, jobId);
    return found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId }, select: { id: true, jobId: true, document: true, documentSha256: true } }));
  }
}
