import { Injectable } from '@nestjs/common';
import { canonicalBytes, entryKind, type ResponseOf, sha256Hex, type StoredSurveyFact, type SurveyDraft, type SurveyFact, type surveyFacts as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import type { Job } from '../generated/prisma/client.ts';
import { deskOf, requirePhone } from '../identity/phones.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { presentSurveyFact, surveyFactParts } from './facts.presenter.ts';
import { judge, type Judgement } from './judge.rules.ts';
import { baseOf, type LiveSurvey, loadSurvey } from './live.ts';
import { projectSurvey } from './project.ts';
import { presentSurvey, surveyParts } from './surveys.presenter.ts';

interface Signed {
  readonly fact: SurveyFact;
  readonly body: Uint8Array<ArrayBuffer>;
  readonly sha256: string;
}

const keptByDesk: Judgement = { verdict: 'kept', reason: null };

/** Every well-formed fact of a known device is stored; whether it counts is judged beside it and never decides whether it is kept. */
@Injectable()
export class SurveyFactsService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string): Promise<ResponseOf<typeof api.list>> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const where = { companyId: actor.companyId, jobId };
      const facts = (await tx.surveyFact.findMany({ where, include: surveyFactParts, orderBy: [{ serverTime: 'asc' }, { seq: 'asc' }, { id: 'asc' }] })).map(presentSurveyFact);
      const surveys = await tx.survey.findMany({ where, orderBy: { id: 'desc' } });
      return { surveys: surveys.map((row) => ({ surveyId: row.id, base: baseOf(row, facts.filter(({ fact }) => fact.surveyId === row.id)) })), facts };
    });
  }

  async record(actor: Actor, jobId: string, facts: readonly SurveyFact[]): Promise<ResponseOf<typeof api.record>> {
    const signed = await Promise.all(facts.map(sign));
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const { cutOff } = await requirePhone(tx, actor, facts);
      const live = new Map<string, LiveSurvey>();
      const stored = await this.store(tx, actor, job, live, signed, cutOff);
      const surveys = await this.project(tx, actor, job, live, stored.filter(({ fresh }) => fresh).map(({ of }) => of));
      // A phone that was cut off hands in and reads nothing.
      const rows = cutOff ? [] : await tx.survey.findMany({ where: { companyId: actor.companyId, jobId, id: { in: surveys } }, include: surveyParts });
      const byHash = new Map(stored.map(({ sha256, of }) => [sha256, of]));
      return { facts: signed.flatMap(({ sha256 }) => byHash.get(sha256) ?? []), surveys: rows.map(presentSurvey) };
    });
  }

  /** What a desk typed, as facts of that desk; the caller holds the lock of the job and has read the survey in this transaction. */
  async fromDesk(tx: Tx, actor: Actor, job: Job, survey: LiveSurvey, drafts: readonly SurveyDraft[]): Promise<void> {
    const deviceId = await deskOf(tx, actor);
    const last = await tx.surveyFact.aggregate({ where: { companyId: actor.companyId, deviceId }, _max: { seq: true } });
    const stored: StoredSurveyFact[] = [];
    for (const [index, draft] of drafts.entries()) {
      const seq = (last._max.seq ?? 0) + index + 1;
      const fact: SurveyFact = { ...draft, id: newId(), deviceId, seq, deviceTime: actor.request.at.toISOString(), factVersion: 1, jobId: job.id, surveyId: survey.id };
      stored.push(await this.insert(tx, actor, job.id, survey, await sign(fact), keptByDesk));
    }
    await this.project(tx, actor, job, new Map([[survey.id, survey]]), stored);
  }

  private async store(tx: Tx, actor: Actor, job: Job, live: Map<string, LiveSurvey>, signed: readonly Signed[], deviceCutOff: boolean): Promise<{ sha256: string; of: StoredSurveyFact; fresh: boolean }[]> {
    const rows = await tx.surveyFact.findMany({ where: { companyId: actor.companyId, factId: { in: signed.map(({ fact }) => fact.id) } }, include: surveyFactParts });
    const known = new Map(rows.map((row) => [row.sha256, presentSurveyFact(row)]));
    const ids = new Set(rows.map(({ factId }) => factId));
    const stored = [...known].map(([sha256, of]) => ({ sha256, of, fresh: false }));
    for (const one of [...signed].sort((a, b) => a.fact.seq - b.fact.seq)) {
      if (known.has(one.sha256)) continue;
      const survey = live.get(one.fact.surveyId) ?? (await loadSurvey(tx, actor, one.fact.surveyId));
      live.set(survey.id, survey);
      const of = await this.insert(tx, actor, job.id, survey, one, ids.has(one.fact.id) ? { verdict: 'refused', reason: 'sameIdOtherFact' } : judged(actor, job, survey, one.fact, deviceCutOff), ids.has(one.fact.id));
      known.set(one.sha256, of);
      ids.add(one.fact.id);
      stored.push({ sha256: one.sha256, of, fresh: true });
    }
    return stored;
  }

  private async insert(tx: Tx, actor: Actor, jobId: string, survey: LiveSurvey, { fact, body, sha256 }: Signed, { verdict, reason }: Judgement, idTaken = false): Promise<StoredSurveyFact> {
    const { id: factId, deviceId, seq, surveyId } = fact;
    const row = await tx.surveyFact.create({
      data: {
        id: idTaken ? newId() : factId, factId, companyId: actor.companyId, jobId, deviceId, memberId: actor.id, surveyId, seq, body, sha256,
        deviceTime: new Date(fact.deviceTime), serverTime: actor.request.at, verdict, reason,
      },
      include: surveyFactParts,
    });
    const stored = presentSurveyFact(row);
    survey.add(stored);
    return stored;
  }

  /** The stored surveys follow the fold in the transaction of their facts. */
  private async project(tx: Tx, actor: Actor, job: Job, live: ReadonlyMap<string, LiveSurvey>, stored: readonly StoredSurveyFact[]): Promise<string[]> {
    if (stored.length === 0) return [];
    const kept = stored.filter(({ verdict }) => verdict === 'kept');
    const touched = [...new Set(kept.map(({ fact }) => fact.surveyId))];
    for (const id of touched) {
      const survey = live.get(id);
      if (survey !== undefined) await projectSurvey(tx, actor, job.id, survey);
    }
    await audit(tx, actor, 'survey.recorded', { jobId: job.id }, { facts: stored.length, kept: kept.length });
    await emit(tx, actor, 'survey', job.id, touched[0]);
    return touched;
  }
}

async function sign(fact: SurveyFact): Promise<Signed> {
  const body = canonicalBytes(fact);
  return { fact, body, sha256: await sha256Hex(body) };
}

function judged(actor: Actor, job: Job, survey: LiveSurvey, fact: SurveyFact, deviceCutOff: boolean): Judgement {
  return judge(fact, {
    deviceCutOff, roles: actor.roles, jobId: job.id, surveyJobId: survey.row?.jobId ?? null, jobClosed: job.stage === 'handedOver' || job.stage === 'declined',
    entryKnown: survey.has(fact.entry), entries: survey.count(entryKind(fact.entry)),
  });
}
