import type { FileHandle } from 'node:fs/promises';

/** More boxes than any phone writes at the top of a file (ours). */
const mostBoxes = 10_000;

/**
 * Names of the boxes at the top of an MP4, QuickTime or HEIC file of `length` bytes (ISO/IEC 14496-12, 4.2); null when one reaches past the end,
 * which is how a file that was cut off looks. Only headers are read.
 */
export async function boxesOf(file: FileHandle, length: number): Promise<string[] | null> {
  const names: string[] = [];
  for (let at = 0; at < length; ) {
    if (names.length === mostBoxes) return null;
    const box = await boxAt(file, at, length);
    if (box === null) return null;
    names.push(box.name);
    at += box.size;
  }
  return names;
}

async function boxAt(file: FileHandle, at: number, length: number): Promise<{ name: string; size: number } | null> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(16), 0, 16, at);
  if (bytesRead < 8) return null;
  const [short, name] = [buffer.readUInt32BE(0), buffer.toString('latin1', 4, 8)];
  if (short === 1 && bytesRead < 16) return null;
  // Size 1: the real one follows in 64 bits. Size 0: to the end of the file.
  const size = short === 1 ? Number(buffer.readBigUInt64BE(8)) : short === 0 ? length - at : short;
  return size < (short === 1 ? 16 : 8) || at + size > length ? null : { name, size };
}

/** Whether a WebM file holds all that its outer elements promise (RFC 8794: EBML header, then one Segment, whose size may be unknown). */
export async function isWholeWebm(file: FileHandle, length: number): Promise<boolean> {
  const header = await elementAt(file, 0);
  if (header?.size === undefined || header.size === null) return false;
  const at = header.start + header.size;
  const segment = at < length ? await elementAt(file, at) : null;
  if (segment?.id !== 0x18538067) return false;
  return segment.size === null || segment.start + segment.size <= length;
}

interface Element {
  readonly id: number;
  readonly start: number;
  /** Null when the writer did not know it. */
  readonly size: number | null;
}

async function elementAt(file: FileHandle, at: number): Promise<Element | null> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(12), 0, 12, at);
  const idLength = Math.clz32(buffer[0] ?? 0) - 23;
  const sizeLength = Math.clz32(buffer[idLength] ?? 0) - 23;
  if (idLength > 4 || sizeLength > 8 || bytesRead < idLength + sizeLength) return null;
  const id = buffer.readUIntBE(0, idLength);
  const bits = BigInt(`0x${buffer.toString('hex', idLength, idLength + sizeLength)}`);
  const mask = (1n << BigInt(7 * sizeLength)) - 1n;
  return { id, start: at + idLength + sizeLength, size: (bits & mask) === mask ? null : Number(bits & mask) };
}
