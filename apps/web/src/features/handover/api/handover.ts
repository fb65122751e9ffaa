import { checklists, company, handover, jobs, type Job } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useHandover(jobId: string) {
  return useQuery(read(handover.read, { params: { jobId } }));
}

/** What the phones measured is where the as-built levels come from. */
export function useChecklistForLevels({ id: jobId, buildRevisionId }: Pick<Job, 'id' | 'buildRevisionId'>) {
  return useQuery({ ...read(checklists.read, { params: { jobId } }), enabled: buildRevisionId !== null }).data?.data ?? null;
}

const monthsOfYear = 12;
const longestWarranty = 10;

/** Whole years of warranty by the company's settings; null until they are there. */
export function useUsualWarranty(asked: boolean): number | null {
  const { data } = useQuery({ ...read(company.read), enabled: asked });
  return data === undefined ? null : Math.min(longestWarranty, Math.max(1, Math.round(data.data.settings.warrantyMonths / monthsOfYear)));
}

export function useHandOver() {
  return useWrite(handover.complete, { refreshes: [handover.read, jobs.read, jobs.list] });
}
