import type { Survey, SurveyContent } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';
import { reduceSurvey } from './reduction.rules.ts';

export const surveyParts = { createdBy: { select: { name: true } } } satisfies Prisma.SurveyInclude;

/** The reduction is made when it is read: the book is stored, what follows from it is not. */
export function presentSurvey(row: Prisma.SurveyGetPayload<{ include: typeof surveyParts }>): Survey {
  const content = JSON.parse(Buffer.from(row.content).toString('utf8')) as SurveyContent;
  return {
    id: row.id, jobId: row.jobId, name: row.name, content, sha256: row.sha256, reduction: reduceSurvey(content), version: row.version,
    createdAt: row.createdAt.toISOString(), updatedAt: row.updatedAt.toISOString(), by: row.createdBy.name,
  };
}
