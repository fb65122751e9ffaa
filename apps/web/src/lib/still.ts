/** How long a browser may take to open a film [ms], and the moment of it that is looked at [s]; ours. */
const patience = 5000;
const moment = 0.1;

/** A picture from the beginning of a film; null where this browser cannot open it, or not in time. It holds what is seen and nothing of where. */
export async function stillOf(film: Blob): Promise<File | null> {
  const url = URL.createObjectURL(film);
  try {
    return await Promise.race([seen(url), new Promise<null>((resolve) => { setTimeout(() => resolve(null), patience); })]);
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(url);
  }
}

async function seen(url: string): Promise<File | null> {
  const video = document.createElement('video');
  Object.assign(video, { muted: true, playsInline: true, preload: 'auto', src: `${url}#t=${String(moment)}` });
  await new Promise<void>((resolve, reject) => {
    video.addEventListener('loadeddata', () => resolve());
    video.addEventListener('error', () => reject(new Error('the film cannot be opened')));
    video.load();
  });
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [video.videoWidth, video.videoHeight];
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  const taken = await new Promise<Blob | null>((resolve) => { canvas.toBlob(resolve, 'image/jpeg', 0.9); });
  return taken === null ? null : new File([taken], 'still.jpg', { type: 'image/jpeg', lastModified: Date.now() });
}
