import { Injectable } from '@nestjs/common';
import type { designs as api, QueryOf } from '@yardfall/contracts';
import type { Actor } from '../../common/actor.ts';
import { Database, type Tx } from '../../common/database.ts';
import { DomainError, found } from '../../common/errors.ts';
import { requireJob } from '../../jobs/jobs.access.ts';
import { writePdf } from './pdf.ts';
import { drawSheets, infoOf, printedParts, type PrintedRevision, titleOf } from './sheets.rules.ts';

type Wanted = QueryOf<typeof api.print>;

/** Drawings on paper. They are made anew at each call from what is stored, and nothing of the moment of the call stands on them. */
@Injectable()
export class PrintService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  async print(actor: Actor, jobId: string, revisionId: string, wanted: Wanted): Promise<{ bytes: Buffer; name: string }> {
    if ((wanted.sheet === 'compare') !== (wanted.against !== undefined)) {
      throw new DomainError('request.invalid', {}, [{ path: 'query.against', message: 'names the earlier revision of a comparison, and only of one' }]);
    }
    const { job, revision, before } = await this.database.read(actor, async (tx) => ({
      job: await this.job(tx, actor, jobId),
      revision: await this.revision(tx, actor, jobId, revisionId),
      before: wanted.against === undefined ? null : await this.revision(tx, actor, jobId, wanted.against),
    }));
    const reader = { language: wanted.language ?? actor.language, units: wanted.units ?? actor.units };
    const sheets = drawSheets({ sheet: wanted.sheet, paper: wanted.paper, job, revision, before, ...reader });
    if (sheets.length === 0) throw new DomainError('notFound');
    const bytes = await writePdf(sheets, infoOf(titleOf(sheets, reader), job, revision, reader.language));
    return { bytes, name: `job-${String(job.number)}-revision-${String(revision.number)}-${wanted.sheet}.pdf` };
  }

  private async job(tx: Tx, actor: Actor, jobId: string) {
    const { number, propertyId } = await requireJob(tx, actor, jobId);
    const { companyId } = actor;
    const property = found(await tx.property.findUnique({ where: { companyId_id: { companyId, id: propertyId } }, select: { state: true, timeZone: true } }));
    const company = found(await tx.company.findUnique({ where: { id: companyId }, select: { name: true } }));
    return { number, company: company.name, ...property };
  }

  private async revision(tx: Tx, actor: Actor, jobId: string, id: string): Promise<PrintedRevision> {
    return found(await tx.revision.findFirst({ where: { companyId: actor.companyId, jobId, id }, ...printedParts }));
  }
}
