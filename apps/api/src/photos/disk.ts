import { open, stat } from 'node:fs/promises';
import { DomainError } from '../common/errors.ts';

/** On the disk, not only on its way there. */
export async function syncFile(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The name of a renamed file is on the disk only when its folder is. Windows opens no folder, and needs no such step. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Bytes of a file; null when there is none. */
export async function sizeOf(file: string): Promise<number | null> {
  try {
    return (await stat(file)).size;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

/** A full disk is told as such; anything else stays what it is. */
export function orFull(error: unknown): unknown {
  const code = codeOf(error);
  return code === 'ENOSPC' || code === 'EDQUOT' ? new DomainError('storage.full', {}, [], { cause: error }) : error;
}

export function codeOf(error: unknown): unknown {
  return typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;
}
