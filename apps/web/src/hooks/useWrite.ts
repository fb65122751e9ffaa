import type { Endpoint, ResponseOf } from '@yardfall/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { v7 as uuidv7 } from 'uuid';
import { call, type Answer, type CallInput } from '../lib/api.ts';
import { keyOf } from '../lib/query.ts';

export interface WriteOptions<E extends Endpoint> {
  /** What the office has to be asked for again after the write. */
  readonly refreshes?: readonly Endpoint[];
  /** What has to be in the office before. */
  readonly first?: (input: CallInput<E>) => Promise<void>;
  readonly onDone?: (data: ResponseOf<E>) => void;
}

/**
 * One write to the office. The same input sent again after a failure carries the same Idempotency-Key,
 * so a write whose answer was lost is not made twice.
 */
export function useWrite<E extends Endpoint>(endpoint: E, options: WriteOptions<E> = {}) {
  const queries = useQueryClient();
  const last = useRef({ input: '', key: '' });
  const mutation = useMutation<Answer<ResponseOf<E>>, Error, CallInput<E>>({
    mutationFn: async (input) => {
      await options.first?.(input);
      const { params, body } = input as CallInput<Endpoint>;
      const same = JSON.stringify([params, body]);
      if (last.current.input !== same) last.current = { input: same, key: uuidv7() };
      const send = call as (endpoint: E, input: CallInput<E>) => Promise<Answer<ResponseOf<E>>>;
      return send(endpoint, { idempotencyKey: last.current.key, ...input });
    },
    onSuccess: async ({ data }) => {
      last.current = { input: '', key: '' };
      await Promise.all((options.refreshes ?? []).map((stale) => queries.invalidateQueries({ queryKey: keyOf(stale) })));
      options.onDone?.(data);
    },
  });
  return {
    write: mutation.mutate,
    writeNow: mutation.mutateAsync,
    busy: mutation.isPending,
    done: mutation.isSuccess,
    problem: mutation.error,
    answer: mutation.data?.data,
    forget: mutation.reset,
  };
}
