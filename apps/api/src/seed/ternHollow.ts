import type { DesignDocument } from '@yardfall/calc';
import type { Job } from '@yardfall/contracts';
import { HandoverService } from '../handover/handover.service.ts';
import { ReleaseService } from '../jobs/release.service.ts';
import { LocatesService } from '../locates/locates.service.ts';
import { ProofService } from '../proof/proof.service.ts';
import { answerPermits } from './approvals.ts';
import { act, type Cast } from './cast.ts';
import { Fieldwork } from './fieldwork.ts';
import { ternHollowAllowances } from './priceList.ts';
import { ternHollowCall } from './sites/calls.ts';
import { siteDocument } from './sites/documents.ts';
import { ternHollowSurvey } from './sites/ternHollow.survey.ts';
import { pumpDownRuns } from './pumpDown.ts';
import { askForMarks, sell } from './sale.ts';
import { begin, draw, issue } from './story.ts';

const notes = {
  'rain.illustrative': 'A made-up table for the demonstration; nothing is built from it.',
  'C1.nearFull': 'The 25-year depth stays inside the body; grate locked, basket shown to the owners.',
  'E5.short': 'Told to the owners; they will think about a battery.',
  'D1.lidHigh': 'Lid moved as far down the lawn as the lot allows.',
};
const message = 'Thank you for showing us the yard and the videos. Here is what we found and what we would build.';
const asked = 'Asked at the demo town counter: not asked for on this job.';
const area = 'Whole back yard from the patio to the east lot line and the easement swale, and the side yard to the street';

/** The flagship: from the call to the handed-over system, every record of it. */
export async function tellTernHollow(cast: Cast): Promise<string> {
  const document = siteDocument('tern-hollow');
  const begun = await begin(cast, ternHollowCall, ternHollowSurvey, document, 36);
  const draft = await draw(cast, begun, 'Roof line and pump A', document, 34);
  const revision = await issue(cast, draft, notes, 33);
  const offerId = await sell(cast, begun.job, revision, { allowances: ternHollowAllowances, message, acceptedBy: 'Marisol Pruett' }, 32);
  await answerPermits(cast, begun.job.id, { granted: { electrical: 'E-DEMO-2207', plumbing: 'P-DEMO-1140', association: 'Letter of the board', licence: 'Class of the demo company' }, otherwise: asked }, 30);
  const released = await cast.app.get(ReleaseService).release(act(cast, 'owner', 29), begun.job.id, offerId);
  await askForMarks(cast, begun.job.id, { number: 'NC-DEMO-0118', area }, 28);
  await build(cast, released, document);
  return begun.job.id;
}

/** Digs when the ticket says so; where the clock of this year is not known the job stays released, as it would in life. */
async function build(cast: Cast, job: Job, document: DesignDocument): Promise<void> {
  if (job.buildRevisionId === null) throw new Error('the job was released without a build revision');
  const work = await Fieldwork.begin(cast, { id: job.id, buildRevisionId: job.buildRevisionId }, 18);
  await work.prove((item) => item.group !== 'J');
  const { verdict } = await cast.app.get(LocatesService).list(work.actor('owner'), job.id);
  if (!verdict.mayDig) return;
  const proof = { pump: 'M1', runs: pumpDownRuns(document, 'M1'), note: 'First run with an empty line, not counted.' };
  await cast.app.get(ProofService).record(work.actor('crew'), job.id, proof);
  const open = await work.prove(() => true);
  if (open.length > 0) throw new Error(`the demo job cannot be handed over: ${open.join(', ')} stayed open`);
  await cast.app.get(HandoverService).complete(act(cast, 'owner', 15), job.id, {
    asBuilt: asBuiltOf(document), pumpSerial: 'DEMO-A-0041', breaker: 'Panel in the garage, breaker 14', deviations: '', customerName: 'Marisol Pruett', warrantyYears: 2,
  });
}

/** Shot again in the trench: a sixteenth of an inch here and there. */
function asBuiltOf(document: DesignDocument): { part: string; field: string; level: number }[] {
  const sixteenth = 0.0254 / 16;
  const fields = { channel: ['invertUp', 'invertDown', 'grateLevel'], pipe: ['invertUp', 'invertDown'], basin: ['onLevel', 'offLevel', 'alarmLevel', 'rimLevel'], outlet: ['level'] } as const;
  return document.system.parts.flatMap((part) =>
    (part.kind in fields ? fields[part.kind as keyof typeof fields] : []).map((field, index) => ({ part: part.id, field, level: Number(Reflect.get(part, field)) + (index % 2 === 0 ? sixteenth : 0) })),
  );
}
