import { audit, jobs, permits, photos } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function usePermits(jobId: string) {
  return useQuery(read(permits.read, { params: { jobId } }));
}

export function usePapers(jobId: string) {
  return useQuery(read(photos.list, { params: { jobId } }));
}

/** An answer moves the hold of the job and what is still missing for the release. */
const refreshes = [permits.read, jobs.releaseCheck, jobs.read, jobs.list, audit.list];

export function useAnswerPermits(onDone: () => void) {
  return useWrite(permits.answer, { refreshes, onDone });
}

export function useAnswerOutlet(onDone: () => void) {
  return useWrite(permits.answerOutlet, { refreshes, onDone });
}
