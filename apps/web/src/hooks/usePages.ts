import type { Endpoint, QueryInput } from '@yardfall/contracts';
import { useInfiniteQuery } from '@tanstack/react-query';
import type { CallInput } from '../lib/api.ts';
import { readPages } from '../lib/query.ts';

/** A list that the office gives page by page: everything fetched so far, and a way to ask for older ones. */
export function usePages<E extends Endpoint>(endpoint: E, input: { readonly params?: CallInput<E>['params']; readonly query?: QueryInput<E> } = {}) {
  const query = useInfiniteQuery(readPages(endpoint, input));
  return {
    items: query.data?.pages.flatMap((page) => page.items) ?? [],
    pending: query.isPending,
    problem: query.error,
    more: query.hasNextPage ? () => void query.fetchNextPage() : null,
    again: () => void query.refetch(),
  };
}
