import type { Job } from '@yardfall/contracts';
import { section, type SectionOptions } from '@yardfall/drawing';
import { memo } from 'react';
import { Drawing, type DrawingSize } from './Drawing.tsx';
import { PhotoPins } from './photo/PhotoPins.tsx';
import { pinsOf } from './photo/place.ts';
import { useBuildRevision } from '../hooks/useBuildRevision.ts';
import { usePhotosNow } from '../hooks/usePhotosNow.ts';
import { withRest } from '../lib/partStates.ts';

interface PartsDrawingProps {
  readonly job: Pick<Job, 'id' | 'buildRevisionId'>;
  readonly states: SectionOptions['states'];
  /** What stands how, in a sentence. */
  readonly title: string;
  readonly height: number;
  /** Makes the parts that have a name pressable. */
  readonly onSelect?: (part: string) => void;
  readonly names?: Readonly<Record<string, string>>;
}

/** The section of what is being built as the crew reads it, small and without lettering, with the photos that were taken of it. */
export const PartsDrawing = memo(function PartsDrawing({ job, states, title, height, onSelect, names }: PartsDrawingProps) {
  const { document } = useBuildRevision(job);
  const photos = usePhotosNow(job.id);
  if (document === null) return null;
  const all = withRest(document.system.parts, states);
  const pins = pinsOf(photos);
  const over = pins.length === 0 ? {} : { over: (display: ReturnType<typeof section>, size: DrawingSize) => <PhotoPins jobId={job.id} photos={photos} display={display} size={size} inRow /> };
  return <Drawing title={title} height={() => height} display={(size) => section(document, null, { ...size, detail: 'mini', states: all, gravity: false, utilities: false, pins })} {...over} {...(onSelect ? { onSelect, partName: (part: string) => names?.[part] ?? document.system.parts.find(({ id }) => id === part)?.name ?? part } : {})} />;
});
