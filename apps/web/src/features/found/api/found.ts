import { designs, found, jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useFound(jobId: string) {
  return useQuery(read(found.list, { params: { jobId } }));
}

/** A draft from the build revision; the design part of the page shows it. */
export function useDraftForFound(onDone: () => void) {
  return useWrite(found.draft, { refreshes: [found.list, designs.list, jobs.read], onDone });
}

export function useAnswerFound(onDone: () => void) {
  return useWrite(found.answer, { refreshes: [found.list, jobs.read, jobs.list], onDone });
}
