import { rain, type BodyInput } from '@yardfall/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { call } from '../../../lib/api.ts';
import { keyOf, read } from '../../../lib/query.ts';

export function useRainTables(jobId: string) {
  return useQuery(read(rain.list, { params: { jobId } }));
}

export function useUploadRain(jobId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ name, file }: { readonly name: string; readonly file: File }) => call(rain.upload, { params: { jobId }, body: { name }, file, fileName: file.name }),
    onSuccess: () => queries.invalidateQueries({ queryKey: keyOf(rain.list) }),
  });
}

export function useTypeRain(jobId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: BodyInput<typeof rain.type>) => call(rain.type, { params: { jobId }, body }),
    onSuccess: () => queries.invalidateQueries({ queryKey: keyOf(rain.list) }),
  });
}

export function useStorm(jobId: string, tableId: string, returnPeriod: number) {
  return useQuery(read(rain.storm, { params: { jobId, tableId }, query: { returnPeriod } }));
}
