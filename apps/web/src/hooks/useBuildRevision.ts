import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { designs, type Job } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../lib/query.ts';

export interface BuildRevision {
  readonly document: DesignDocument | null;
  readonly evaluation: Evaluation | null;
  readonly pending: boolean;
}

/** What is being built: the revision that the accepted offer and the owner's release set. */
export function useBuildRevision({ id: jobId, buildRevisionId }: Pick<Job, 'id' | 'buildRevisionId'>): BuildRevision {
  const { data, isLoading } = useQuery({ ...read(designs.read, { params: { jobId, revisionId: buildRevisionId ?? '' } }), enabled: buildRevisionId !== null, staleTime: 600_000 });
  return { document: (data?.data.document ?? null) as DesignDocument | null, evaluation: (data?.data.evaluation ?? null) as Evaluation | null, pending: isLoading };
}
