/** The camera that looks away from the person, as sharp as it gets. */
export function openCamera(): Promise<MediaStream> {
  return navigator.mediaDevices.getUserMedia({ audio: false, video: { facingMode: { ideal: 'environment' }, width: { ideal: 4032 }, height: { ideal: 3024 } } });
}

interface StillCamera {
  readonly takePhoto: () => Promise<Blob>;
}
type StillCameraOf = new (track: MediaStreamTrack) => StillCamera;

/** One picture of an open camera: a still one where the browser takes them, else the frame that is shown. */
export async function shoot(stream: MediaStream, shown: HTMLVideoElement): Promise<File> {
  const taken = (await still(stream).catch(() => null)) ?? (await frame(shown));
  return new File([taken], `${String(Date.now())}.jpg`, { type: 'image/jpeg', lastModified: Date.now() });
}

async function still(stream: MediaStream): Promise<Blob | null> {
  const Still = (globalThis as { readonly ImageCapture?: StillCameraOf }).ImageCapture;
  const [track] = stream.getVideoTracks();
  if (Still === undefined || track === undefined) return null;
  const taken = await new Still(track).takePhoto();
  return taken.type === 'image/jpeg' ? taken : null;
}

async function frame(shown: HTMLVideoElement): Promise<Blob> {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [shown.videoWidth, shown.videoHeight];
  canvas.getContext('2d')?.drawImage(shown, 0, 0);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob === null ? reject(new Error('the camera shows nothing')) : resolve(blob)), 'image/jpeg', 0.92);
  });
}
