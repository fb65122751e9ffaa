import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { usePhotosOfJob } from '../api/locates.ts';

/** One of the photos that stand in the record of the job; a form field by the name `photoId`. */
export function MarksPhoto({ jobId, timeZone }: { readonly jobId: string; readonly timeZone: string }) {
  const { t } = useText();
  const { data } = usePhotosOfJob(jobId);
  const photos = (data?.data.items ?? []).map(({ id, takenAt, note }) => ({ value: id, label: t('locates.photoAt', { at: takenAt, note }, { timeZone }) }));
  if (photos.length === 0) return null;
  return <Select label={t('locates.photo')} name="photoId" optional choices={[{ value: '', label: t('locates.photoNone') }, ...photos]} />;
}
