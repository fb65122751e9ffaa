import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { Piscina } from 'piscina';
import type { RawPicture } from './image.ts';

/** Longest decoding of one picture [ms] and the memory of the thread's own objects [MB]; a phone's picture takes a few seconds (ours). */
const limit = 60_000;
const memory = 512;
const isSource = import.meta.url.endsWith('.ts');

/** HEIC is what many phones write, and the image library here has no decoder for it: one picture at a time is decoded beside the requests. */
@Injectable()
export class HeicPool implements OnApplicationShutdown {
  private readonly pool = new Piscina<Uint8Array, RawPicture>({
    filename: new URL(isSource ? './heic.thread.ts' : './heic.thread.js', import.meta.url).href,
    execArgv: isSource ? ['--conditions=development', '--import', '@oxc-node/core/register'] : [],
    minThreads: 0, maxThreads: 1, idleTimeout: 10_000, resourceLimits: { maxOldGenerationSizeMb: memory },
  });

  /** Throws when it cannot be decoded or takes too long; the thread is ended then. */
  decode(bytes: Uint8Array): Promise<RawPicture> {
    return this.pool.run(bytes, { signal: AbortSignal.timeout(limit) });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool.destroy();
  }
}
