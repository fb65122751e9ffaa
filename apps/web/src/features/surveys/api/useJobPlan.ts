import type { DesignDocument } from '@yardfall/calc';
import { designs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { planRevision } from '../../../lib/planRevision.ts';
import { read } from '../../../lib/query.ts';

/** The design whose plan the pins of a survey stand on; null while nothing has a place. */
export function useJobPlan(jobId: string): DesignDocument | null {
  const list = useQuery(read(designs.list, { params: { jobId } }));
  const id = planRevision(list.data?.data.items ?? [])?.id ?? null;
  const { data } = useQuery({ ...read(designs.read, { params: { jobId, revisionId: id ?? '' } }), enabled: id !== null, staleTime: 600_000 });
  const document = (data?.data.document ?? null) as DesignDocument | null;
  if (document === null) return null;
  const { plan, spotLevels } = document.site;
  return (plan?.shapes.length ?? 0) > 0 || (plan?.picture ?? null) !== null || spotLevels.some(({ position }) => position !== null) ? document : null;
}
