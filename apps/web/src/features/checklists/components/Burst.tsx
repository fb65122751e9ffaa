import { useEffect, useRef, useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { useText } from '../../../lib/reader.tsx';
import { openCamera, shoot } from '../../../lib/camera.ts';

interface BurstProps {
  /** Photos that the step has, and how many it wants. */
  readonly taken: number;
  readonly needed: number;
  readonly disabled: boolean;
  readonly onShot: (file: File) => void;
}

/** Several photos in a row: the camera stays open, and every press of the shutter is one. */
export function Burst({ taken, needed, disabled, onShot }: BurstProps) {
  const { t } = useText();
  const [open, setOpen] = useState(false);
  if (!('mediaDevices' in navigator) || (!open && needed - taken < 2)) return null;
  return (
    <>
      <Button size="crew" wide disabled={disabled} onClick={() => setOpen(true)}>{t('checklists.burst')}</Button>
      <Dialog open={open} title={t('checklists.photoCount', { taken, needed })} size="crew" onClose={() => setOpen(false)}>
        <Finder onShot={onShot} />
      </Dialog>
    </>
  );
}

function Finder({ onShot }: Pick<BurstProps, 'onShot'>) {
  const { t } = useText();
  const video = useRef<HTMLVideoElement>(null);
  const [stream, setStream] = useState<MediaStream | null>(null);
  const [refused, setRefused] = useState(false);
  const [busy, setBusy] = useState(false);
  useEffect(() => {
    let opened: MediaStream | null = null;
    let gone = false;
    openCamera().then((now) => {
      opened = now;
      if (gone) stop(now);
      else setStream(now);
    }, () => setRefused(true));
    return () => {
      gone = true;
      if (opened !== null) stop(opened);
    };
  }, []);
  useEffect(() => {
    if (video.current !== null) video.current.srcObject = stream;
  }, [stream]);
  const press = () => {
    if (stream === null || video.current === null) return;
    setBusy(true);
    shoot(stream, video.current).then(onShot, () => setRefused(true)).finally(() => setBusy(false));
  };
  if (refused) return <p className="field-error" role="alert">{t('checklists.burst.refused')}</p>;
  return (
    <div className="stack finder">
      {/* oxlint-disable-next-line jsx-a11y/media-has-caption -- what the camera sees, without a sound */}
      <video ref={video} autoPlay playsInline muted aria-label={t('checklists.burst.sees')} />
      <Button kind="main" size="crew" wide disabled={stream === null || busy} onClick={press}>{t('checklists.burst.shoot')}</Button>
    </div>
  );
}

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
