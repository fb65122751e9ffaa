import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { doubtsOf, type Look } from '../../../lib/look.ts';
import { useText } from '../../../lib/reader.tsx';

interface DoubtsProps {
  readonly look: Look | null;
  /** Takes the photo back; without it there is only the word. */
  readonly onDrop?: () => void;
}

/** A photo that looks soft or small: a person looks again and decides; nothing is held up. */
export function Doubts({ look, onDrop }: DoubtsProps) {
  const { t } = useText();
  const doubts = look === null ? [] : doubtsOf(look);
  if (doubts.length === 0) return null;
  return (
    <Notice severity="caution" action={onDrop === undefined ? undefined : <Button size="crew" onClick={onDrop}>{t('photos.drop')}</Button>}>
      {doubts.map((doubt) => <p key={doubt}>{t(`photos.doubt.${doubt}`)}</p>)}
    </Notice>
  );
}
