import { StreamableFile } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { ByteRange } from './photoStore.ts';
import type { PhotoFile } from './photos.service.ts';

/** What every browser shows by itself; anything else is only ever saved. */
const shown = new Set(['image/jpeg', 'image/png', 'image/webp', 'video/mp4', 'video/quicktime', 'video/webm']);

/** The whole file, or the one part that a player asks for (RFC 9110, 14). Its type is the one that was found in its bytes. */
export function fileAnswer(request: Request, response: Response, { open, length, mediaType }: PhotoFile): StreamableFile {
  response.setHeader('Accept-Ranges', 'bytes');
  const range = rangeOf(request.get('range'), length);
  const disposition = shown.has(mediaType) ? 'inline' : 'attachment';
  if (range === null) return new StreamableFile(open(), { type: mediaType, length, disposition });
  response.status(206).setHeader('Content-Range', `bytes ${String(range.start)}-${String(range.end)}/${String(length)}`);
  return new StreamableFile(open(range), { type: mediaType, length: range.end - range.start + 1, disposition });
}

/** A range that this file has not, or several at once, may be answered with the whole. */
export function rangeOf(header: string | undefined, length: number): ByteRange | null {
  const [, from, to] = /^bytes=(\d*)-(\d*)$/.exec(header ?? '') ?? [];
  if (from === undefined || to === undefined || (from === '' && to === '')) return null;
  const start = from === '' ? Math.max(0, length - Number(to)) : Number(from);
  const end = from === '' || to === '' ? length - 1 : Math.min(Number(to), length - 1);
  return start <= end && start < length ? { start, end } : null;
}
