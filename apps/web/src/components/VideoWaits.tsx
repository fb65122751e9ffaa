import { useSyncExternalStore } from 'react';
import { sendOverAny, type OutboxPhoto } from '../lib/outbox.ts';
import { onSentShares, sentShares } from '../lib/sent.ts';
import { useText } from '../lib/reader.tsx';
import { isFreeLink } from '../lib/videos.ts';
import { Button } from './Button.tsx';
import { sizeText } from './FilePick.tsx';
import './Photo.css';

/** How far a video of this phone has come, and the one press that sends it over any network. */
export function VideoWaits({ entry }: { readonly entry: OutboxPhoto }) {
  const { t, language } = useText();
  const share = useSyncExternalStore(onSentShares, sentShares).get(entry.id);
  const goes = entry.now === true || isFreeLink();
  const size = sizeText(entry.file.size, language);
  return (
    <span className="video-waits">
      <span className="faint" role="status">{share !== undefined ? t('ui.waits.partSent', { n: Math.floor(share * 100) }) : goes ? t('photos.videoGoes') : t('photos.videoWaits')}</span>
      {goes ? null : <Button size="crew" onClick={() => void sendOverAny(entry)}>{t('photos.videoSendNow', { size })}</Button>}
    </span>
  );
}
