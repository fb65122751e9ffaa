import { FilePick } from '../../../components/FilePick.tsx';
import { useRoom } from '../../../components/PhotoPick.tsx';
import { useText } from '../../../lib/reader.tsx';
import { acceptedVideos, largestFilm } from '../../../lib/videos.ts';

interface FilmItProps {
  readonly disabled: boolean;
  readonly onFilm: (file: File) => void;
}

/** The camera as a film camera: how long it may run is said before, and on a phone without room for a film it does not open. */
export function FilmIt({ disabled, onFilm }: FilmItProps) {
  const { t } = useText();
  const isFull = useRoom(largestFilm)?.isFull ?? false;
  return (
    <FilePick accept={acceptedVideos} capture="environment" size="crew" label={t('photos.film')} words={t('photos.film.take')} hint={t('photos.film.limit')}
      error={isFull ? t('photos.film.full') : undefined} disabled={disabled || isFull} onPick={onFilm} />
  );
}
