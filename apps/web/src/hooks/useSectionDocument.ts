import type { DesignDocument } from '@yardfall/calc';
import { designs, jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { planRevision } from '../lib/planRevision.ts';
import { read } from '../lib/query.ts';

/** The design in whose section something of a job is placed: what is being built, else what was begun last; null while there is none. */
export function useSectionDocument(jobId: string): DesignDocument | null {
  const params = { jobId };
  const job = useQuery({ ...read(jobs.read, { params }), staleTime: 600_000 }).data?.data;
  const drawn = useQuery({ ...read(designs.list, { params }), enabled: job !== undefined && job.buildRevisionId === null, staleTime: 600_000 }).data?.data.items;
  const revisionId = job?.buildRevisionId ?? planRevision(drawn ?? [])?.id ?? null;
  const { data } = useQuery({ ...read(designs.read, { params: { jobId, revisionId: revisionId ?? '' } }), enabled: revisionId !== null, staleTime: 600_000 });
  return (data?.data.document ?? null) as DesignDocument | null;
}
