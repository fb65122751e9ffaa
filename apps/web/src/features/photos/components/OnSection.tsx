import { lazy, Suspense } from 'react';
import type { PhotoNow } from '../../../lib/photosNow.ts';

/** Brings the drawing along, so that it is fetched where something is placed. */
const PinnedSection = lazy(() => import('../../../components/photo/PinnedSection.tsx').then((one) => ({ default: one.PinnedSection })));

/** Where the photos of a job were taken, in the section; nothing before one is placed. */
export function OnSection({ jobId, photos }: { readonly jobId: string; readonly photos: readonly PhotoNow[] }) {
  if (photos.every(({ point, part }) => point === null && part === null)) return null;
  return <Suspense fallback={null}><PinnedSection jobId={jobId} photos={photos} /></Suspense>;
}
