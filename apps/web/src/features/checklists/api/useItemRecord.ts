import { useKeepFacts, useKeepPhoto, type KeptPhoto } from '../../../hooks/useRecord.ts';
import type { NewFact } from '../../../lib/outbox.ts';
import { seenOf, type FactBody } from '../model/evidence.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

/** Records facts and photos about one item; each follows all that is known of it. */
export function useItemRecord(list: ChecklistView, view: ItemView) {
  const { jobId, revisionId } = list;
  const facts = useKeepFacts(jobId);
  const photos = useKeepPhoto(jobId);
  const factOf = (body: FactBody, { item, ...rest }: ItemView = view) =>
    ({ ...body, revisionId, itemKey: item.key, requirementHash: item.requirementHash, seen: seenOf({ item, ...rest }, list) }) as NewFact;
  const record = (bodies: readonly FactBody[], onDone?: () => void) => facts.mutate(bodies.map((body) => factOf(body)), onDone ? { onSuccess: onDone } : {});
  const photoFact = ({ id, takenAt }: KeptPhoto, of: ItemView = view) => factOf({ kind: 'photo', photoId: id, takenAt }, of);
  /** A picture that is doubted is kept as well; it proves nothing until it is said to count. */
  const keepPhoto = (file: File, counts: boolean, note = ''): Promise<KeptPhoto> =>
    photos.mutateAsync({ file, itemKey: view.item.key, part: view.item.part, note, forCustomer: view.item.holdPoint !== null, ...(counts ? { shows: (photo: KeptPhoto) => [photoFact(photo)] } : {}) });
  /** A picture that is kept already counts for a step: this one, or another that it shows too. */
  const count = (photo: KeptPhoto, of: ItemView = view) => facts.mutate([photoFact(photo, of)]);
  return { record, keepPhoto, count, busy: facts.isPending || photos.isPending, problem: facts.error ?? photos.error };
}

export type ItemRecord = ReturnType<typeof useItemRecord>;
