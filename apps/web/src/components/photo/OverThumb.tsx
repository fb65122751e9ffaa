import { usePhotosNow } from '../../hooks/usePhotosNow.ts';
import { MarksOver } from './MarksOver.tsx';
import './photo.css';

interface OverThumbProps {
  readonly jobId: string;
  readonly photoId: string;
  readonly width: number;
  readonly height: number;
}

/** What was drawn over a photo, over its small picture as well. */
export function OverThumb({ jobId, photoId, ...size }: OverThumbProps) {
  const marks = usePhotosNow(jobId).find(({ id }) => id === photoId)?.marks ?? [];
  return marks.length === 0 ? null : <span className="thumb-marks"><MarksOver marks={marks} {...size} cut /></span>;
}
