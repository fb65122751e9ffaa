import { Injectable } from '@nestjs/common';
import type { BodyOf, Permits, permits as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { storedDocument } from '../common/storedDocument.ts';
import type { Job } from '../generated/prisma/client.ts';
import { addAnswers } from '../jobs/answers.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { outletHash, outletsOf } from '../jobs/permits.rules.ts';
import { holdForPermits, permitsFor, revisionToDig } from '../jobs/permits.ts';

@Injectable()
export class PermitsService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  read(actor: Actor, jobId: string): Promise<Permits> {
    return this.database.read(actor, async (tx) => this.describe(tx, actor, await requireJob(tx, actor, jobId)));
  }

  answer(actor: Actor, jobId: string, { answers }: BodyOf<typeof api.answer>): Promise<Permits> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const news = await addAnswers(tx, actor, jobId, 'permit', '', answers);
      if (news.length === 0) return this.describe(tx, actor, job);
      const params = { kinds: news.map(({ kind, state }) => `${kind}:${state}`).join(','), count: news.length };
      return this.changed(tx, actor, job, 'permit.answered', params);
    });
  }

  answerOutlet(actor: Actor, jobId: string, { revisionId, outlet: id, question, ...answer }: BodyOf<typeof api.answerOutlet>): Promise<Permits> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const revision = found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId } }));
      // A draft is answered in the design itself.
      if (revision.status === 'draft') throw new DomainError('conflict.state', { status: revision.status });
      const outlet = found(outletsOf(storedDocument(revision.document)).find((part) => part.id === id) ?? null);
      const news = await addAnswers(tx, actor, jobId, 'outlet', outletHash(outlet), [{ kind: question, ...answer }]);
      if (news.length === 0) return this.describe(tx, actor, job);
      return this.changed(tx, actor, job, 'permit.outletAnswered', { question, state: answer.state });
    });
  }

  private async changed(tx: Tx, actor: Actor, job: Job, action: string, params: Parameters<typeof audit>[4]): Promise<Permits> {
    await holdForPermits(tx, actor, job);
    await audit(tx, actor, action, { jobId: job.id, id: job.id }, params);
    await emit(tx, actor, 'permits', job.id, null);
    return this.describe(tx, actor, job);
  }

  private async describe(tx: Tx, actor: Actor, job: Job): Promise<Permits> {
    const revision = await revisionToDig(tx, actor, job.id);
    return { ...(await permitsFor(tx, actor, job, revision?.document ?? null)), revisionId: revision?.id ?? null };
  }
}
