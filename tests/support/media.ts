import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { inRoot } from '../../tools/paths.mjs';

/** Noise cannot be compressed: a picture as heavy as a phone's. */
export async function heavyPicture(width: number, height: number): Promise<Buffer> {
  return sharp(randomBytes(width * height * 3), { raw: { width, height, channels: 3 } }).jpeg({ quality: 85 }).toBuffer();
}

/** 96 x 64 pixels in four colours; drawn by us, encoded with libheif 1.15.1 and x265 through ImageMagick. */
export const heicPicture = (): Buffer => readFileSync(path.join(inRoot('tests', 'fixtures'), 'quarters.heic'));

function box(name: string, ...content: Buffer[]): Buffer {
  const body = Buffer.concat(content);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(body.length + 8, 0);
  head.write(name, 4, 'latin1');
  return Buffer.concat([head, body]);
}

/** The outer boxes of a video (ISO/IEC 14496-12) around bytes that nobody plays. */
export function video(brand = 'isom', bytes = 50_000): Buffer {
  const type = box('ftyp', Buffer.from(`${brand}\0\0\0\0${brand}`, 'latin1'));
  return Buffer.concat([type, box('moov', box('mvhd', Buffer.alloc(100))), box('mdat', randomBytes(bytes))]);
}

/** EBML header and one Segment that says its size (RFC 8794). */
export function webm(bytes = 50_000): Buffer {
  const docType = Buffer.concat([Buffer.from([0x42, 0x82, 0x84]), Buffer.from('webm')]);
  const size = Buffer.alloc(8);
  size.writeBigUInt64BE(BigInt(bytes) | (1n << 56n));
  return Buffer.concat([Buffer.from([0x1a, 0x45, 0xdf, 0xa3, 0x80 | docType.length]), docType, Buffer.from([0x18, 0x53, 0x80, 0x67]), size, randomBytes(bytes)]);
}

/** A PNG that says how large it is and holds nothing. */
export function emptyPng(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'ascii'), data]);
    const frame = Buffer.alloc(body.length + 8);
    frame.writeUInt32BE(data.length, 0);
    body.copy(frame, 4);
    frame.writeInt32BE(crc(body), frame.length - 4);
    return frame;
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), chunk('IHDR', header), chunk('IDAT', deflateSync(Buffer.alloc(1000))), chunk('IEND', Buffer.alloc(0))]);
}

function crc(bytes: Buffer): number {
  let value = -1;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit += 1) value = (value >>> 1) ^ (value & 1 ? 0xedb88320 : 0);
  }
  return value ^ -1;
}
