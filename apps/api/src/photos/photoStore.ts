import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, type ReadStream } from 'node:fs';
import { mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { Inject, Injectable } from '@nestjs/common';
import { DomainError } from '../common/errors.ts';
import { ENV, type Env } from '../env.ts';

export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Files by the hash of their bytes, a folder for each company: across companies it would show what another holds. */
@Injectable()
export class PhotoStore {
  private readonly folder: string;

  constructor(@Inject(ENV) env: Env) {
    this.folder = path.join(env.DATA_DIR, 'photos');
  }

  /** On the disk, whole and under its name, or not at all. The same bytes again change nothing. */
  async put(companyId: string, bytes: Uint8Array): Promise<string> {
    const sha256 = sha256Of(bytes);
    const file = this.fileOf(companyId, sha256);
    if (await hasSize(file, bytes.length)) return sha256;
    const partial = `${file}.${randomUUID()}.part`;
    try {
      await mkdir(path.dirname(file), { recursive: true });
      await writeSynced(partial, bytes);
      await rename(partial, file);
      await syncFolder(path.dirname(file));
      return sha256;
    } catch (error) {
      await rm(partial, { force: true });
      if (isFull(error)) throw new DomainError('storage.full', {}, [], { cause: error });
      throw error;
    }
  }

  read(companyId: string, sha256: string): Promise<Buffer> {
    return readFile(this.fileOf(companyId, sha256));
  }

  async stream(companyId: string, sha256: string): Promise<{ readonly stream: ReadStream; readonly length: number }> {
    const file = this.fileOf(companyId, sha256);
    const { size } = await stat(file);
    return { stream: createReadStream(file), length: size };
  }

  private fileOf(companyId: string, sha256: string): string {
    return path.join(this.folder, companyId, sha256.slice(0, 2), sha256);
  }
}

async function writeSynced(file: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(file, 'wx', 0o600);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The name of a renamed file is on the disk only when its folder is. Windows opens no folder, and needs no such step. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function hasSize(file: string, size: number): Promise<boolean> {
  try {
    return (await stat(file)).size === size;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}

function isFull(error: unknown): boolean {
  return codeOf(error) === 'ENOSPC' || codeOf(error) === 'EDQUOT';
}

function codeOf(error: unknown): unknown {
  return typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;
}
