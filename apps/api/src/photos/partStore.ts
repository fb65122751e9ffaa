import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, open, readdir, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Inject, Injectable } from '@nestjs/common';
import { DomainError } from '../common/errors.ts';
import { ENV, type Env } from '../env.ts';
import { codeOf, orFull, sizeOf } from './disk.ts';

/**
 * What has arrived of uploads, apart from the photos. The size of a part is how far it has come: nothing else is written about it, so nothing can disagree
 * with it after a crash.
 */
@Injectable()
export class PartStore {
  private readonly folder: string;

  constructor(@Inject(ENV) env: Env) {
    this.folder = path.join(env.DATA_DIR, 'uploads');
  }

  fileOf(companyId: string, uploadId: string): string {
    return path.join(this.folder, companyId, `${uploadId}.part`);
  }

  /** Empty, unless it is there already. */
  async begin(companyId: string, uploadId: string): Promise<void> {
    const file = this.fileOf(companyId, uploadId);
    try {
      await mkdir(path.dirname(file), { recursive: true });
      await writeFile(file, '', { flag: 'a', mode: 0o600 });
    } catch (error) {
      throw orFull(error);
    }
  }

  /** Bytes that have arrived; null when there is no part. */
  size(companyId: string, uploadId: string): Promise<number | null> {
    return sizeOf(this.fileOf(companyId, uploadId));
  }

  /** Writes from `offset` on as it arrives, to the promised end and not further, and keeps what came before a connection broke. */
  async append({ companyId, id, bytes }: { readonly companyId: string; readonly id: string; readonly bytes: number }, offset: number, source: Readable, stopped: AbortSignal): Promise<void> {
    const target = createWriteStream(this.fileOf(companyId, id), { flags: 'r+', start: offset });
    try {
      await pipeline(source, atMost(bytes - offset), target, { signal: stopped });
    } catch (error) {
      if (codeOf(error) === 'ENOENT') throw new DomainError('notFound', {}, [], { cause: error });
      // The connection broke, or the phone began a new one: nobody reads the answer, and nothing failed here.
      if (source.readableAborted || stopped.aborted) throw new DomainError('request.unreadable', {}, [], { cause: error });
      throw orFull(error);
    }
  }

  async head(companyId: string, uploadId: string, length: number): Promise<Uint8Array> {
    const handle = await open(this.fileOf(companyId, uploadId), 'r');
    try {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(length), 0, length, 0);
      return buffer.subarray(0, bytesRead);
    } finally {
      await handle.close();
    }
  }

  async sha256(companyId: string, uploadId: string): Promise<string> {
    const hash = createHash('sha256');
    await pipeline(createReadStream(this.fileOf(companyId, uploadId)), hash);
    return hash.digest('hex');
  }

  async remove(companyId: string, uploadId: string): Promise<void> {
    await rm(this.fileOf(companyId, uploadId), { force: true });
  }

  /** Parts that nobody has touched since then, whoever they were of. */
  async sweep(before: Date): Promise<void> {
    for (const company of await namesIn(this.folder)) {
      for (const name of await namesIn(path.join(this.folder, company))) {
        const file = path.join(this.folder, company, name);
        if ((await stat(file)).mtime < before) await rm(file, { force: true });
      }
    }
  }
}

function atMost(bytes: number): Transform {
  let left = bytes;
  return new Transform({
    transform(chunk: Buffer, _encoding, done) {
      left -= chunk.length;
      done(left < 0 ? new DomainError('request.tooLarge') : null, left < 0 ? undefined : chunk);
    },
  });
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return [];
    throw error;
  }
}
