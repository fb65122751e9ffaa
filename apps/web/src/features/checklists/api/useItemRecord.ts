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
  const recordOf = (other: ItemView, body: FactBody) =>
    facts.mutateAsync({ ...body, revisionId, itemKey: other.item.key, requirementHash: other.item.requirementHash, seen: seenOf(other, list) } as NewFact);
  /** One picture for this item and for whatever else it shows. */
  const addPhoto = (file: File, also: readonly ItemView[] = []) => {
    const onSuccess = async ({ id, takenAt }: KeptPhoto) => {
      for (const one of [view, ...also]) await recordOf(one, { kind: 'photo', photoId: id, takenAt });
    };
    photos.mutate({ file, itemKey: key, part, note: '', forCustomer: [view, ...also].some(({ item }) => item.holdPoint !== null) }, {
      // What went wrong is told by `problem`; the photo itself is kept.
      onSuccess: (kept) => void onSuccess(kept).catch(() => undefined),
    });
  };
  return { record, addPhoto, busy: facts.isPending || photos.isPending, problem: facts.error ?? photos.error };
}

export type ItemRecord = ReturnType<typeof useItemRecord>;
