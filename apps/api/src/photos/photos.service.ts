import type { ReadStream } from 'node:fs';
import { Injectable } from '@nestjs/common';
import type { Photo, PhotoMeta } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { enqueue } from '../common/queue.ts';
import type { UploadedFile } from '../common/request.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { type ImageFacts, inspect } from './image.ts';
import { PhotoStore, sha256Of } from './photoStore.ts';
import { photoParts, presentPhoto } from './photos.presenter.ts';

export interface PhotoFile {
  readonly stream: ReadStream;
  readonly length: number;
  readonly mediaType: string;
}

@Injectable()
export class PhotosService {
  private readonly database: Database;
  private readonly store: PhotoStore;

  constructor(database: Database, store: PhotoStore) {
    this.database = database;
    this.store = store;
  }

  list(actor: Actor, jobId: string): Promise<{ items: Photo[] }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const rows = await tx.photo.findMany({ where: { companyId: actor.companyId, jobId }, include: photoParts, orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }] });
      return { items: rows.map(presentPhoto) };
    });
  }

  /** Looked at and kept on the disk first; the row, its trail and its queued copies commit together. */
  async add(actor: Actor, jobId: string, meta: PhotoMeta, file: UploadedFile): Promise<Photo> {
    await this.database.read(actor, (tx) => requireJob(tx, actor, jobId));
    if (sha256Of(file.bytes) !== meta.sha256) throw new DomainError('photo.hashMismatch');
    const facts = await inspect(file.bytes);
    await this.store.put(actor.companyId, file.bytes);
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const known = await tx.photo.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: meta.id } }, include: photoParts });
      if (known === null) return this.insert(tx, actor, jobId, meta, { ...facts, bytes: file.bytes.length });
      if (known.jobId !== jobId || known.sha256 !== meta.sha256) throw new DomainError('conflict.duplicate');
      return presentPhoto(known);
    });
  }

  file(actor: Actor, jobId: string, photoId: string, copy: 'original' | 'view' | 'thumb'): Promise<PhotoFile> {
    return this.database
      .read(actor, async (tx) => {
        await requireJob(tx, actor, jobId);
        const photo = found(await tx.photo.findFirst({ where: { companyId: actor.companyId, jobId, id: photoId, ...shownTo(actor, copy) } }));
        if (copy === 'original') return photo;
        return found(await tx.photoCopy.findUnique({ where: { companyId_photoId_kind: { companyId: actor.companyId, photoId, kind: copy } } }));
      })
      .then(async ({ sha256, mediaType }) => ({ ...(await this.store.stream(actor.companyId, sha256)), mediaType }));
  }

  private async insert(tx: Tx, actor: Actor, jobId: string, meta: PhotoMeta, facts: ImageFacts & { readonly bytes: number }): Promise<Photo> {
    const { id, takenAt, ...described } = meta;
    const row = await tx.photo.create({
      data: {
        id, companyId: actor.companyId, jobId, ...described, ...facts, takenAt: new Date(takenAt), receivedAt: actor.request.at,
        byMemberId: actor.kind === 'member' ? actor.id : null, status: 'received',
      },
      include: photoParts,
    });
    await audit(tx, actor, 'photo.added', { jobId, id }, { sha256: meta.sha256, bytes: facts.bytes, item: meta.itemKey });
    await emit(tx, actor, 'photos', jobId, id);
    await enqueue(tx, actor, 'photos.copies', { photoId: id }, `photos.copies:${id}`);
    // A fact that came before its photo is looked at again; the checklist knows photos, not the other way round.
    await enqueue(tx, actor, 'checklists.photoArrived', { photoId: id, jobId }, `checklists.photoArrived:${id}`);
    return presentPhoto(row);
  }
}

/** The original may hold the place where it was taken: a customer sees copies only, and only of what is meant for them. */
function shownTo(actor: Actor, copy: 'original' | 'view' | 'thumb'): { readonly forCustomer?: true } {
  if (actor.kind !== 'customer') return {};
  if (copy === 'original') throw new DomainError('notFound');
  return { forCustomer: true };
}
