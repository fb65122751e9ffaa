import { permits } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../../../lib/query.ts';

export function usePermits(jobId: string) {
  return useQuery(read(permits.read, { params: { jobId } }));
}
