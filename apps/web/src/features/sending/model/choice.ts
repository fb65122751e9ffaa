import { largestPhoto, largestVideo } from '@yardfall/contracts';

/** Why a chosen file is not taken; null when it is. The office looks at the content again. */
export type Refusal = 'type' | 'photo' | 'video' | 'room';

interface Chosen {
  readonly type: string;
  readonly size: number;
}

const types = new Set(['image/jpeg', 'image/png', 'image/heic', 'image/heif', 'video/mp4', 'video/quicktime', 'video/webm']);

/** `bytesLeft`: what the link still takes, less what waits already. */
export function refusalOf({ type, size }: Chosen, bytesLeft: number): Refusal | null {
  if (!types.has(type)) return 'type';
  if (type.startsWith('image/') && size > largestPhoto) return 'photo';
  if (size > largestVideo) return 'video';
  return size > bytesLeft ? 'room' : null;
}

export const accepted = [...types].join(',');
