import { Injectable } from '@nestjs/common';
import { type BodyOf, type privateLines as api, type PrivateLines, privateQuestions, type PrivateState } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import { Database, type Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { addAnswers, answerKey, latestAnswers } from '../jobs/answers.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { dayOf } from '../jobs/propertyDay.ts';

@Injectable()
export class PrivateLinesService {
  private readonly database: Database;
  private readonly checklist: ChecklistBuilder;

  constructor(database: Database, checklist: ChecklistBuilder) {
    this.database = database;
    this.checklist = checklist;
  }

  read(actor: Actor, jobId: string): Promise<PrivateLines> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      return describe(tx, actor, jobId);
    });
  }

  declare(actor: Actor, jobId: string, { lines }: BodyOf<typeof api.declare>): Promise<PrivateLines> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const news = await addAnswers(tx, actor, jobId, 'privateLine', '', lines.map(({ question, ...line }) => ({ kind: question, number: '', expiresOn: null, ...line })));
      if (news.length === 0) return describe(tx, actor, jobId);
      await this.checklist.linesChanged(tx, actor, jobId);
      await audit(tx, actor, 'locate.privateLines', { jobId, id: jobId }, { lines: news.map(({ kind, state }) => `${kind}:${state}`).join(','), count: news.length });
      await emit(tx, actor, 'locates', jobId, null);
      return describe(tx, actor, jobId);
    });
  }
}

async function describe(tx: Tx, actor: Actor, jobId: string): Promise<PrivateLines> {
  const latest = await latestAnswers(tx, actor, jobId, 'privateLine');
  return {
    lines: privateQuestions.map((question) => {
      const row = latest.get(answerKey(question, ''));
      if (row === undefined) return { question, state: 'unknown' as const, note: '', on: null, photoId: null, at: null, by: '' };
      return { question, state: row.state as PrivateState, note: row.note, on: row.onDate === null ? null : dayOf(row.onDate), photoId: row.photoId, at: row.at.toISOString(), by: row.recordedBy.name };
    }),
  };
}
