import { entryKind, may, type Role, type StoredSurveyFact, type SurveyEntryKind, type SurveyFact } from '@yardfall/contracts';

export interface Judgement {
  readonly verdict: StoredSurveyFact['verdict'];
  /** A mark; its sentence is `surveys.reason.<mark>`. */
  readonly reason: string | null;
}

/** What is known when a fact is judged; it is on record already, whatever comes out. */
export interface Circumstances {
  readonly deviceCutOff: boolean;
  readonly roles: readonly Role[];
  /** The job under whose address it came. */
  readonly jobId: string;
  /** The job of the survey that it names; null when there is no such survey yet. */
  readonly surveyJobId: string | null;
  /** The job is over: handed over or declined. */
  readonly jobClosed: boolean;
  /** The survey has the entry already. */
  readonly entryKnown: boolean;
  /** How many entries of its kind the survey has. */
  readonly entries: number;
}

/** How many of a kind a survey holds; what is single has no limit. */
export const mostEntries: Readonly<Partial<Record<SurveyEntryKind, number>>> = { reading: 500, point: 200, drainTest: 20, observation: 50, diagnosis: 200 };

const refused = (reason: string): Judgement => ({ verdict: 'refused', reason });

/** Whether a stored fact counts, and if not, why. */
export function judge(fact: SurveyFact, { deviceCutOff, roles, jobId, surveyJobId, jobClosed, entryKnown, entries }: Circumstances): Judgement {
  if (deviceCutOff) return { verdict: 'quarantined', reason: 'deviceCutOff' };
  if (fact.jobId !== jobId || (surveyJobId !== null && surveyJobId !== jobId)) return refused('otherJob');
  if (!may(roles, 'surveys.edit')) return refused('officeOnly');
  if (jobClosed) return { verdict: 'late', reason: 'jobClosed' };
  const most = mostEntries[entryKind(fact.entry) ?? 'begun'];
  return !entryKnown && most !== undefined && entries >= most ? refused('surveyFull') : { verdict: 'kept', reason: null };
}
