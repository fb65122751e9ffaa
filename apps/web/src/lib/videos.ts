import type { OutboxEntry, OutboxPhoto } from './outbox.ts';

/** Most bytes of a film from a step (ours): about a minute of a phone's video, and what its page still reads in one go. The office takes more. */
export const largestFilm = 100_000_000;

const types = new Set(['video/mp4', 'video/quicktime', 'video/webm']);
export const acceptedVideos = 'video/*';

/** The type of a video that is kept; null for any other file. Recorders write how it is coded after the type. The office looks at the content again. */
export function videoType({ type }: Pick<File, 'type'>): string | null {
  const plain = type.split(';')[0] ?? '';
  return types.has(plain) ? plain : null;
}

export type OutboxVideo = OutboxPhoto & { readonly file: { readonly type: `video/${string}` } };

export function isVideo(entry: OutboxEntry): entry is OutboxVideo {
  return entry.kind === 'photo' && entry.file.type.startsWith('video/');
}

/** The video that an entry is, or names; null for all else, which waits for no video. */
export function videoOf(entry: OutboxEntry, videos: ReadonlySet<string>): string | null {
  const id = entry.kind === 'photo' ? entry.id : entry.kind === 'photoMore' ? entry.photoId : entry.kind === 'fact' && entry.fact.kind === 'photo' ? entry.fact.photoId : null;
  return id !== null && videos.has(id) ? id : null;
}

interface Connection {
  readonly type?: string;
  readonly saveData?: boolean;
}

/** Whether a video may go by itself: only over a network that the browser itself calls Wi-Fi or a cable. Where it says nothing, a person says so. */
export function isFreeLink(connection: Connection | undefined = (globalThis as { readonly navigator?: { readonly connection?: Connection } }).navigator?.connection): boolean {
  return connection !== undefined && connection.saveData !== true && (connection.type === 'wifi' || connection.type === 'ethernet');
}
