import { found } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { read } from '../lib/query.ts';
import { stopsNow, type StopNow } from '../lib/stops.ts';
import { useMe } from './useMe.ts';
import { useOutbox } from './useOutbox.ts';

/** What stopped work on a job and waits for an answer, in the office and on this phone; the oldest first. */
export function useStops(jobId: string, enabled = true): readonly StopNow[] {
  const { data } = useQuery({ ...read(found.list, { params: { jobId } }), enabled });
  const outbox = useOutbox();
  const memberId = useMe().me?.id ?? null;
  return useMemo(() => stopsNow(data?.data.items ?? [], outbox, jobId, memberId), [data, outbox, jobId, memberId]);
}
