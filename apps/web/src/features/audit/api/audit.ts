import { audit } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { usePages } from '../../../hooks/usePages.ts';
import { read } from '../../../lib/query.ts';

export function useTrail(jobId: string) {
  return usePages(audit.list, { query: { jobId, limit: 50 } });
}

/** Recomputes every seal of the company, so only when it is asked for. */
export function useVerify(asked: boolean) {
  return useQuery({ ...read(audit.verify), enabled: asked, staleTime: 0 });
}
