import { Injectable } from '@nestjs/common';
import { ModuleRef } from '@nestjs/core';
import { canonicalBytes, type Checklist, type FieldFact, type Role, type StoredFact } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { clockBehind } from '../common/phoneClock.ts';
import type { Job } from '../generated/prisma/client.ts';
import { requirePhone } from '../identity/phones.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { advance } from '../jobs/stages.ts';
import { buildRevisionOf } from './build.ts';
import { presentChecklist } from './checklists.presenter.ts';
import { factColumns, factParts, presentFact } from './facts.presenter.ts';
import { circumstancesOf } from './circumstances.ts';
import { declareLines } from './declared.ts';
import { holdForFailed } from './failedHold.ts';
import { judge } from './judge.rules.ts';
import { replay } from './replay.rules.ts';
import { type LiveChecklist, loadChecklist } from './live.ts';

export interface Recorder {
  readonly memberId: string;
  readonly roles: readonly Role[];
  readonly deviceCutOff: boolean;
  /** How far the clock of the phone is behind ours [s]. */
  readonly clockBehind: number;
}

/** Every well-formed fact of a known device is stored; whether it counts is judged beside it and never decides whether it is kept. */
@Injectable()
export class FactsService {
  private readonly database: Database;

  private readonly modules: ModuleRef;

  /** @param modules the builder of lists, which writes through this service, is asked for when it is needed */
  constructor(database: Database, modules: ModuleRef) {
    this.database = database;
    this.modules = modules;
  }

  record(actor: Actor, jobId: string, facts: readonly FieldFact[], sentAt: string | null = null): Promise<{ facts: StoredFact[]; checklist: Checklist }> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const revision = await buildRevisionOf(tx, actor, job);
      const { cutOff } = await requirePhone(tx, actor, facts);
      const recorder = { memberId: actor.id, roles: actor.roles, deviceCutOff: cutOff, clockBehind: clockBehind(actor.request.at, sentAt) };
      const live = await loadChecklist(tx, actor, jobId);
      const stored = await this.store(tx, actor, job, live, facts, recorder);
      if (recorder.deviceCutOff) return { facts: stored, checklist: { jobId, revisionId: revision.id, items: [], holdPoints: [], digging: [] } };
      // A line that was declared to be there is a step of its own from now on.
      const declared = await declareLines(tx, actor, jobId, stored);
      if (declared) await this.modules.get(ChecklistBuilder, { strict: false }).linesChanged(tx, actor, jobId);
      return { facts: stored, checklist: presentChecklist(declared ? await loadChecklist(tx, actor, jobId) : live, { jobId, revisionId: revision.id, document: revision.document }, live.moment(actor.request.at)) };
    });
  }

  /** In the transaction of the caller, who holds the lock of the job. A fact that is on record already comes back as it was judged. */
  async store(tx: Tx, actor: Actor, job: Job, live: LiveChecklist, facts: readonly FieldFact[], recorder: Recorder): Promise<StoredFact[]> {
    const known = await this.known(tx, actor, job.id, facts);
    const stored = new Map<string, StoredFact>();
    const fresh = facts.filter(({ id }) => !known.has(id)).sort((a, b) => a.seq - b.seq);
    for (const fact of fresh) {
      if (!stored.has(fact.id)) stored.set(fact.id, await this.storeOne(tx, actor, job.id, live, fact, recorder));
    }
    for (const one of await this.judgeAgain(tx, actor, live, new Set(stored.keys()))) if (stored.has(one.fact.id)) stored.set(one.fact.id, one);
    if (stored.size > 0) await this.finish(tx, actor, job, live, [...stored.values()]);
    return facts.map(({ id }) => found(known.get(id) ?? stored.get(id)));
  }

  /** Hold points are judged over all facts in the order of recording; whatever comes out otherwise than before is written, with the states of its items. */
  async judgeAgain(tx: Tx, actor: Actor, live: LiveChecklist, fresh: ReadonlySet<string>): Promise<readonly StoredFact[]> {
    const changed = replay(live, fresh);
    for (const { fact, verdict, reason } of changed) {
      await tx.fieldFact.update({ where: { companyId_id: { companyId: actor.companyId, id: fact.id } }, data: { verdict, reason } });
    }
    await this.project(tx, actor, live, new Set(changed.map(({ fact }) => fact.itemKey)));
    return changed;
  }

  private async storeOne(tx: Tx, actor: Actor, jobId: string, live: LiveChecklist, fact: FieldFact, recorder: Recorder): Promise<StoredFact> {
    const { verdict, reason } = judge(fact, await circumstancesOf(tx, actor, jobId, live, fact, recorder));
    const row = await tx.fieldFact.create({
      data: { ...factColumns(fact), companyId: actor.companyId, jobId, memberId: recorder.memberId, serverTime: actor.request.at, clockBehind: recorder.clockBehind, verdict, reason }, include: factParts,
    });
    const kept = presentFact(row);
    live.add(kept);
    return kept;
  }

  private async finish(tx: Tx, actor: Actor, job: Job, live: LiveChecklist, stored: readonly StoredFact[]): Promise<void> {
    await this.project(tx, actor, live, new Set(stored.map(({ fact }) => fact.itemKey)));
    const kept = stored.filter(({ verdict }) => verdict === 'kept');
    // What is packed before and what is shown at the end is no work in the ground.
    if (kept.some(({ fact }) => !/^[AJ]/.test(fact.itemKey))) await advance(tx, actor, job, 'installing');
    await audit(tx, actor, 'checklist.recorded', { jobId: job.id }, { facts: stored.length, kept: kept.length });
    await emit(tx, actor, 'checklist', job.id);
  }

  /** The column `state` follows the fold, for lists. */
  async project(tx: Tx, actor: Actor, live: LiveChecklist, keys: ReadonlySet<string>): Promise<void> {
    await holdForFailed(tx, actor, live, keys);
    for (const key of keys) {
      const item = live.items.get(key);
      if (item === undefined) continue;
      const { state } = live.fold(item);
      await tx.checklistItem.update({ where: { companyId_id: { companyId: actor.companyId, id: item.row.id } }, data: { state, updatedAt: actor.request.at } });
    }
  }

  private async known(tx: Tx, actor: Actor, jobId: string, facts: readonly FieldFact[]): Promise<ReadonlyMap<string, StoredFact>> {
    const rows = await tx.fieldFact.findMany({ where: { companyId: actor.companyId, id: { in: facts.map(({ id }) => id) } }, include: factParts });
    if (rows.some((row) => row.jobId !== jobId || row.memberId !== actor.id)) throw new DomainError('conflict.duplicate');
    const known = new Map(rows.map((row) => [row.id, presentFact(row)]));
    // Another fact under a known id is not lost behind the first: it stays on its phone with the reason.
    if (facts.some((fact) => known.has(fact.id) && !isSame(fact, known.get(fact.id)?.fact))) throw new DomainError('conflict.duplicate');
    return known;
  }
}

function isSame(a: FieldFact, b: FieldFact | undefined): boolean {
  const told = (fact: FieldFact) => Buffer.from(canonicalBytes({ ...fact, deviceTime: new Date(fact.deviceTime).toISOString() }));
  return b !== undefined && told(a).equals(told(b));
}
