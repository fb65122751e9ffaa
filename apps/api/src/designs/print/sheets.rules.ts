import { measureOf, planChecks, planFigures } from '@yardfall/calc';
import type { Language, PrintedSheet, UnitSystem } from '@yardfall/contracts';
import { compareSheets, type Issue, paperOf, type PaperName, planSheets, pumpSheets, sectionSheets, type Sheet, type SheetContext, stormSheets } from '@yardfall/drawing';
import { render } from '@yardfall/text';
import { DateTime } from 'luxon';
import type { Prisma } from '../../generated/prisma/client.ts';
import { documentOf, evaluationOf } from '../designs.presenter.ts';
import { drawnGround } from './ground.ts';
import type { PdfInfo } from './pdf.ts';

export const printedParts = {
  include: { design: { select: { name: true } }, createdBy: { select: { name: true } }, issuedBy: { select: { name: true } } }, omit: { acknowledgements: true, startedDocument: true },
} satisfies Prisma.RevisionDefaultArgs;
export type PrintedRevision = Prisma.RevisionGetPayload<typeof printedParts>;

export interface PrintedJob {
  readonly number: number;
  readonly company: string;
  readonly state: string;
  readonly timeZone: string;
}

interface Reader {
  readonly language: Language;
  readonly units: UnitSystem;
}

interface Order extends Reader {
  readonly sheet: PrintedSheet;
  readonly paper: PaperName;
  readonly job: PrintedJob;
  readonly revision: PrintedRevision;
  readonly before: PrintedRevision | null;
}

const sayFor = ({ language, units }: Reader): SheetContext['say'] => (code, params) => render(language, units, code, params);

/** When it was issued, or for a draft when it was last edited. */
const momentOf = (revision: PrintedRevision): Date => revision.issuedAt ?? revision.updatedAt;

function issueOf(job: PrintedJob, revision: PrintedRevision): Issue {
  return {
    company: job.company, job: job.number, state: job.state, design: revision.design.name, revision: revision.number, sha256: revision.documentSha256,
    status: revision.status as Issue['status'], provisional: revision.provisional,
    day: DateTime.fromJSDate(momentOf(revision), { zone: job.timeZone }).toFormat('yyyy-MM-dd'), by: (revision.issuedBy ?? revision.createdBy).name,
  };
}

/** The sheets of one kind; none where the design has nothing of it: no plan, no pump, no storm that could be run. */
export function drawSheets({ sheet, paper, job, revision, before, ...reader }: Order): Sheet[] {
  const context: SheetContext = { paper: paperOf(paper), issue: issueOf(job, revision), say: sayFor(reader), unit: reader.units === 'us' ? 'foot' : 'metre' };
  const document = documentOf(revision.document);
  const evaluation = evaluationOf(revision.evaluation);
  switch (sheet) {
    case 'section':
      return sectionSheets({ document, evaluation }, context);
    case 'storm':
      return stormSheets({ document, evaluation }, context);
    case 'pump':
      return pumpSheets({ document, evaluation }, context);
    case 'plan': {
      const waterLevel = evaluation?.results.storm?.maxPond ?? null;
      const measures = new Map((document.site.plan?.shapes ?? []).map((shape) => [shape.id, measureOf(shape)]));
      const ground = drawnGround(document.site, waterLevel, context.unit);
      return planSheets({ document, ground, figures: planFigures(document), checks: planChecks(document), measures, waterLevel }, context);
    }
    case 'compare':
      return before === null ? [] : compareSheets({ before: documentOf(before.document), after: document }, { before: before.number, after: revision.number }, context);
  }
}

export function titleOf(sheets: readonly Sheet[], reader: Reader): string {
  const title = sheets[0]?.title;
  return title === undefined ? '' : sayFor(reader)(title.code, title.params);
}

export function infoOf(title: string, job: PrintedJob, revision: PrintedRevision, language: Language): PdfInfo {
  return { title: `${String(job.number)}: ${title}`, author: job.company, language, at: momentOf(revision) };
}
