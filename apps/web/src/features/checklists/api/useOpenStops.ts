import { found, type Stop } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { read } from '../../../lib/query.ts';

/** What the crew found and nobody has answered yet, in the office and on this phone. */
export function useOpenStops(jobId: string, released: boolean): readonly Stop[] {
  const { data } = useQuery({ ...read(found.list, { params: { jobId } }), enabled: released });
  const outbox = useOutbox();
  return useMemo(() => {
    const here = outbox.flatMap((entry) => (entry.kind === 'found' && entry.jobId === jobId && entry.refused === null ? [entry.report] : []));
    return [...(data?.data.items ?? []).filter(({ status }) => status === 'open'), ...here].map(({ kind, part }) => ({ kind, part }));
  }, [data, outbox, jobId]);
}
