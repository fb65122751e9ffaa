import type { Endpoint, ParamsOf, QueryInput, ResponseOf } from '@yardfall/contracts';
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
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

interface PageOf<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}

type ItemOf<E extends Endpoint> = ResponseOf<E> extends PageOf<infer T> ? T : never;

/** Query options of a list that is given page by page. */
export function readPages<E extends Endpoint>(endpoint: E, input: { readonly params?: CallInput<E>['params']; readonly query?: QueryInput<E> } = {}) {
  const send = ask as (endpoint: E, input: CallInput<E>) => Promise<Answer<PageOf<ItemOf<E>>>>;
  return infiniteQueryOptions({
    queryKey: [endpoint.id, input.params ?? null, input.query ?? null, 'pages'] as const,
    queryFn: async ({ pageParam, signal }) => {
      const asked = { ...(input.query as object | undefined), ...(pageParam === null ? {} : { cursor: pageParam }) };
      return (await send(endpoint, { params: input.params, query: asked, signal } as unknown as CallInput<E>)).data;
    },
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.next,
  });
}
