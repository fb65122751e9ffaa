import type { Endpoint, QueryInput, ResponseOf } from '@yardfall/contracts';
import { useInfiniteQuery } from '@tanstack/react-query';
import { ask } from '../lib/answers.ts';
import type { CallInput, Answer } from '../lib/api.ts';

interface PageOf<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}

type ItemOf<E extends Endpoint> = ResponseOf<E> extends PageOf<infer T> ? T : never;

/** A list that the office gives page by page: everything fetched so far, and a way to ask for older ones. */
export function usePages<E extends Endpoint>(endpoint: E, input: { readonly params?: CallInput<E>['params']; readonly query?: QueryInput<E> } = {}) {
  const send = ask as (endpoint: E, input: CallInput<E>) => Promise<Answer<PageOf<ItemOf<E>>>>;
  const query = useInfiniteQuery({
    queryKey: [endpoint.id, input.params ?? null, input.query ?? null, 'pages'],
    queryFn: async ({ pageParam, signal }) => {
      const asked = { ...(input.query as object | undefined), ...(pageParam === null ? {} : { cursor: pageParam }) };
      return (await send(endpoint, { params: input.params, query: asked, signal } as unknown as CallInput<E>)).data;
    },
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.next,
  });
  return {
    items: query.data?.pages.flatMap((page) => page.items) ?? [],
    pending: query.isPending,
    problem: query.error,
    more: query.hasNextPage ? () => void query.fetchNextPage() : null,
    again: () => void query.refetch(),
  };
}
