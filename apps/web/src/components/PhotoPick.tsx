import { useText } from '../lib/reader.tsx';
import type { FieldWords } from './Field.tsx';
import { FilePick } from './FilePick.tsx';

interface PhotoPickProps extends FieldWords {
  readonly onPick: (file: File) => void;
  readonly words?: string;
  readonly disabled?: boolean;
  /** A picture that is on the phone already; without it the camera opens. */
  readonly fromStore?: boolean;
}

/** The camera as one large control. */
export function PhotoPick({ words, fromStore = false, ...rest }: PhotoPickProps) {
  const { t } = useText();
  return <FilePick {...rest} size="crew" accept="image/jpeg,image/png" words={words ?? t('ui.phone.takePhoto')} {...(fromStore ? {} : { capture: 'environment' as const })} />;
}
