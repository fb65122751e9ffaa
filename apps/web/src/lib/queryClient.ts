import { QueryClient } from '@tanstack/react-query';
import { ApiProblem } from './problem.ts';

/** Asks again only where asking again can help: never after a clear refusal. */
export function makeQueryClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        // Without a signal the question is asked all the same: this device may know the last answer.
        networkMode: 'always',
        retry: (failures, error) => failures < 3 && error instanceof ApiProblem && error.passing,
        retryDelay: (attempt) => Math.min(1000 * 2 ** attempt, 8000),
        staleTime: 10_000,
        refetchOnWindowFocus: true,
      },
      // Nor does a write wait for a signal: who pressed is told at once that the office is out of reach.
      mutations: { retry: false, networkMode: 'always' },
    },
  });
}
