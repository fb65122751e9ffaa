import { JobsService } from '../jobs/jobs.service.ts';
import type { SurveyContent } from '@yardfall/contracts';
import { act, type Cast } from './cast.ts';
import { ridgebackCall, sallowBendCall } from './sites/calls.ts';
import { siteDocument } from './sites/documents.ts';
import { ridgebackSurvey } from './sites/ridgeback.survey.ts';
import { begin, draw } from './story.ts';

/** No pump: a design on the table, with one outlet question still open. */
export async function tellRidgeback(cast: Cast): Promise<void> {
  const document = siteDocument('ridgeback');
  const begun = await begin(cast, ridgebackCall, ridgebackSurvey, document, 9);
  await draw(cast, begun, 'Channel and gravity pipe', document, 6);
}

/** An engineer is needed: what was seen, no design, a letter. */
export async function tellSallowBend(cast: Cast): Promise<void> {
  const document = siteDocument('sallow-bend');
  const content: SurveyContent = {
    levelBook: { mode: 'direct', benchMark: { name: document.site.datum.benchMark, level: document.site.datum.level }, readings: [] },
    points: [], stageArea: [], drainTests: [],
    observations: document.site.observations.map(({ kind, note }, index) => ({ id: `01930000-0000-7000-8000-000000000b${String(index + 10)}`, kind, note })),
  };
  const { job } = await begin(cast, sallowBendCall, content, document, 12);
  const reason = 'Leaning wall, void under the slab and a county pipe: not ours to build.';
  await cast.app.get(JobsService).moveStage(act(cast, 'owner', 10), job.id, { stage: 'referred', reason });
}
