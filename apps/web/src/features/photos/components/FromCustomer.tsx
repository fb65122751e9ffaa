import type { Job } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { usePhotosNow } from '../../../hooks/usePhotosNow.ts';
import { Gallery } from './Gallery.tsx';

/** Photos and videos of the rain that the customer sent, beside what they are looked at with; nothing while there are none. */
export function FromCustomer({ job }: { readonly job: Job }) {
  const { t } = useText();
  const list = usePhotosNow(job.id).filter(({ fromCustomer }) => fromCustomer);
  if (list.length === 0) return null;
  return (
    <section className="stack">
      <Heading level={3} aside={t('photos.count', { n: list.length })}>{t('photos.fromCustomerTitle')}</Heading>
      <Gallery jobId={job.id} timeZone={job.timeZone} list={list} />
    </section>
  );
}
