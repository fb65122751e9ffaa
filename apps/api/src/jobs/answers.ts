import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import type { Prisma } from '../generated/prisma/client.ts';

const answerParts = { recordedBy: { select: { name: true } } } satisfies Prisma.JobAnswerInclude;
export type AnswerRecord = Prisma.JobAnswerGetPayload<{ include: typeof answerParts }>;
type Topic = 'permit' | 'outlet' | 'privateLine';

export interface NewAnswer {
  readonly kind: string;
  readonly state: string;
  readonly number: string;
  readonly note: string;
  readonly on: string | null;
  readonly expiresOn: string | null;
  readonly photoId: string | null;
}

/** The latest answer to each question of a topic, by `kind` and what it is about. */
export async function latestAnswers(tx: Tx, actor: Actor, jobId: string, topic: Topic): Promise<ReadonlyMap<string, AnswerRecord>> {
  const rows = await tx.jobAnswer.findMany({ where: { companyId: actor.companyId, jobId, topic }, include: answerParts, orderBy: [{ at: 'asc' }, { id: 'asc' }] });
  return new Map(rows.map((row) => [answerKey(row.kind, row.about), row]));
}

export function answerKey(kind: string, about: string): string {
  return `${kind} ${about}`;
}

export async function addAnswers(tx: Tx, actor: Actor, jobId: string, topic: Topic, about: string, answers: readonly NewAnswer[]): Promise<void> {
  await requirePhotos(tx, actor, jobId, answers.flatMap(({ photoId }) => photoId ?? []));
  const date = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));
  await tx.jobAnswer.createMany({
    data: answers.map(({ kind, state, number, note, on, expiresOn, photoId }) => ({
      id: newId(), companyId: actor.companyId, jobId, topic, kind, about, state, number, note, onDate: date(on), expiresOn: date(expiresOn), photoId, recordedById: actor.id, at: actor.request.at,
    })),
  });
}

export async function requirePhotos(tx: Tx, actor: Actor, jobId: string, photoIds: readonly string[]): Promise<void> {
  const ids = [...new Set(photoIds)];
  const known = await tx.photo.count({ where: { companyId: actor.companyId, jobId, id: { in: ids } } });
  if (known < ids.length) throw new DomainError('notFound');
}
