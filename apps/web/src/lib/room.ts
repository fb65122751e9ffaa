/** Bytes of a phone's photo where nobody knows better: a common camera (ours). */
const usualPhoto = 5_000_000;
/** The phone needs room to work in (ours): below it nothing more is taken. */
const spare = 50_000_000;

export interface Room {
  /** Photos that still fit; null when the browser does not say. */
  readonly photos: number | null;
  readonly isFull: boolean;
  /** The browser has promised not to clear what is kept here. */
  readonly stays: boolean;
}

/** How many photos still fit on this phone. */
export async function roomOnPhone(photoBytes = usualPhoto): Promise<Room> {
  const storage = storageOf();
  if (storage === null) return { photos: null, isFull: false, stays: false };
  const { quota, usage } = await storage.estimate();
  const stays = await storage.persisted();
  if (quota === undefined || usage === undefined) return { photos: null, isFull: false, stays };
  const photos = photosIn(quota - usage, photoBytes);
  return { photos, isFull: photos === 0, stays };
}

export function photosIn(free: number, photoBytes: number): number {
  return Math.max(0, Math.floor((free - spare) / photoBytes));
}

/** Asked once something is kept here: a browser that is short of room clears what nobody asked it to keep. */
export async function askToStay(): Promise<boolean> {
  const storage = storageOf();
  if (storage === null) return false;
  return (await storage.persisted()) || (await storage.persist());
}

/** Only a page that came over https (or from this machine) has it. */
function storageOf(): StorageManager | null {
  return 'storage' in navigator && typeof navigator.storage.estimate === 'function' ? navigator.storage : null;
}
