import { photos } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useOutbox } from '../hooks/useOutbox.ts';
import { useKeepPhoto } from '../hooks/useRecord.ts';
import { read } from '../lib/query.ts';
import { useText } from '../lib/reader.tsx';
import { KeepProblem } from './KeepProblem.tsx';
import { Photo } from './Photo.tsx';
import { PhotoPick } from './PhotoPick.tsx';
import { Select } from './Select.tsx';

interface PhotoFieldProps {
  readonly jobId: string;
  readonly timeZone: string;
  readonly label: string;
  /** What stands under a photo that is taken here. */
  readonly note: string;
}

const none = 'none';

/** A photo taken now, or one of the job that is there already, in the office or on this phone; a form field by the name `photoId`. */
export function PhotoField({ jobId, timeZone, label, note }: PhotoFieldProps) {
  const { t } = useText();
  const [chosen, setChosen] = useState(none);
  const keep = useKeepPhoto(jobId);
  const there = usePhotosThere(jobId);
  const take = (file: File) => keep.mutate({ file, itemKey: null, part: null, note, forCustomer: false }, { onSuccess: ({ id }) => setChosen(id) });
  const choices = there.map((one) => ({ value: one.id, label: t('ui.pick.at', { at: one.takenAt, note: one.note }, { timeZone }) }));
  return (
    <div className="stack">
      <PhotoPick label={label} words={t(chosen === none ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} disabled={keep.isPending} onPick={take} />
      {choices.length > 0 ? <Select label={t('ui.pick.there')} optional choices={[{ value: none, label: t('ui.pick.none') }, ...choices]} value={chosen} onChange={setChosen} /> : null}
      {chosen === none ? null : <Photo jobId={jobId} photoId={chosen} alt={label} />}
      <KeepProblem problem={keep.error} />
      <input type="hidden" name="photoId" value={chosen === none ? '' : chosen} />
    </div>
  );
}

interface There {
  readonly id: string;
  readonly takenAt: string;
  readonly note: string;
}

/** Newest first. */
function usePhotosThere(jobId: string): readonly There[] {
  const { data } = useQuery(read(photos.list, { params: { jobId } }));
  const office = data?.data.items ?? [];
  const here = useOutbox().flatMap((entry) => (entry.kind === 'photo' && entry.jobId === jobId && entry.refused === null && office.every(({ id }) => id !== entry.id) ? [entry.meta] : []));
  return [...office, ...here].toSorted((a, b) => Date.parse(b.takenAt) - Date.parse(a.takenAt));
}
