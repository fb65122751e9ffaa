import { useKeepFact, useKeepPhoto, type KeptPhoto } from '../../../hooks/useRecord.ts';
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
  /** One picture for this item and for whatever else it shows. */
  const addPhoto = (file: File, also: readonly ItemView[] = []) => {
    const shown = [view, ...also];
    const shows = ({ id, takenAt }: KeptPhoto): NewFact[] => shown.map((one) => ({ kind: 'photo', photoId: id, takenAt, revisionId, itemKey: one.item.key, requirementHash: one.item.requirementHash, seen: seenOf(one, list) }));
    photos.mutate({ file, itemKey: key, part, note: '', forCustomer: shown.some(({ item }) => item.holdPoint !== null), shows });
  };
  return { record, addPhoto, busy: facts.isPending || photos.isPending, problem: facts.error ?? photos.error };
}

export type ItemRecord = ReturnType<typeof useItemRecord>;
