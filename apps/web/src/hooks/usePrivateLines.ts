import { privateLines, type PrivateLines } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../lib/query.ts';

/** What the homeowner declared of their own lines; undefined until it was read. */
export function usePrivateLines(jobId: string): PrivateLines['lines'] | undefined {
  return useQuery({ ...read(privateLines.read, { params: { jobId } }), retry: false }).data?.data.lines;
}
