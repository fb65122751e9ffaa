import { Injectable } from '@nestjs/common';
import type { BodyOf, designs as api, Presence } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { requireJob } from '../jobs/jobs.access.ts';
import { presenceLasts } from './presence.rules.ts';

/** Who has a draft open. Others are told when somebody comes, goes or moves to another part, not at every beat; nothing of it is in the trail. */
@Injectable()
export class PresenceService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  put(actor: Actor, jobId: string, revisionId: string, { part, here }: BodyOf<typeof api.presence>): Promise<{ others: Presence[] }> {
    const { companyId } = actor;
    const now = actor.request.at.getTime();
    return this.database.write(actor, async (tx) => {
      await this.draft(tx, actor, jobId, revisionId);
      const key = { companyId_revisionId_memberId: { companyId, revisionId, memberId: actor.id } };
      const before = await tx.draftPresence.findUnique({ where: key });
      const was = before !== null && before.seenAt.getTime() > now - presenceLasts;
      const seenAt = here ? actor.request.at : new Date(0);
      await tx.draftPresence.upsert({ where: key, create: { companyId, revisionId, memberId: actor.id, part, seenAt }, update: { part, seenAt } });
      if (was !== here || (here && before?.part !== part)) await emit(tx, actor, 'presence', jobId, revisionId);
      const rows = await tx.draftPresence.findMany({
        where: { companyId, revisionId, memberId: { not: actor.id }, seenAt: { gt: new Date(now - presenceLasts) } }, include: { member: { select: { name: true } } }, orderBy: { memberId: 'asc' },
      });
      return { others: rows.map(({ memberId, member, part: at }) => ({ memberId, name: member.name, part: at })) };
    });
  }

  private async draft(tx: Tx, actor: Actor, jobId: string, revisionId: string): Promise<void> {
    await requireJob(tx, actor, jobId);
    const { status } = found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id: revisionId }, select: { status: true } }));
    if (status !== 'draft') throw new DomainError('design.notDraft');
  }
}
