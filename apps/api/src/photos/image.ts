import sharp from 'sharp';
import { DomainError } from '../common/errors.ts';

/** 80 megapixels: more than any phone takes, less than a decompression bomb wants. */
const maxPixels = 80_000_000;
const options = { limitInputPixels: maxPixels, failOn: 'error', sequentialRead: true } as const;

export interface ImageFacts {
  readonly mediaType: 'image/jpeg' | 'image/png';
  /** As it is looked at: the orientation that the camera noted is applied. */
  readonly width: number;
  readonly height: number;
}

export interface Copy {
  readonly bytes: Buffer;
  readonly mediaType: 'image/webp';
  readonly width: number;
  readonly height: number;
}

export const copySizes = { view: 1600, thumb: 320 } as const;
export type CopyKind = keyof typeof copySizes;

/** The type by the first bytes, never by the name that was sent. */
export function sniff(bytes: Uint8Array): ImageFacts['mediaType'] | null {
  const starts = (...head: number[]) => head.every((byte, index) => bytes[index] === byte);
  if (starts(0xff, 0xd8, 0xff)) return 'image/jpeg';
  return starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a) ? 'image/png' : null;
}

/** Decodes every pixel: what cannot be shown whole is refused before anything is stored. */
export async function inspect(bytes: Uint8Array): Promise<ImageFacts> {
  const mediaType = sniff(bytes);
  if (mediaType === null) throw new DomainError('photo.notAnImage', { reason: 'type' });
  const image = sharp(bytes, options);
  try {
    const { width, height, format, orientation = 1 } = await image.metadata();
    if (width * height > maxPixels) throw new DomainError('photo.tooLarge', { pixels: width * height, limit: maxPixels });
    if (`image/${format}` !== mediaType) throw new DomainError('photo.notAnImage', { reason: 'type' });
    await image.stats();
    return orientation >= 5 ? { mediaType, width: height, height: width } : { mediaType, width, height };
  } catch (error) {
    if (error instanceof DomainError) throw error;
    if (error instanceof Error && /pixel limit/i.test(error.message)) throw new DomainError('photo.tooLarge', { limit: maxPixels }, [], { cause: error });
    throw new DomainError('photo.notAnImage', { reason: 'unreadable' }, [], { cause: error });
  }
}

/** A smaller copy, turned upright, with nothing in it but the picture: no place, no camera. */
export async function copyOf(bytes: Uint8Array, kind: CopyKind): Promise<Copy> {
  const size = copySizes[kind];
  const { data, info } = await sharp(bytes, options)
    .autoOrient()
    .resize(size, size, { fit: 'inside', withoutEnlargement: true })
    .webp({ quality: kind === 'view' ? 82 : 75 })
    .toBuffer({ resolveWithObject: true });
  return { bytes: data, mediaType: 'image/webp', width: info.width, height: info.height };
}
