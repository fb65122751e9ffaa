import { Injectable } from '@nestjs/common';
import type { BodyOf, Photo, photos as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { Prisma } from '../generated/prisma/client.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { photoParts, presentPhoto } from './photos.presenter.ts';

/** What is laid over a photo that is kept, and where it belongs: rows beside it, which are only added. */
@Injectable()
export class AdditionsService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  /** The same id again is the same addition. */
  amend(actor: Actor, jobId: string, photoId: string, { id, at, place, ...said }: BodyOf<typeof api.amend>): Promise<Photo> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      const { companyId, request } = actor;
      const photo = { companyId, jobId, id: photoId };
      const before = found(await tx.photo.findFirst({ where: photo, include: photoParts }));
      const known = await tx.photoAddition.findUnique({ where: { companyId_id: { companyId, id } }, select: { photoId: true, addedById: true } });
      if (known !== null && (known.photoId !== photoId || known.addedById !== actor.id)) throw new DomainError('conflict.duplicate');
      if (known !== null) return presentPhoto(before);
      // A phone whose clock runs ahead does not reach into the future.
      const told = new Date(Math.min(Date.parse(at), request.at.getTime()));
      await tx.photoAddition.create({ data: { id, companyId, photoId, ...said, place: place ?? Prisma.DbNull, addedById: actor.id, at: told, recordedAt: request.at } });
      await audit(tx, actor, 'photo.amended', { jobId, id: photoId }, { addition: id, marks: said.marks.length, placed: place !== null });
      await emit(tx, actor, 'photos', jobId, photoId);
      return presentPhoto(found(await tx.photo.findFirst({ where: photo, include: photoParts })));
    });
  }
}
