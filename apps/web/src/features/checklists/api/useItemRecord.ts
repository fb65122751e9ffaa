import { useKeepFact, useKeepPhoto } from '../../../hooks/useRecord.ts';
import type { NewFact } from '../../../lib/outbox.ts';
import { seenOf, type FactBody } from '../model/evidence.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

/** Records facts and photos about one item; each follows all that is known of it. */
export function useItemRecord(list: ChecklistView, view: ItemView) {
  const { jobId, revisionId } = list;
  const facts = useKeepFact(jobId);
  const photos = useKeepPhoto(jobId);
  const { key, requirementHash, part } = view.item;
  const record = (body: FactBody, onDone?: () => void) =>
    facts.mutate({ ...body, revisionId, itemKey: key, requirementHash, seen: seenOf(view, list) } as NewFact, onDone ? { onSuccess: onDone } : {});
  const addPhoto = (file: File) =>
    photos.mutate({ file, itemKey: key, part, note: '', forCustomer: view.item.holdPoint !== null }, { onSuccess: ({ id, takenAt }) => record({ kind: 'photo', photoId: id, takenAt }) });
  return { record, addPhoto, busy: facts.isPending || photos.isPending, problem: facts.error ?? photos.error };
}

export type ItemRecord = ReturnType<typeof useItemRecord>;
