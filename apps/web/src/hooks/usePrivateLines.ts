import { privateLines, type PrivateLines } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { privateLinesHere } from '../lib/answersHere.ts';
import { read } from '../lib/query.ts';
import { useOutbox } from './useOutbox.ts';

/** What the homeowner declared of their own lines, with what is on this phone; undefined until it was read. */
export function usePrivateLines(jobId: string): PrivateLines['lines'] | undefined {
  const entries = useOutbox();
  const lines = useQuery({ ...read(privateLines.read, { params: { jobId } }), retry: false }).data?.data.lines;
  return lines === undefined ? undefined : privateLinesHere(lines, entries, jobId);
}
