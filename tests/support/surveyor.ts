import { randomUUID } from 'node:crypto';
import { foldSurvey, type FoldedSurvey, type PlacedReading, type ResponseOf, type Survey, type StoredSurveyFact, type SurveyDraft, type SurveyFact, type surveyFacts } from '@yardfall/contracts';
import { newId } from '../../apps/api/src/common/ids.ts';
import type { Person } from './actors.ts';
import { get, post } from './builders.ts';

/** A phone that records surveys: its own sequence, and no memory but what it is given. */
export class Surveyor {
  readonly id = randomUUID();
  private seq = 0;
  readonly person: Person;
  readonly jobId: string;

  private constructor(person: Person, jobId: string) {
    this.person = person;
    this.jobId = jobId;
  }

  static async of(person: Person, jobId: string): Promise<Surveyor> {
    const phone = new Surveyor(person, jobId);
    await post(person.agent, '/devices', { id: phone.id, name: 'phone' }, 201);
    return phone;
  }

  fact(surveyId: string, draft: SurveyDraft, changes: Partial<SurveyFact> = {}): SurveyFact {
    this.seq += 1;
    return { ...draft, id: newId(), deviceId: this.id, seq: this.seq, deviceTime: '2026-03-02T14:00:00Z', factVersion: 1, jobId: this.jobId, surveyId, ...changes } as SurveyFact;
  }

  reading(surveyId: string, reading: Partial<PlacedReading> = {}, seen: readonly string[] = []): SurveyFact {
    const value = { id: newId(), point: 'P', backsight: null, intermediate: 1, foresight: null, direct: null, note: '', place: 1, pin: null, photoIds: [], ...reading };
    return this.fact(surveyId, { kind: 'reading', entry: `reading:${value.id}`, seen: [...seen], value });
  }

  send(facts: readonly SurveyFact[]): Promise<{ facts: StoredSurveyFact[]; surveys: Survey[] }> {
    return post(this.person.agent, `/jobs/${this.jobId}/survey-facts`, { facts }, 200);
  }
}

export function recordedOf(person: Person, jobId: string): Promise<ResponseOf<typeof surveyFacts.list>> {
  return get(person.agent, `/jobs/${jobId}/survey-facts`);
}

/** What a phone makes of all that the office has. */
export async function foldedOf(person: Person, jobId: string, surveyId: string): Promise<FoldedSurvey> {
  const { surveys, facts } = await recordedOf(person, jobId);
  return foldSurvey(facts.filter(({ fact }) => fact.surveyId === surveyId), surveys.find((survey) => survey.surveyId === surveyId)?.base ?? null);
}
