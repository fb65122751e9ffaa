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
import { inspectPicture, type MediaFacts, requireTaken } from './image.ts';
import { type ByteRange, PhotoStore, sha256Of } from './photoStore.ts';
import { partsFor, photoParts, presentPhoto } from './photos.presenter.ts';
import { headBytes, isVideo } from './media.ts';
import { authorOf } from './senders.ts';

export interface PhotoFile {
  readonly length: number;
  readonly mediaType: string;
  readonly open: (range?: ByteRange) => ReadStream;
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
    const facts = await inspected(file.bytes);
    await this.store.put(actor.companyId, file.bytes);
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      return this.record(tx, actor, jobId, meta, { ...facts, bytes: file.bytes.length });
    });
  }

  /** A photo whose file is in the store, into its locked job; the same id again is the same photo. */
  async record(tx: Tx, actor: Actor, jobId: string, meta: PhotoMeta, facts: MediaFacts & { readonly bytes: number }): Promise<Photo> {
    const known = await tx.photo.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: meta.id } }, include: partsFor(actor) });
    if (known === null) return this.insert(tx, actor, jobId, meta, facts);
    if (known.jobId !== jobId || known.sha256 !== meta.sha256) throw new DomainError('conflict.duplicate');
    return presentPhoto(known);
  }

  file(actor: Actor, jobId: string, photoId: string, copy: 'original' | 'view' | 'thumb'): Promise<PhotoFile> {
    return this.database
      .read(actor, async (tx) => {
        await requireJob(tx, actor, jobId);
        const photo = found(await tx.photo.findFirst({ where: { companyId: actor.companyId, jobId, id: photoId, ...shownTo(actor, copy) } }));
        if (copy === 'original') return photo;
        return found(await tx.photoCopy.findUnique({ where: { companyId_photoId_kind: { companyId: actor.companyId, photoId, kind: copy } } }));
      })
      .then(async ({ sha256, mediaType }) => ({ mediaType, length: await this.store.size(actor.companyId, sha256), open: (range) => this.store.stream(actor.companyId, sha256, range) }));
  }

  private async insert(tx: Tx, actor: Actor, jobId: string, meta: PhotoMeta, facts: MediaFacts & { readonly bytes: number }): Promise<Photo> {
    const { id, takenAt, ...described } = meta;
    const { memberId, linkId } = authorOf(actor);
    const row = await tx.photo.create({
      data: {
        id, companyId: actor.companyId, jobId, ...described, ...facts, takenAt: new Date(takenAt), receivedAt: actor.request.at,
        byMemberId: memberId, linkId, status: isVideo(facts.mediaType) ? 'ready' : 'received',
      },
      include: partsFor(actor),
    });
    await audit(tx, actor, 'photo.added', { jobId, id }, { sha256: meta.sha256, bytes: facts.bytes, item: meta.itemKey });
    await emit(tx, actor, 'photos', jobId, id);
    if (row.status !== 'ready') await enqueue(tx, actor, 'photos.copies', { photoId: id }, `photos.copies:${id}`);
    // A fact that came before its photo is looked at again; the checklist knows photos, not the other way round.
    await enqueue(tx, actor, 'checklists.photoArrived', { photoId: id, jobId }, `checklists.photoArrived:${id}`);
    return presentPhoto(row);
  }
}

/** By this way come pictures that fit into memory; HEIC and video come in parts. */
function inspected(bytes: Uint8Array): Promise<MediaFacts> {
  const type = requireTaken(bytes.subarray(0, headBytes), bytes.length);
  if (type !== 'image/jpeg' && type !== 'image/png') throw new DomainError('photo.notAnImage', { reason: 'type' });
  return inspectPicture(bytes, type);
}

/** The original may hold the place where it was taken: a customer sees copies only, and only of what is meant for them. */
function shownTo(actor: Actor, copy: 'original' | 'view' | 'thumb'): { readonly forCustomer?: true } {
  if (actor.kind !== 'customer') return {};
  if (copy === 'original') throw new DomainError('notFound');
  return { forCustomer: true };
}
