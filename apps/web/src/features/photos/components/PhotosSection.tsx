import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { usePhotos } from '../api/photos.ts';
import { galleryOf } from '../model/gallery.ts';
import { AddPhoto } from './AddPhoto.tsx';
import { Gallery } from './Gallery.tsx';
import { OneTap } from './OneTap.tsx';

/** Photos and photo notes of a job. */
export function PhotosSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = usePhotos(job.id);
  const outbox = useOutbox();
  const [adding, setAdding] = useState(false);
  if (isPending) return <Loading what={t('photos.loading')} />;
  const list = galleryOf(job.id, data?.data.items ?? [], outbox);
  const add = may('photos.add') && !adding ? <Button size="crew" onClick={() => setAdding(true)}>{t('photos.addNote')}</Button> : undefined;
  return (
    <div className="stack">
      <Heading level={3} aside={list.length > 0 ? t('photos.count', { n: list.length }) : undefined}>{t('photos.title')}</Heading>
      <ProblemNotice problem={error} />
      {may('photos.add') && !adding ? <OneTap jobId={job.id} /> : null}
      {adding ? <AddPhoto jobId={job.id} onDone={() => setAdding(false)} /> : null}
      {list.length === 0 && !adding ? <Empty what={t('photos.none')} why={t('photos.noneWhy')} step={add} /> : add ? <div>{add}</div> : null}
      <Gallery jobId={job.id} timeZone={job.timeZone} list={list} />
    </div>
  );
}
