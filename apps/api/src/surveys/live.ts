import { canonicalBytes, foldSurvey, type FoldedSurvey, sha256Hex, type StoredSurveyFact, type SurveyBase, type SurveyContent, type SurveyEntryKind } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import type { Survey } from '../generated/prisma/client.ts';
import { presentSurveyFact, surveyFactParts } from './facts.presenter.ts';

/** A survey with all that was ever recorded of it in memory, for judging one fact after the other. */
export class LiveSurvey {
  readonly id: string;
  readonly row: Survey | null;
  readonly facts: StoredSurveyFact[];
  readonly base: SurveyBase | null;
  private known: FoldedSurvey | null = null;

  constructor(id: string, row: Survey | null, facts: StoredSurveyFact[]) {
    this.id = id;
    this.row = row;
    this.facts = facts;
    this.base = row === null ? null : baseOf(row, facts);
  }

  add(fact: StoredSurveyFact): void {
    this.facts.push(fact);
    if (fact.verdict === 'kept') this.known = null;
  }

  folded(): FoldedSurvey {
    this.known ??= foldSurvey(this.facts, this.base);
    return this.known;
  }

  has(entry: string): boolean {
    return this.folded().entries.some(({ key }) => key === entry);
  }

  count(kind: SurveyEntryKind | null): number {
    return this.folded().entries.filter((entry) => entry.kind === kind).length;
  }
}

/** In the transaction of a caller who holds the lock of the job when it writes. A survey of another job has no facts to be seen. */
export async function loadSurvey(tx: Tx, actor: Actor, surveyId: string): Promise<LiveSurvey> {
  const row = await tx.survey.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: surveyId } } });
  const facts = await tx.surveyFact.findMany({ where: { companyId: actor.companyId, surveyId }, include: surveyFactParts });
  return new LiveSurvey(surveyId, row, facts.map(presentSurveyFact));
}

/** A survey that was stored as a whole begins with what it is when its first fact comes. */
export function baseOf(row: Survey, facts: readonly Pick<StoredSurveyFact, 'verdict'>[]): SurveyBase | null {
  if (row.base !== null) return JSON.parse(Buffer.from(row.base).toString('utf8')) as SurveyBase;
  return facts.some(({ verdict }) => verdict === 'kept') ? null : { name: row.name, content: contentOf(row) };
}

export function contentOf({ content }: Pick<Survey, 'content'>): SurveyContent {
  return JSON.parse(Buffer.from(content).toString('utf8')) as SurveyContent;
}

export async function storedForm(content: SurveyContent): Promise<{ content: Uint8Array<ArrayBuffer>; sha256: string }> {
  const bytes = canonicalBytes(content);
  return { content: bytes, sha256: await sha256Hex(bytes) };
}
