import { found, jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useFound(jobId: string) {
  return useQuery(read(found.list, { params: { jobId } }));
}

export function useAnswerFound(onDone: () => void) {
  return useWrite(found.answer, { refreshes: [found.list, jobs.read, jobs.list], onDone });
}
