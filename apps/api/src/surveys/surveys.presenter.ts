import { entryKind, type Survey } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';
import { reduceSurvey } from './reduction.rules.ts';

export const surveyParts = { createdBy: { select: { name: true } } } satisfies Prisma.SurveyInclude;

/** The reduction is made when it is read: the book is stored, what follows from it is not. */
export function presentSurvey(row: Prisma.SurveyGetPayload<{ include: typeof surveyParts }>): Survey {
  const content = JSON.parse(Buffer.from(row.content).toString('utf8')) as Survey['content'];
  const reduction = reduceSurvey(content);
  return {
    id: row.id, jobId: row.jobId, name: row.name, content, sha256: row.sha256, reduction: { ...reduction, problems: [...reduction.problems, ...disputes(row.disputed)] }, version: row.version,
    createdAt: row.createdAt.toISOString(), updatedAt: row.updatedAt.toISOString(), by: row.createdBy.name, disputed: row.disputed,
  };
}

/** Nobody should trust a book of which two phones said different things without being told. */
function disputes(keys: readonly string[]): Survey['reduction']['problems'] {
  return keys.map((key) => ({ code: 'surveys.disputed', readingId: entryKind(key) === 'reading' ? (/^reading:([^#]+)/.exec(key)?.[1] ?? null) : null, params: {} }));
}
