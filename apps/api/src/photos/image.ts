import { open } from 'node:fs/promises';
import { largestPhoto, type MediaType } from '@yardfall/contracts';
import sharp from 'sharp';
import { DomainError } from '../common/errors.ts';
import { boxesOf, isWholeWebm } from './boxes.ts';
import { headBytes, isVideo, sniff } from './media.ts';

/** 80 megapixels: more than any phone takes, less than a decompression bomb wants. */
export const maxPixels = 80_000_000;
const options = { limitInputPixels: maxPixels, failOn: 'error', sequentialRead: true } as const;

export interface MediaFacts {
  readonly mediaType: MediaType;
  /** As it is looked at, the orientation that the camera noted applied [pixels]; null for a video. */
  readonly width: number | null;
  readonly height: number | null;
}

export interface Copy {
  readonly bytes: Buffer;
  readonly mediaType: 'image/webp';
  readonly width: number;
  readonly height: number;
}

/** Pixels as a decoder gives them. */
export interface RawPicture {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

export const copySizes = { view: 1600, thumb: 320 } as const;
export type CopyKind = keyof typeof copySizes;

/** As soon as the first bytes are there: what is no photo or video, or a photo that is too large, need not be sent to its end. */
export function requireTaken(head: Uint8Array, length: number): MediaType {
  const mediaType = sniff(head);
  if (mediaType === null) throw new DomainError('photo.notAnImage', { reason: 'type' });
  if (!isVideo(mediaType) && length > largestPhoto) throw new DomainError('photo.tooLarge', { limit: largestPhoto });
  return mediaType;
}

/** Looks at a whole file on the disk: every pixel of a JPEG or PNG is decoded, of the rest the structure is followed to its end. What cannot be shown whole is refused before anything is stored. */
export async function inspectFile(file: string, length: number): Promise<MediaFacts> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(headBytes), 0, headBytes, 0);
    const mediaType = requireTaken(buffer.subarray(0, bytesRead), length);
    if (mediaType === 'image/jpeg' || mediaType === 'image/png') return await inspectPicture(file, mediaType);
    if (mediaType === 'video/webm') return wholeVideo(mediaType, await isWholeWebm(handle, length));
    const boxes = await boxesOf(handle, length);
    if (mediaType !== 'image/heic') return wholeVideo(mediaType, boxes !== null && boxes.includes('moov') && boxes.includes('mdat'));
    if (boxes === null || !boxes.includes('meta')) throw new DomainError('photo.notAnImage', { reason: 'unreadable' });
    return await inspectHeic(file);
  } finally {
    await handle.close();
  }
}

function wholeVideo(mediaType: MediaType, isWhole: boolean): MediaFacts {
  if (!isWhole) throw new DomainError('video.unreadable');
  return { mediaType, width: null, height: null };
}

export async function inspectPicture(source: string | Uint8Array, mediaType: 'image/jpeg' | 'image/png'): Promise<MediaFacts> {
  try {
    const facts = await measure(source, mediaType);
    await sharp(source, options).stats();
    return facts;
  } catch (error) {
    throw refusal(error);
  }
}

/** Its pixels are decoded by the queue, beside the requests: here only its own words about itself are read. */
async function inspectHeic(file: string): Promise<MediaFacts> {
  try {
    return await measure(file, 'image/heic');
  } catch (error) {
    throw refusal(error);
  }
}

async function measure(source: string | Uint8Array, mediaType: MediaType): Promise<MediaFacts> {
  const { width, height, mediaType: own, autoOrient } = await sharp(source, options).metadata();
  if (width * height > maxPixels) throw new DomainError('photo.tooLarge', { pixels: width * height, limit: maxPixels });
  if (own !== mediaType) throw new DomainError('photo.notAnImage', { reason: 'type' });
  return { mediaType, width: autoOrient.width, height: autoOrient.height };
}

function refusal(error: unknown): DomainError {
  if (error instanceof DomainError) return error;
  if (error instanceof Error && /pixel limit/i.test(error.message)) return new DomainError('photo.tooLarge', { limit: maxPixels }, [], { cause: error });
  return new DomainError('photo.notAnImage', { reason: 'unreadable' }, [], { cause: error });
}

/** A smaller copy, turned upright, with nothing in it but the picture: no place, no camera. */
export async function copyOf(source: Uint8Array | RawPicture, kind: CopyKind): Promise<Copy> {
  const size = copySizes[kind];
  const { data, info } = await picture(source)
    .resize(size, size, { fit: 'inside', withoutEnlargement: true })
    .webp({ quality: kind === 'view' ? 82 : 75 })
    .toBuffer({ resolveWithObject: true });
  return { bytes: data, mediaType: 'image/webp', width: info.width, height: info.height };
}

function picture(source: Uint8Array | RawPicture) {
  if (source instanceof Uint8Array) return sharp(source, options).autoOrient();
  return sharp(source.data, { ...options, raw: { width: source.width, height: source.height, channels: 4 } });
}
