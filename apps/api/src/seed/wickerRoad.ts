import type { SurveyContent } from '@yardfall/contracts';
import { ReleaseService } from '../jobs/release.service.ts';
import { answerPermits } from './approvals.ts';
import { act, type Cast } from './cast.ts';
import { Fieldwork } from './fieldwork.ts';
import { wickerRoadCall } from './sites/calls.ts';
import { siteDocument } from './sites/documents.ts';
import { readingsOf } from './sites/readings.ts';
import { askForMarks, sell } from './sale.ts';
import { begin, draw, issue } from './story.ts';

const notes = { 'rain.illustrative': 'A made-up table for the demonstration; nothing is built from it.' };
const message = 'No pump and no drain under the lawn: the roof water leaves by its own lines, and the soil falls away from the wall again.';

/** Invented levels: the lawn stands higher than the soil at the wall, so the roof water comes back. */
const survey: SurveyContent = {
  levelBook: {
    mode: 'heightOfInstrument', benchMark: { name: 'Finished floor at the back door', level: 30.66288 },
    readings: readingsOf('14', [
      ['Finished floor at the back door', 4.2, null, null, 'Bench mark'], ['Slab edge', null, 4.8, null, ''], ['Soil at the wall', null, 4.9, null, ''], ['Lawn at 10 ft', null, 4.75, null, 'Higher than the soil at the wall'],
      ['Side lawn', null, 6, null, ''], ['Side lawn, end of the swale', null, 6.32, null, ''], ['Finished floor at the back door', null, null, 4.2, 'Closing shot'],
    ]),
  },
  points: [{ point: 'Finished floor at the back door', role: 'floor', station: -0.3048, distance: null, tailwater: null }, { point: 'Slab edge', role: 'sill', station: 0, distance: null, tailwater: null }],
  stageArea: [], drainTests: [], observations: [],
};

/** Gutters and grade: sold, released, and next on the crew's list; what stands before the trenches is proven. */
export async function tellWickerRoad(cast: Cast): Promise<void> {
  const document = siteDocument('lindqvist');
  const begun = await begin(cast, wickerRoadCall, survey, document, 24);
  const revision = await issue(cast, await draw(cast, begun, 'Roof lines and regrading', document, 22), notes, 21);
  const offerId = await sell(cast, begun.job, revision, { allowances: [], message, acceptedBy: 'Asta Lindqvist' }, 20);
  await answerPermits(cast, begun.job.id, { granted: { grading: 'G-DEMO-0409', licence: 'Class of the demo company' }, otherwise: 'Asked at the demo town counter: not asked for on this job.' }, 17);
  const released = await cast.app.get(ReleaseService).release(act(cast, 'owner', 16), begun.job.id, offerId);
  await askForMarks(cast, begun.job.id, { number: 'NC-DEMO-0040', area: 'Back and side lawn within 60 ft of the house', clear: ['Sewer'] }, 15);
  if (released.buildRevisionId === null) throw new Error('the job was released without a build revision');
  const work = await Fieldwork.begin(cast, { id: released.id, buildRevisionId: released.buildRevisionId }, 1);
  await work.prove((item) => item.group === 'A');
}
