import { useEffect, useState } from 'react';
import { Notice } from '../../../components/Notice.tsx';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { roomOnPhone, type Room } from '../../../lib/room.ts';
import { useText } from '../../../lib/reader.tsx';

/** Fewer photos than a day of work takes (ours): it is said while there is still time to do something. */
const few = 40;

/** The room left on this phone, in photos. */
export function RoomMeter() {
  const { t } = useText();
  const waiting = useOutbox().length;
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    roomOnPhone().then(setRoom, () => setRoom(null));
  }, [waiting]);
  if (room === null || room.photos === null) return <p className="faint">{t('ui.waits.roomUnknown')}</p>;
  if (room.isFull) return <Notice severity="stop"><p>{t('errors.phone.full')}</p></Notice>;
  return (
    <>
      {room.photos < few ? <Notice severity="caution"><p>{t('ui.waits.roomShort', { n: room.photos })}</p></Notice> : <p>{t('ui.waits.room', { n: room.photos })}</p>}
      {room.stays ? null : <p className="faint">{t('ui.waits.mayBeCleared')}</p>}
    </>
  );
}
