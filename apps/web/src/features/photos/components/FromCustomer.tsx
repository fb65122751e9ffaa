import type { Job } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { usePhotos } from '../api/photos.ts';
import { galleryOf } from '../model/gallery.ts';
import { Gallery } from './Gallery.tsx';

/** Photos and videos of the rain that the customer sent, beside what they are looked at with; nothing while there are none. */
export function FromCustomer({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { data } = usePhotos(job.id);
  const list = galleryOf(job.id, data?.data.items.filter(({ fromCustomer }) => fromCustomer) ?? [], []);
  if (list.length === 0) return null;
  return (
    <section className="stack">
      <Heading level={3} aside={t('photos.count', { n: list.length })}>{t('photos.fromCustomerTitle')}</Heading>
      <Gallery jobId={job.id} timeZone={job.timeZone} list={list} />
    </section>
  );
}
