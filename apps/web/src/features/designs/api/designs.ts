import { designs, type BodyInput, type DraftOperation, type Revision } from '@yardfall/contracts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { usePages } from '../../../hooks/usePages.ts';
import { call } from '../../../lib/api.ts';
import { keyOf, read } from '../../../lib/query.ts';

export function useDesigns(jobId: string) {
  return useQuery(read(designs.list, { params: { jobId } }));
}

export function useRevision(jobId: string, revisionId: string | null) {
  return useQuery({ ...read(designs.read, { params: { jobId, revisionId: revisionId ?? '' } }), enabled: revisionId !== null });
}

function useStore(jobId: string) {
  const queries = useQueryClient();
  return async ({ data }: { readonly data: Revision }) => {
    const { queryKey } = read(designs.read, { params: { jobId, revisionId: data.id } });
    // A reading that began before this edit must not come after it and take it back.
    await queries.cancelQueries({ queryKey });
    // The answer to an edit is the revision as it now is; its version is what If-Match wants.
    queries.setQueryData(queryKey, { data, etag: `"${String(data.version)}"` });
    await Promise.all([queries.invalidateQueries({ queryKey: keyOf(designs.list) }), queries.invalidateQueries({ queryKey: keyOf(designs.history) })]);
  };
}

export function useCreateDesign(jobId: string) {
  const store = useStore(jobId);
  return useMutation({ mutationFn: (body: BodyInput<typeof designs.create>) => call(designs.create, { params: { jobId }, body }), onSuccess: store });
}

export function useRevise(jobId: string) {
  const store = useStore(jobId);
  return useMutation({
    mutationFn: ({ designId, fromRevisionId }: { readonly designId: string; readonly fromRevisionId: string }) =>
      call(designs.revise, { params: { jobId, designId }, body: { fromRevisionId } }),
    onSuccess: store,
  });
}

export interface Operate {
  readonly revisionId: string;
  readonly base: number;
  readonly operations: readonly DraftOperation[];
}

export function useOperate(jobId: string) {
  const store = useStore(jobId);
  return useMutation({
    mutationFn: ({ revisionId, base, operations }: Operate) => call(designs.operate, { params: { jobId, revisionId }, body: { base, operations: [...operations] } }),
    onSuccess: store,
  });
}

export function useAcknowledge(jobId: string, revisionId: string) {
  const store = useStore(jobId);
  return useMutation({
    mutationFn: (body: BodyInput<typeof designs.acknowledge>) => call(designs.acknowledge, { params: { jobId, revisionId }, body }),
    onSuccess: store,
  });
}

/** Edits of a draft, the newest first. */
export function useEdits(jobId: string, revisionId: string) {
  return usePages(designs.history, { params: { jobId, revisionId } });
}

/** The document that a draft began with. */
export function useStart(jobId: string, revisionId: string) {
  return useQuery({ ...read(designs.moment, { params: { jobId, revisionId, seq: 0 } }), staleTime: Infinity });
}

export function useMoment(jobId: string, revisionId: string) {
  return useMutation({ mutationFn: (seq: number) => call(designs.moment, { params: { jobId, revisionId, seq } }) });
}

export function useIssue(jobId: string, revisionId: string) {
  const store = useStore(jobId);
  return useMutation({ mutationFn: (etag: string) => call(designs.issue, { params: { jobId, revisionId }, body: {}, ifMatch: etag }), onSuccess: store });
}
