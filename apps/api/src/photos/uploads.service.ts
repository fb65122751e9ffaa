import type { Readable } from 'node:stream';
import { Injectable } from '@nestjs/common';
import { mostSent, type NewUpload, PhotoMeta, type UploadState } from '@yardfall/contracts';
import type { z } from 'zod';
import type { Actor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import type { PhotoUpload } from '../generated/prisma/client.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { codeOf } from './disk.ts';
import { inspectFile, type MediaFacts, requireTaken } from './image.ts';
import { headBytes } from './media.ts';
import { NewestFirst } from './newestFirst.ts';
import { PartStore } from './partStore.ts';
import { PhotosService } from './photos.service.ts';
import { PhotoStore } from './photoStore.ts';
import { authorOf } from './senders.ts';

const day = 86_400_000;
/** How long a part waits to go on, and how many of one sender may be on their way at once (ours). */
export const uploadDays = 14;
const mostOpen = 200;

type Stored = MediaFacts & { readonly bytes: number };

/**
 * Photos and videos that arrive in parts. The bytes stand apart until they are whole, have the SHA-256 that was promised and can be shown;
 * then the file moves into the store in one step, and the photo, its trail and its queued copies commit together.
 */
@Injectable()
export class UploadsService {
  private readonly database: Database;
  private readonly photos: PhotosService;
  private readonly parts: PartStore;
  private readonly store: PhotoStore;
  private readonly arriving = new NewestFirst();

  constructor(database: Database, photos: PhotosService, parts: PartStore, store: PhotoStore) {
    this.database = database;
    this.photos = photos;
    this.parts = parts;
    this.store = store;
  }

  /** Begins an upload or finds it again; the id is the photo's, so that a repeat is the same. A file that the company has already is in the job at once. */
  async create(actor: Actor, jobId: string, { length, meta }: z.output<typeof NewUpload>): Promise<UploadState> {
    const known = await this.database.read(actor, (tx) => this.known(tx, actor, jobId, meta, length));
    const isHere = known !== null && (await this.store.has(actor.companyId, meta.sha256, length));
    const row = await this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const upload = await this.open(tx, actor, jobId, meta, length);
      if (upload.finishedAt !== null || !isHere) return upload;
      await this.photos.record(tx, actor, jobId, meta, known);
      return tx.photoUpload.update({ where: keyOf(upload), data: { finishedAt: actor.request.at } });
    });
    if (row.finishedAt === null) await this.parts.begin(row.companyId, row.id);
    return this.stateOf(actor, row);
  }

  /** A part that is whole but was not taken over, because the service was stopped in between, is taken over now: a sender that hears of a whole upload sends no more. */
  async read(actor: Actor, jobId: string, uploadId: string): Promise<UploadState> {
    return this.stateOf(actor, await this.rowOf(actor, jobId, uploadId));
  }

  append(actor: Actor, jobId: string, uploadId: string, offset: number, bytes: Readable): Promise<UploadState> {
    return this.arriving.run(`${actor.companyId} ${uploadId}`, async (stopped) => {
      const row = await this.rowOf(actor, jobId, uploadId);
      const { offset: expected } = await this.stateOf(actor, row);
      if (offset !== expected) throw new DomainError('upload.offset', { offset: expected });
      if (offset < row.bytes) await this.parts.append(row, offset, bytes, stopped);
      return this.stateOf(actor, row);
    });
  }

  async stop(actor: Actor, jobId: string, uploadId: string): Promise<void> {
    const row = await this.rowOf(actor, jobId, uploadId);
    if (row.finishedAt !== null) throw new DomainError('conflict.state');
    await this.giveUp(actor, row);
  }

  /** How far it has come; takes it over when it is whole, and throws when it can never be taken. */
  private async stateOf(actor: Actor, row: PhotoUpload): Promise<UploadState> {
    const state = (offset: number): UploadState => ({ id: row.id, offset, length: row.bytes, expiresAt: row.expiresAt.toISOString() });
    if (row.finishedAt !== null) {
      await this.parts.remove(row.companyId, row.id);
      return state(row.bytes);
    }
    const size = await this.parts.size(row.companyId, row.id);
    if (size !== null) await this.refuseBad(actor, row, size);
    if (size !== null && size < row.bytes) return state(size);
    await this.finish(actor, row, size !== null);
    return state(row.bytes);
  }

  private async refuseBad(actor: Actor, row: PhotoUpload, size: number): Promise<void> {
    if (size < Math.min(headBytes, row.bytes)) return;
    await this.orGiveUp(actor, row, async () => requireTaken(await this.parts.head(row.companyId, row.id, headBytes), row.bytes));
  }

  private async finish(actor: Actor, row: PhotoUpload, hasPart: boolean): Promise<void> {
    const meta = PhotoMeta.parse(row.meta);
    const facts = (hasPart ? await this.orGiveUp(actor, row, () => this.take(row, meta)) : null) ?? (await this.taken(row, meta));
    await this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, row.jobId);
      await this.photos.record(tx, actor, row.jobId, meta, facts);
      await tx.photoUpload.update({ where: keyOf(row), data: { finishedAt: actor.request.at } });
    });
  }

  /** Null when a request beside this one took it in the meantime. */
  private async take(row: PhotoUpload, meta: PhotoMeta): Promise<Stored | null> {
    const part = this.parts.fileOf(row.companyId, row.id);
    try {
      if ((await this.parts.sha256(row.companyId, row.id)) !== meta.sha256) throw new DomainError('photo.hashMismatch');
      const facts = await inspectFile(part, row.bytes);
      await this.store.adopt(row.companyId, part, meta.sha256);
      return { ...facts, bytes: row.bytes };
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return null;
      throw error;
    }
  }

  /** Moved into the store before a crash, or by a request beside this one, which may have said so already. */
  private async taken(row: PhotoUpload, meta: PhotoMeta): Promise<Stored> {
    if (!(await this.store.has(row.companyId, meta.sha256, row.bytes))) throw new DomainError('notFound');
    return { ...(await inspectFile(this.store.fileOf(row.companyId, meta.sha256), row.bytes)), bytes: row.bytes };
  }

  private async orGiveUp<T>(actor: Actor, row: PhotoUpload, work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (error instanceof DomainError && error.code !== 'storage.full') await this.giveUp(actor, row);
      throw error;
    }
  }

  private async giveUp(actor: Actor, row: PhotoUpload): Promise<void> {
    await this.parts.remove(row.companyId, row.id);
    await this.database.write(actor, (tx) => tx.photoUpload.update({ where: keyOf(row), data: { givenUpAt: actor.request.at } }));
  }

  private async rowOf(actor: Actor, jobId: string, uploadId: string): Promise<PhotoUpload> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const live = { givenUpAt: null, OR: [{ finishedAt: { not: null } }, { expiresAt: { gt: actor.request.at } }] };
      return found(await tx.photoUpload.findFirst({ where: { companyId: actor.companyId, jobId, id: uploadId, ...authorOf(actor), ...live } }));
    });
  }

  /** What is known of the same bytes. A customer hears only of the own link's: knowing a hash must not open what the company holds. */
  private async known(tx: Tx, actor: Actor, jobId: string, meta: PhotoMeta, bytes: number): Promise<Stored | null> {
    await requireJob(tx, actor, jobId);
    const { linkId } = authorOf(actor);
    const row = await tx.photo.findFirst({ where: { companyId: actor.companyId, sha256: meta.sha256, bytes, ...(linkId === null ? {} : { linkId }) } });
    return row === null ? null : { mediaType: row.mediaType as MediaFacts['mediaType'], width: row.width, height: row.height, bytes };
  }

  private async open(tx: Tx, actor: Actor, jobId: string, meta: PhotoMeta, bytes: number): Promise<PhotoUpload> {
    const { companyId, request: { at } } = actor;
    const whose = authorOf(actor);
    const known = await tx.photoUpload.findUnique({ where: keyOf({ companyId, id: meta.id }) });
    if (known === null) {
      const onTheirWay = await tx.photoUpload.count({ where: { companyId, ...whose, finishedAt: null, givenUpAt: null, expiresAt: { gt: at } } });
      if (onTheirWay >= mostOpen) throw new DomainError('upload.tooMany', { limit: mostOpen });
      if (whose.linkId !== null) await requireRoom(tx, companyId, whose.linkId, bytes);
    } else if (known.jobId !== jobId || known.memberId !== whose.memberId || known.linkId !== whose.linkId || known.bytes !== bytes || PhotoMeta.parse(known.meta).sha256 !== meta.sha256) {
      throw new DomainError('conflict.duplicate');
    } else if (known.finishedAt !== null) return known;
    const fresh = { meta, expiresAt: new Date(at.getTime() + uploadDays * day), givenUpAt: null };
    return tx.photoUpload.upsert({ where: keyOf({ companyId, id: meta.id }), create: { id: meta.id, companyId, jobId, ...whose, bytes, createdAt: at, ...fresh }, update: fresh });
  }
}

/** A link takes so much and no more, whoever has it. */
async function requireRoom(tx: Tx, companyId: string, linkId: string, bytes: number): Promise<void> {
  const { _count: files, _sum: sum } = await tx.photoUpload.aggregate({ where: { companyId, linkId, givenUpAt: null }, _count: true, _sum: { bytes: true } });
  if (files >= mostSent.files || (sum.bytes ?? 0) + bytes > mostSent.bytes) throw new DomainError('sending.full', { files: mostSent.files });
}

const keyOf = ({ companyId, id }: Pick<PhotoUpload, 'companyId' | 'id'>) => ({ companyId_id: { companyId, id } });
