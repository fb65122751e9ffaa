import { photos, type PhotoMark } from '@yardfall/contracts';
import { useState } from 'react';
import { urlOf } from '../../../lib/api.ts';
import { useText } from '../../../lib/reader.tsx';
import { MarksOver } from './MarksOver.tsx';
import './photos.css';

interface MarkedProps {
  readonly jobId: string;
  readonly photoId: string;
  readonly marks: readonly PhotoMark[];
  readonly alt: string;
}

/** A photo with what was drawn over it, opened when wanted; its words are read out as well. */
export function Marked({ jobId, photoId, marks, alt }: MarkedProps) {
  const { t } = useText();
  const [open, setOpen] = useState(false);
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.words] : [])).join(', ');
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words === '' ? t('photos.withMarks') : t('photos.withWords', { words })}</summary>
      {open ? (
        <div className="marked">
          <img src={urlOf(photos.file, { params: { jobId, photoId, copy: 'view' } })} alt={alt} onLoad={({ currentTarget }) => setSize({ width: currentTarget.naturalWidth, height: currentTarget.naturalHeight })} />
          {size === null ? null : <MarksOver marks={marks} {...size} />}
        </div>
      ) : null}
    </details>
  );
}
