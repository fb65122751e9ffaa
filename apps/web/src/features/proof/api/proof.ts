import { checklists, jobs, proof } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useProofTests(jobId: string) {
  return useQuery(read(proof.list, { params: { jobId } }));
}

/** The test attaches itself to J1 of the checklist and may lift or set a hold. */
export function useRecordProof(onDone: () => void) {
  return useWrite(proof.record, { refreshes: [proof.list, checklists.read, jobs.read, jobs.list], onDone });
}
