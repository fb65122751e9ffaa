import { foldSurvey, surveyFacts, type FoldedSurvey, type StoredSurveyFact } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { read } from '../lib/query.ts';
import { useOutbox } from './useOutbox.ts';

export interface FieldSurvey {
  /** What the office has and what is on this phone, folded together. */
  readonly survey: FoldedSurvey;
  /** Keys of the entries of which something is on this phone only. */
  readonly onPhone: ReadonlySet<string>;
  /** On record in the office, but not counted, with the reason. */
  readonly notCounted: readonly StoredSurveyFact[];
  readonly pending: boolean;
  readonly problem: unknown;
}

/** A survey as its facts make it, with or without a signal. Record into it with `useKeepSurveyFact`. */
export function useFieldSurvey(jobId: string, surveyId: string): FieldSurvey {
  const { data, error, isPending } = useQuery(read(surveyFacts.list, { params: { jobId } }));
  const outbox = useOutbox();
  return useMemo(() => {
    const office = (data?.data.facts ?? []).filter(({ fact }) => fact.surveyId === surveyId);
    const here = outbox.flatMap((entry) => (entry.kind === 'surveyFact' && entry.fact.surveyId === surveyId && entry.refused === null ? [entry.fact] : []));
    const base = data?.data.surveys.find((one) => one.surveyId === surveyId)?.base ?? null;
    return {
      survey: foldSurvey([...office, ...here.map((fact) => ({ fact, verdict: 'kept' as const }))], base),
      onPhone: new Set(here.map(({ entry }) => entry)), notCounted: office.filter(({ verdict }) => verdict !== 'kept'), pending: isPending, problem: error,
    };
  }, [data, outbox, surveyId, isPending, error]);
}
