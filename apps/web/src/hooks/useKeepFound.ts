import type { BodyInput, found } from '@yardfall/contracts';
import { useMutation } from '@tanstack/react-query';
import { v7 as uuidv7 } from 'uuid';
import { keepFound } from '../lib/outbox.ts';
import { useMe } from './useMe.ts';

export type NewStop = Pick<BodyInput<typeof found.report>, 'kind' | 'hit'>;

/** Work has stopped, at this moment: kept at once, and told in more words later. Answers with the id of the report. */
export function useKeepFound(jobId: string) {
  const memberId = useMe().me?.id ?? '';
  return useMutation<string, Error, NewStop>({
    networkMode: 'always',
    mutationFn: async (stop) => {
      const id = uuidv7();
      await keepFound({ id, memberId, jobId, report: { hit: null, ...stop, id, at: new Date().toISOString(), part: null, measure: null, note: '', photoIds: [] } });
      return id;
    },
  });
}
