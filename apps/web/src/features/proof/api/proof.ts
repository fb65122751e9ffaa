import { checklists, jobs, proof, type BodyInput } from '@yardfall/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { v7 as uuidv7 } from 'uuid';
import { useMe } from '../../../hooks/useMe.ts';
import { call } from '../../../lib/api.ts';
import { keepProof } from '../../../lib/outbox.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { keyOf, read } from '../../../lib/query.ts';

export function useProofTests(jobId: string) {
  return useQuery(read(proof.list, { params: { jobId } }));
}

const changed = [proof.list, checklists.read, jobs.read, jobs.list];

/**
 * The test attaches itself to J1 of the checklist and may lift or set a hold. Where the office cannot be reached it stays on this phone
 * under the key of its first sending, and is sent like whatever else waits: an answer that was lost makes no second test.
 */
export function useRecordProof(jobId: string, onDone: () => void) {
  const queries = useQueryClient();
  const memberId = useMe().me?.id ?? '';
  const mutation = useMutation<void, Error, BodyInput<typeof proof.record>>({
    networkMode: 'always',
    mutationFn: async (test) => {
      const key = uuidv7();
      try {
        await call(proof.record, { params: { jobId }, body: test, idempotencyKey: key });
      } catch (error) {
        if (!(error instanceof ApiProblem) || !error.passing) throw error;
        await keepProof({ id: key, memberId, jobId, test });
      }
    },
    onSuccess: async () => {
      onDone();
      await Promise.all(changed.map((stale) => queries.invalidateQueries({ queryKey: keyOf(stale) })));
    },
  });
  return { write: mutation.mutate, busy: mutation.isPending, problem: mutation.error };
}
