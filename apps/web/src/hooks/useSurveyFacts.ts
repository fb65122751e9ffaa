import { foldSurvey, surveyFacts, type JudgedSurveyFact, type SurveyBase, type SurveyFact } from '@yardfall/contracts';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useMe } from './useMe.ts';
import { useOutbox } from './useOutbox.ts';
import { keepSurveyFact, outboxNow, type FactDraft, type OutboxEntry } from '../lib/outbox.ts';
import { read } from '../lib/query.ts';

/** One survey as office and phone know it together. */
export interface SurveyOnPhone {
  readonly id: string;
  readonly base: SurveyBase | null;
  readonly facts: readonly JudgedSurveyFact[];
  /** Keys of the entries of which something is on this phone only. */
  readonly waiting: readonly string[];
}

interface Stored {
  readonly surveys: readonly { readonly surveyId: string; readonly base: SurveyBase | null }[];
  readonly facts: readonly JudgedSurveyFact[];
}

const none: Stored = { surveys: [], facts: [] };

function waitingFacts(entries: readonly OutboxEntry[], jobId: string): SurveyFact[] {
  return entries.flatMap((entry) => (entry.kind === 'surveyFact' && entry.jobId === jobId && entry.refused === null ? [entry.fact] : []));
}

/** Surveys by their id, which are in the order in which they began. */
function together(stored: Stored, waiting: readonly SurveyFact[]): SurveyOnPhone[] {
  const ids = [...new Set([...stored.surveys.map(({ surveyId }) => surveyId), ...stored.facts.map(({ fact }) => fact.surveyId), ...waiting.map(({ surveyId }) => surveyId)])].sort();
  return ids.map((id) => {
    const own = waiting.filter(({ surveyId }) => surveyId === id);
    const before = stored.facts.filter(({ fact }) => fact.surveyId === id);
    return {
      id, base: stored.surveys.find(({ surveyId }) => surveyId === id)?.base ?? null, waiting: own.map(({ entry }) => entry),
      facts: [...before, ...own.map((fact): JudgedSurveyFact => ({ fact, verdict: 'kept' }))],
    };
  });
}

export interface SurveyFactsHere {
  readonly pending: boolean;
  readonly problem: unknown;
  readonly surveys: readonly SurveyOnPhone[];
  /** Writes on this phone what follows from the survey as it is at that moment; done when the phone has it. */
  readonly keep: (surveyId: string, drafts: (now: SurveyOnPhone | undefined) => readonly FactDraft[]) => Promise<void>;
}

/** The surveys of a job as their facts make them, with or without a signal, and how to record into one. */
export function useSurveyFacts(jobId: string): SurveyFactsHere {
  const memberId = useMe().me?.id ?? '';
  const queries = useQueryClient();
  const query = read(surveyFacts.list, { params: { jobId } });
  const { data, error, isPending, fetchStatus } = useQuery(query);
  const entries = useOutbox();
  const stored = data?.data ?? none;
  const surveys = useMemo(() => together(stored, waitingFacts(entries, jobId)), [stored, entries, jobId]);
  const keep: SurveyFactsHere['keep'] = async (surveyId, drafts) => {
    const now = () => together(queries.getQueryData(query.queryKey)?.data ?? none, waitingFacts(outboxNow().filter((entry) => entry.memberId === memberId), jobId)).find(({ id }) => id === surveyId);
    for (const draft of drafts(now())) {
      const survey = now();
      const seen = survey === undefined ? [] : foldSurvey(survey.facts, survey.base).entries.find(({ key }) => key === draft.entry)?.seen ?? [];
      await keepSurveyFact(memberId, jobId, surveyId, { ...draft, seen: [...seen] });
    }
  };
  // Out of reach there is nothing to wait for: what this phone holds is shown.
  const waits = isPending && fetchStatus === 'fetching' && surveys.length === 0;
  return { pending: waits, problem: data === undefined && error !== null && navigator.onLine ? error : null, surveys, keep };
}
