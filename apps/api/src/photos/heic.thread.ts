import decode from 'heic-decode';
import { move } from 'piscina';
import type { RawPicture } from './image.ts';

/** Decodes the main picture of a HEIC file, upright, in a thread of its own. */
export default async function run(bytes: Uint8Array): Promise<RawPicture> {
  const { width, height, data } = await decode({ buffer: bytes });
  const pixels = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  move(pixels);
  return { width, height, data: pixels };
}
