import { photos } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { photosNow, type PhotoNow } from '../lib/photosNow.ts';
import { read } from '../lib/query.ts';
import { useOutbox } from './useOutbox.ts';

/** The office's list, asked again while copies are being made. */
export function usePhotos(jobId: string) {
  return useQuery({ ...read(photos.list, { params: { jobId } }), refetchInterval: ({ state }) => (state.data?.data.items.some(({ ready, unshown }) => !ready && !unshown) ? 4000 : false) });
}

/** All photos of a job as they stand, the newest first. */
export function usePhotosNow(jobId: string): readonly PhotoNow[] {
  const { data } = usePhotos(jobId);
  const outbox = useOutbox();
  return useMemo(() => photosNow(jobId, data?.data.items ?? [], outbox), [jobId, data, outbox]);
}
