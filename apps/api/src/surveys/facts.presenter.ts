import { SurveyFact, type StoredSurveyFact } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const surveyFactParts = { member: { select: { name: true } } } satisfies Prisma.SurveyFactInclude;
export type SurveyFactRecord = Prisma.SurveyFactGetPayload<{ include: typeof surveyFactParts }>;

export function presentSurveyFact(row: SurveyFactRecord): StoredSurveyFact {
  return {
    fact: SurveyFact.parse(JSON.parse(Buffer.from(row.body).toString('utf8'))), memberId: row.memberId, by: row.member.name, serverTime: row.serverTime.toISOString(),
    verdict: row.verdict as StoredSurveyFact['verdict'], reason: row.reason,
  };
}
