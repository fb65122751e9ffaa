import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, type ReadStream } from 'node:fs';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Inject, Injectable } from '@nestjs/common';
import { ENV, type Env } from '../env.ts';
import { orFull, sizeOf, syncFile, syncFolder } from './disk.ts';

export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** First and last byte of a part of a file. */
export interface ByteRange {
  readonly start: number;
  readonly end: number;
}

/** Whole files by the hash of their bytes, a folder for each company: across companies it would show what another holds. What is on its way stands elsewhere. */
@Injectable()
export class PhotoStore {
  private readonly folder: string;
  private readonly parts: string;

  constructor(@Inject(ENV) env: Env) {
    this.folder = path.join(env.DATA_DIR, 'photos');
    this.parts = path.join(env.DATA_DIR, 'uploads');
  }

  /** On the disk, whole and under its name, or not at all. The same bytes again change nothing. */
  async put(companyId: string, bytes: Uint8Array): Promise<string> {
    const sha256 = sha256Of(bytes);
    if (await this.has(companyId, sha256, bytes.length)) return sha256;
    const part = path.join(this.parts, companyId, `${randomUUID()}.part`);
    try {
      await mkdir(path.dirname(part), { recursive: true });
      await writeFile(part, bytes, { flag: 'wx', mode: 0o600 });
      await this.adopt(companyId, part, sha256);
      return sha256;
    } catch (error) {
      await rm(part, { force: true });
      throw orFull(error);
    }
  }

  /** Takes a finished file over from where it arrived: one step of the file system, after its bytes are on the disk. */
  async adopt(companyId: string, part: string, sha256: string): Promise<void> {
    const file = this.fileOf(companyId, sha256);
    await mkdir(path.dirname(file), { recursive: true });
    await syncFile(part);
    await rename(part, file);
    await syncFolder(path.dirname(file));
  }

  async has(companyId: string, sha256: string, size: number): Promise<boolean> {
    return (await sizeOf(this.fileOf(companyId, sha256))) === size;
  }

  read(companyId: string, sha256: string): Promise<Buffer> {
    return readFile(this.fileOf(companyId, sha256));
  }

  async size(companyId: string, sha256: string): Promise<number> {
    return (await stat(this.fileOf(companyId, sha256))).size;
  }

  stream(companyId: string, sha256: string, range?: ByteRange): ReadStream {
    return createReadStream(this.fileOf(companyId, sha256), range);
  }

  fileOf(companyId: string, sha256: string): string {
    return path.join(this.folder, companyId, sha256.slice(0, 2), sha256);
  }
}
