import type { Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { photoAddress } from '../api/portal.ts';

export function Photos({ photos }: { readonly photos: Portal['photos'] }) {
  const { t } = useText();
  if (photos.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="photos">
      <Heading id="photos">{t('portal.photos')}</Heading>
      <ul className="drain-photos">
        {photos.map(({ id, note, takenAt }) => {
          const at = t('portal.photo.at', { at: takenAt });
          return (
            <li key={id}>
              <figure>
                <img src={photoAddress(id)} alt={note || at} loading="lazy" />
                <figcaption>{note ? <p>{note}</p> : null}<p className="faint">{at}</p></figcaption>
              </figure>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
