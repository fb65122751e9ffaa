import type { PhotoMark, Portal } from '@yardfall/contracts';
import { useState } from 'react';
import { Heading } from '../../../components/Heading.tsx';
import { MarksOver } from '../../../components/photo/MarksOver.tsx';
import { useText } from '../../../lib/reader.tsx';
import { photoAddress } from '../api/portal.ts';

export function Photos({ photos }: { readonly photos: Portal['photos'] }) {
  const { t } = useText();
  if (photos.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="photos">
      <Heading id="photos">{t('portal.photos')}</Heading>
      <ul className="drain-photos">
        {photos.map(({ id, note, takenAt, marks }) => {
          const at = t('portal.photo.at', { at: takenAt });
          return (
            <li key={id}>
              <figure>
                <Marked src={photoAddress(id)} alt={note || at} marks={marks} />
                <figcaption>{note ? <p className="photo-note">{note}</p> : null}<p className="faint">{at}</p></figcaption>
              </figure>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** With what the company drew over it; its words are read out as well. */
function Marked({ src, alt, marks }: { readonly src: string; readonly alt: string; readonly marks: readonly PhotoMark[] }) {
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.words] : []));
  return (
    <div className="marked">
      <img src={src} alt={[alt, ...words].join(', ')} loading="lazy" onLoad={({ currentTarget }) => setSize({ width: currentTarget.naturalWidth, height: currentTarget.naturalHeight })} />
      {size === null || marks.length === 0 ? null : <MarksOver marks={marks} {...size} />}
    </div>
  );
}
