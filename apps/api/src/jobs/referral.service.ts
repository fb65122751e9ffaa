import { Injectable } from '@nestjs/common';
import type { jobs as api, ResponseOf, SurveyContent } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { storedDocument } from '../common/storedDocument.ts';
import { requireJob } from './jobs.access.ts';
import { letterOf, type Observed } from './referral.rules.ts';

/** The letter for a site that needs an engineer: made from what the surveys and drafts of the job hold. */
@Injectable()
export class ReferralService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  read(actor: Actor, jobId: string): Promise<ResponseOf<typeof api.referralLetter>> {
    return this.database.read(actor, async (tx) => {
      const job = await requireJob(tx, actor, jobId);
      if (job.stage !== 'referred') throw new DomainError('conflict.state', { stage: job.stage });
      const where = { companyId: actor.companyId, jobId };
      const moved = found(await tx.jobStage.findFirst({ where: { ...where, stage: 'referred' }, orderBy: { at: 'desc' } }));
      return { ...letterOf(await observedAt(tx, where)), writtenAt: moved.at.toISOString() };
    });
  }
}

async function observedAt(tx: Tx, where: { companyId: string; jobId: string }): Promise<Observed[]> {
  const surveys = await tx.survey.findMany({ where, orderBy: { createdAt: 'asc' } });
  const revisions = await tx.revision.findMany({ where, orderBy: { createdAt: 'desc' }, take: 1 });
  const seen = surveys.flatMap((row) => jsonOf<SurveyContent>(row.content).observations);
  return [...seen, ...revisions.flatMap((row) => storedDocument(row.document).site.observations)];
}

function jsonOf<T>(bytes: Uint8Array): T {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as T;
}
