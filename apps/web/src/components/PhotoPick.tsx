import { useEffect, useState } from 'react';
import { useOutbox } from '../hooks/useOutbox.ts';
import { useText } from '../lib/reader.tsx';
import { acceptedPictures } from '../lib/pictureType.ts';
import { roomOnPhone, type Room } from '../lib/room.ts';
import type { FieldWords } from './Field.tsx';
import { FilePick } from './FilePick.tsx';

interface PhotoPickProps extends FieldWords {
  readonly onPick: (file: File) => void;
  /** All that were chosen at once; without it one. */
  readonly onPickAll?: (files: readonly File[]) => void;
  readonly words?: string;
  readonly disabled?: boolean;
  readonly main?: boolean;
  /** Beside a camera that is the main control: without its own heading, as words. */
  readonly quiet?: boolean;
  /** Its own words say what it is. */
  readonly bare?: boolean;
  /** A picture that is on the phone already; without it the camera opens. */
  readonly fromStore?: boolean;
}

/** Fewer than this, and the camera says how many more fit (ours). */
const few = 500;

/** The camera as one large control. The room is looked at before the shutter: on a full phone no camera opens. */
export function PhotoPick({ words, fromStore = false, disabled = false, hint, error, ...rest }: PhotoPickProps) {
  const { t } = useText();
  const room = useRoom();
  const isFull = room?.isFull ?? false;
  const left = room?.photos ?? null;
  const said = left === null || left >= few || isFull ? hint : <>{hint} {t('photos.room', { n: left })}</>;
  return (
    <FilePick {...rest} hint={said} error={isFull ? t('errors.phone.full') : error} disabled={disabled || isFull} size="crew" accept={acceptedPictures} words={words ?? t('ui.phone.takePhoto')}
      {...(fromStore ? {} : { capture: 'environment' as const })} />
  );
}

/** Asked again whenever something was kept or has left. */
export function useRoom(bytes?: number): Room | null {
  const waiting = useOutbox().length;
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    let gone = false;
    roomOnPhone(bytes).then((now) => gone || setRoom(now), () => undefined);
    return () => {
      gone = true;
    };
  }, [waiting, bytes]);
  return room;
}
