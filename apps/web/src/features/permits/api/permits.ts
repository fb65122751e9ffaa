import { audit, jobs, permits } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { photosArrived } from '../../../lib/photosArrived.ts';
import { read } from '../../../lib/query.ts';

export function usePermits(jobId: string) {
  return useQuery(read(permits.read, { params: { jobId } }));
}

/** An answer moves the hold of the job and what is still missing for the release. */
const refreshes = [permits.read, jobs.releaseCheck, jobs.read, jobs.list, audit.list];

export function useAnswerPermits(onDone: () => void) {
  return useWrite(permits.answer, { first: ({ body }) => photosArrived(body.answers.map(({ photoId }) => photoId)), refreshes, onDone });
}

export function useAnswerOutlet(onDone: () => void) {
  return useWrite(permits.answerOutlet, { first: ({ body }) => photosArrived([body.photoId]), refreshes, onDone });
}
