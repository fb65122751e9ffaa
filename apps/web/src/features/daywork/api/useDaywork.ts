import { daywork, foldDaywork, type Daywork, type StoredDaywork } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useMe } from '../../../hooks/useMe.ts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { read } from '../../../lib/query.ts';

export interface DayworkNow {
  readonly now: number;
  readonly pending: boolean;
  readonly problem: unknown;
  readonly all: Daywork;
}

/** What was noted of a job, in the office and on this phone. */
export function useDaywork(jobId: string): DayworkNow {
  const { data, error, isPending } = useQuery(read(daywork.list, { params: { jobId } }));
  const { me } = useMe();
  const outbox = useOutbox();
  const now = useMinute();
  const all = useMemo(() => {
    const here = outbox.flatMap((one): StoredDaywork[] => (one.kind === 'daywork' && one.jobId === jobId && one.refused === null ? [{ entry: one.entry, memberId: one.memberId, by: me?.name ?? '', serverTime: one.entry.at }] : []));
    return foldDaywork([...(data?.data.items ?? []), ...here], now);
  }, [data, outbox, jobId, now, me?.name]);
  return { now, pending: isPending, problem: error, all };
}
