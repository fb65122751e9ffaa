import { checklists, jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

/** There is no list before a job is released. */
export function useChecklist(jobId: string, released: boolean) {
  return useQuery({ ...read(checklists.read, { params: { jobId } }), enabled: released });
}

export function useBegin(onDone: () => void) {
  return useWrite(checklists.begin, { refreshes: [checklists.read, jobs.list], onDone });
}

export function useWaive(onDone: () => void) {
  return useWrite(checklists.waive, { refreshes: [checklists.read, jobs.read, jobs.list], onDone });
}
