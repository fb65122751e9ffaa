import { surveys, type BodyInput } from '@yardfall/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { call } from '../../../lib/api.ts';
import { keyOf, read } from '../../../lib/query.ts';

export function useSurveys(jobId: string) {
  return useQuery(read(surveys.list, { params: { jobId } }));
}

export interface StoreSurvey {
  /** Null for a new survey. */
  readonly surveyId: string | null;
  readonly version: number;
  readonly body: BodyInput<typeof surveys.create>;
}

export function useStoreSurvey(jobId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ surveyId, version, body }: StoreSurvey) =>
      surveyId === null ? call(surveys.create, { params: { jobId }, body }) : call(surveys.replace, { params: { jobId, surveyId }, body, ifMatch: `"${String(version)}"` }),
    onSuccess: () => queries.invalidateQueries({ queryKey: keyOf(surveys.list) }),
  });
}
