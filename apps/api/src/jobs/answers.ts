import type { KeptAnswer } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import { byOurClock, clockBehind } from '../common/phoneClock.ts';
import type { Prisma } from '../generated/prisma/client.ts';

const answerParts = { recordedBy: { select: { name: true } } } satisfies Prisma.JobAnswerInclude;
export type AnswerRecord = Prisma.JobAnswerGetPayload<{ include: typeof answerParts }>;
type Topic = 'permit' | 'outlet' | 'privateLine';

/** When an answer was given, and by the clock of which phone; without one it was given as it arrived. */
interface When {
  readonly at: Date;
  readonly deviceTime: string | null;
  /** [s] */
  readonly clockBehind: number;
}

export interface NewAnswer {
  readonly kind: string;
  readonly state: string;
  readonly number: string;
  readonly note: string;
  readonly on: string | null;
  readonly expiresOn: string | null;
  readonly photoId: string | null;
  /** A phone kept it and sends it now; it may send it twice. */
  readonly kept?: KeptAnswer | undefined;
  readonly when?: When;
}

/** The latest answer to each question of a topic, by `kind` and what it is about. */
export async function latestAnswers(tx: Tx, actor: Actor, jobId: string, topic: Topic): Promise<ReadonlyMap<string, AnswerRecord>> {
  const rows = await tx.jobAnswer.findMany({ where: { companyId: actor.companyId, jobId, topic }, include: answerParts, orderBy: [{ at: 'asc' }, { id: 'asc' }] });
  return new Map(rows.map((row) => [answerKey(row.kind, row.about), row]));
}

export function answerKey(kind: string, about: string): string {
  return `${kind} ${about}`;
}

/** @returns those that were not on record already */
export async function addAnswers(tx: Tx, actor: Actor, jobId: string, topic: Topic, about: string, answers: readonly NewAnswer[]): Promise<readonly NewAnswer[]> {
  const news = await notOnRecord(tx, actor, { jobId, topic, about }, answers);
  await requirePhotos(tx, actor, jobId, news.flatMap(({ photoId }) => photoId ?? []));
  const date = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));
  await tx.jobAnswer.createMany({
    data: news.map(({ kind, state, number, note, on, expiresOn, photoId, kept, when }) => ({
      id: kept?.id ?? newId(), companyId: actor.companyId, jobId, topic, kind, about, state, number, note, onDate: date(on), expiresOn: date(expiresOn), photoId, recordedById: actor.id,
      ...(when ?? whenKept(kept, actor.request.at)),
    })),
  });
  return news;
}

function whenKept(kept: KeptAnswer | undefined, now: Date): When {
  if (kept === undefined) return { at: now, deviceTime: null, clockBehind: 0 };
  const behind = clockBehind(now, kept.sentAt);
  return { at: byOurClock(kept.at, behind, now), deviceTime: kept.at, clockBehind: behind };
}

/** An answer whose receipt was lost comes again by the same id, and is taken once. */
async function notOnRecord(tx: Tx, actor: Actor, asked: { readonly jobId: string; readonly topic: Topic; readonly about: string }, answers: readonly NewAnswer[]): Promise<readonly NewAnswer[]> {
  const ids = answers.flatMap(({ kept }) => kept?.id ?? []);
  if (ids.length === 0) return answers;
  const known = new Map((await tx.jobAnswer.findMany({ where: { companyId: actor.companyId, id: { in: ids } } })).map((row) => [row.id, row]));
  return answers.filter(({ kept, kind, state }) => {
    const row = known.get(kept?.id ?? '');
    if (row === undefined) return true;
    const same = row.jobId === asked.jobId && row.topic === asked.topic && row.about === asked.about && row.kind === kind && row.state === state && row.recordedById === actor.id;
    if (!same) throw new DomainError('conflict.duplicate');
    return false;
  });
}

export async function requirePhotos(tx: Tx, actor: Actor, jobId: string, photoIds: readonly string[]): Promise<void> {
  const ids = [...new Set(photoIds)];
  const known = await tx.photo.count({ where: { companyId: actor.companyId, jobId, id: { in: ids } } });
  if (known < ids.length) throw new DomainError('notFound');
}
