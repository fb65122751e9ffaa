import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { usePhotos, usePhotosNow } from '../../../hooks/usePhotosNow.ts';
import { useText } from '../../../lib/reader.tsx';
import { AddPhoto } from './AddPhoto.tsx';
import { Gallery } from './Gallery.tsx';
import { OneTap } from './OneTap.tsx';
import { OnSection } from './OnSection.tsx';

/** Photos and photo notes of a job. */
export function PhotosSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { error, isPending } = usePhotos(job.id);
  const list = usePhotosNow(job.id);
  const [adding, setAdding] = useState(false);
  if (isPending) return <Loading what={t('photos.loading')} />;
  const add = may('photos.add') && !adding ? <Button size="crew" onClick={() => setAdding(true)}>{t('photos.addNote')}</Button> : undefined;
  return (
    <div className="stack">
      <Heading level={3} aside={list.length > 0 ? t('photos.count', { n: list.length }) : undefined}>{t('photos.title')}</Heading>
      <ProblemNotice problem={error} />
      {may('photos.add') && !adding ? <OneTap jobId={job.id} /> : null}
      {adding ? <AddPhoto jobId={job.id} onDone={() => setAdding(false)} /> : null}
      {list.length === 0 && !adding ? <Empty what={t('photos.none')} why={t('photos.noneWhy')} step={add} /> : add ? <div>{add}</div> : null}
      <OnSection jobId={job.id} photos={list} />
      <Gallery jobId={job.id} timeZone={job.timeZone} list={list} />
    </div>
  );
}
