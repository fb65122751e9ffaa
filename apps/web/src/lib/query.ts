import type { Endpoint, ParamsOf, QueryInput, ResponseOf } from '@yardfall/contracts';
import { queryOptions } from '@tanstack/react-query';
import { ask } from './answers.ts';
import type { Answer, CallInput, Part } from './api.ts';

export type ReadInput<E extends Endpoint> = Part<'params', ParamsOf<E>> & Part<'query', QueryInput<E>>;
type ReadArgs<E extends Endpoint> = object extends ReadInput<E> ? [input?: ReadInput<E>] : [input: ReadInput<E>];
type Call<E extends Endpoint> = (endpoint: E, input: CallInput<E>) => Promise<Answer<ResponseOf<E>>>;

/** Key of everything read from one endpoint, for invalidation after a write. */
export function keyOf(endpoint: Endpoint): readonly [string] {
  return [endpoint.id];
}

/** Query options of one GET endpoint: `useQuery(read(jobs.read, { params: { jobId } }))` gives {data, etag}. */
export function read<E extends Endpoint>(endpoint: E, ...[input]: ReadArgs<E>) {
  const asked: { readonly params?: unknown; readonly query?: unknown } = input ?? {};
  return queryOptions({
    queryKey: [endpoint.id, asked.params ?? null, asked.query ?? null] as const,
    queryFn: ({ signal }) => (ask as Call<E>)(endpoint, { ...asked, signal } as CallInput<E>),
  });
}
