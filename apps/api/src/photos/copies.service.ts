import { Inject, Injectable, type OnModuleInit } from '@nestjs/common';
import type { Actor } from '../common/actor.ts';
import { Database } from '../common/database.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { describe, LOG, type Log } from '../common/log.ts';
import { Worker } from '../common/worker.ts';
import type { Photo } from '../generated/prisma/client.ts';
import { HeicPool } from './heic.pool.ts';
import { type Copy, copyOf, type CopyKind, type RawPicture } from './image.ts';
import { PhotoStore } from './photoStore.ts';

/** Viewing copy and thumbnail, made after the photo was stored. */
@Injectable()
export class CopiesService implements OnModuleInit {
  private readonly worker: Worker;
  private readonly database: Database;
  private readonly store: PhotoStore;
  private readonly heic: HeicPool;
  private readonly log: Log;

  constructor(worker: Worker, database: Database, store: PhotoStore, heic: HeicPool, @Inject(LOG) log: Log) {
    this.worker = worker;
    this.database = database;
    this.store = store;
    this.heic = heic;
    this.log = log;
  }

  onModuleInit(): void {
    this.worker.task('photos.copies', (actor, { photoId }) => this.make(actor, String(photoId)));
  }

  /** May run twice: the same bytes lie under the same hash, and the row of each kind is written once. */
  async make(actor: Actor, photoId: string): Promise<void> {
    const key = { companyId_id: { companyId: actor.companyId, id: photoId } };
    const photo = await this.database.read(actor, (tx) => tx.photo.findUnique({ where: key }));
    if (photo === null || photo.status !== 'received') return;
    const original = await this.picture(photo);
    const copies = original === null ? [] : [await this.copy(actor, original, 'view'), await this.copy(actor, original, 'thumb')];
    await this.database.write(actor, async (tx) => {
      for (const { kind, sha256, mediaType, width, height } of copies) {
        const columns = { sha256, mediaType, width, height };
        await tx.photoCopy.upsert({
          where: { companyId_photoId_kind: { companyId: actor.companyId, photoId, kind } },
          create: { id: newId(), companyId: actor.companyId, photoId, kind, ...columns }, update: columns,
        });
      }
      await tx.photo.update({ where: key, data: { status: original === null ? 'unshown' : 'ready' } });
      await emit(tx, actor, 'photos', photo.jobId, photoId);
    });
  }

  /** Null for a picture that can be kept but not shown. */
  private async picture({ companyId, id, sha256, mediaType }: Photo): Promise<Uint8Array | RawPicture | null> {
    const bytes = await this.store.read(companyId, sha256);
    if (mediaType !== 'image/heic') return bytes;
    try {
      return await this.heic.decode(bytes);
    } catch (error) {
      this.log.warn({ from: 'photos', photoId: id, err: describe(error) }, 'a picture cannot be shown');
      return null;
    }
  }

  private async copy(actor: Actor, original: Uint8Array | RawPicture, kind: CopyKind): Promise<Omit<Copy, 'bytes'> & { readonly kind: CopyKind; readonly sha256: string }> {
    const { bytes, ...facts } = await copyOf(original, kind);
    return { ...facts, kind, sha256: await this.store.put(actor.companyId, bytes) };
  }
}
