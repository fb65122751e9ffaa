import type { MediaType } from '@yardfall/contracts';

/** As many bytes from the beginning as tell what a file is. */
export const headBytes = 64;

const heicBrands = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1']);
const mp4Brands = new Set(['isom', 'iso2', 'iso3', 'iso4', 'iso5', 'iso6', 'iso7', 'iso8', 'iso9', 'mp41', 'mp42', 'avc1', 'M4V ', 'M4VH', 'M4VP', 'dash', 'MSNV', '3gp4', '3gp5', '3gp6']);
const oldQuickTime = new Set(['moov', 'mdat', 'wide', 'free', 'skip']);

/**
 * The type by the first bytes, never by the name that was sent; null for everything else.
 * ISO/IEC 14496-12 (boxes, brands), ISO/IEC 23008-12 (HEIF brands), RFC 8794 (EBML). An AV1 picture (brand avif) is not taken.
 */
export function sniff(head: Uint8Array): MediaType | null {
  const starts = (...first: number[]) => first.every((byte, index) => head[index] === byte);
  if (starts(0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  if (starts(0x1a, 0x45, 0xdf, 0xa3)) return ascii(head, 0, head.length).includes('webm') ? 'video/webm' : null;
  const box = ascii(head, 4, 8);
  if (box !== 'ftyp') return oldQuickTime.has(box) ? 'video/quicktime' : null;
  const brand = ascii(head, 8, 12);
  if (brand === 'qt  ') return 'video/quicktime';
  if (heicBrands.has(brand)) return ascii(head, 8, head.length).includes('avif') ? null : 'image/heic';
  return mp4Brands.has(brand) ? 'video/mp4' : null;
}

export const isVideo = (type: MediaType): boolean => type.startsWith('video/');

function ascii(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to));
}
