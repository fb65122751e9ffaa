import { photos } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../../../lib/query.ts';

/** Asked again while copies are being made. */
export function usePhotos(jobId: string) {
  return useQuery({ ...read(photos.list, { params: { jobId } }), refetchInterval: ({ state }) => (state.data?.data.items.some(({ ready }) => !ready) ? 4000 : false) });
}
