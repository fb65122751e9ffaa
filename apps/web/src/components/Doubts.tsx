import { Button } from './Button.tsx';
import { Notice } from './Notice.tsx';
import { doubtsOf, type Look } from '../lib/look.ts';
import { useText } from '../lib/reader.tsx';

interface DoubtsProps {
  readonly look: Look | null;
  /** Takes the photo back; without it there is only the word. */
  readonly onDrop?: () => void;
  /** Keeps it in spite of the doubt; without it, it is kept already. */
  readonly onKeep?: () => void;
}

/** A photo that looks soft or small: a person looks again and decides; nothing is held up. */
export function Doubts({ look, onDrop, onKeep }: DoubtsProps) {
  const { t } = useText();
  const doubts = look === null ? [] : doubtsOf(look);
  if (doubts.length === 0) return null;
  const drop = onDrop === undefined ? undefined : <Button size="crew" onClick={onDrop}>{t('photos.drop')}</Button>;
  return (
    <Notice severity="caution" action={onKeep === undefined ? drop : <div className="row"><Button size="crew" onClick={onKeep}>{t('photos.keepDoubtful')}</Button>{drop}</div>}>
      {doubts.map((doubt) => <p key={doubt}>{t(`photos.doubt.${doubt}`)}</p>)}
    </Notice>
  );
}
