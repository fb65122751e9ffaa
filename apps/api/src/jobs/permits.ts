import type { DesignDocument } from '@yardfall/calc';
import type { Permits } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';
import { storedDocument } from '../common/storedDocument.ts';
import { latestAnswers } from './answers.ts';
import { clearHolds, setHold } from './holds.ts';
import { gapsOf, permitsNow } from './permits.rules.ts';
import { dayAt } from './propertyDay.ts';

interface JobToDig {
  readonly id: string;
  readonly propertyId: string;
  readonly stage: string;
}

export async function permitsFor(tx: Tx, actor: Actor, job: JobToDig, document: DesignDocument | null): Promise<Omit<Permits, 'revisionId'>> {
  const { timeZone } = found(await tx.property.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: job.propertyId } }, select: { timeZone: true } }));
  const answered = { permits: await latestAnswers(tx, actor, job.id, 'permit'), outlets: await latestAnswers(tx, actor, job.id, 'outlet') };
  return permitsNow(document, answered, dayAt(actor.request.at, timeZone));
}

/** The design that would be dug: the accepted one, else the newest that is issued. */
export async function revisionToDig(tx: Tx, actor: Actor, jobId: string): Promise<{ readonly id: string; readonly document: DesignDocument } | null> {
  const { companyId } = actor;
  const accepted = await tx.offer.findFirst({ where: { companyId, jobId, status: 'accepted' }, orderBy: { acceptedAt: 'desc' }, select: { revision: true } });
  const row = accepted?.revision ?? (await tx.revision.findFirst({ where: { companyId, jobId, status: 'issued' }, orderBy: { issuedAt: 'desc' } }));
  return row === null ? null : { id: row.id, document: storedDocument(row.document) };
}

const waiting = ['accepted', 'released', 'installing'];

/** Writes or lifts the hold "permit" of a sold job, in the transaction that changed an answer or sold it. */
export async function holdForPermits(tx: Tx, actor: Actor, job: JobToDig): Promise<void> {
  await clearHolds(tx, actor, job.id, ['jobs.hold.permits']);
  if (!waiting.includes(job.stage)) return;
  const revision = await revisionToDig(tx, actor, job.id);
  const count = gapsOf(await permitsFor(tx, actor, job, revision?.document ?? null)).length;
  if (count > 0) await setHold(tx, actor, job.id, { waitsFor: 'permit', code: 'jobs.hold.permits', params: { count } });
}
