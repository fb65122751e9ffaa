import { designs, studies } from '@yardfall/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { call } from '../../../lib/api.ts';
import { keyOf, read } from '../../../lib/query.ts';

/** How often a page looks at a study that waits or runs [ms]. */
const lookEvery = 1500;

export function useStudies(jobId: string, revisionId: string) {
  return useQuery({
    ...read(studies.list, { params: { jobId, revisionId } }),
    refetchInterval: ({ state }) => (state.data?.data.items.some(({ status }) => status === 'waiting' || status === 'running') === true ? lookEvery : false),
  });
}

export function useStudy(jobId: string, studyId: string) {
  return useQuery({ ...read(studies.read, { params: { jobId, studyId } }), staleTime: Infinity });
}

export function useAskOptions() {
  return useWrite(studies.options, { refreshes: [studies.list] });
}

export function useAskRecord() {
  return useWrite(studies.record, { refreshes: [studies.list] });
}

export function useStopStudy() {
  return useWrite(studies.stop, { refreshes: [studies.list] });
}

export function useRainRecords() {
  return useQuery(read(studies.records));
}

export function useUploadRecord() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ name, file }: { readonly name: string; readonly file: File }) => call(studies.uploadRecord, { body: { name }, file, fileName: file.name }),
    onSuccess: () => queries.invalidateQueries({ queryKey: keyOf(studies.records) }),
  });
}

export function useOpenVariant() {
  return useWrite(designs.create, { refreshes: [designs.list] });
}
