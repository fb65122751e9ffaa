import type { Plan } from '@yardfall/calc';
import { photos } from '@yardfall/contracts';
import { shownScale, type Projection } from '@yardfall/drawing';
import { useState } from 'react';
import { urlOf } from '../lib/api.ts';

interface PlanBackdropProps {
  readonly jobId: string;
  readonly picture: NonNullable<Plan['picture']>;
  readonly view: Projection;
}

/** The picture below a plan: the viewing copy, or the original until it is made. One without a known length has a size on the sheet too, so that it can be tied. */
export function PlanBackdrop({ jobId, picture, view }: PlanBackdropProps) {
  const [copy, setCopy] = useState<'view' | 'original'>('view');
  const scale = shownScale(picture);
  const [x, y] = view.toPixels([0, picture.height * scale]);
  const [x1, y1] = view.toPixels([picture.width * scale, 0]);
  const href = urlOf(photos.file, { params: { jobId, photoId: picture.photo, copy } });
  return <image href={href} x={x} y={y} width={x1 - x} height={y1 - y} preserveAspectRatio="none" opacity={0.75} onError={() => setCopy('original')} />;
}
