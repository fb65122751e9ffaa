import type { DesignDocument } from '@yardfall/calc';
import { DesignDocumentSchema, type Job, type NewJob, RainTableSchema, type RainTableRow, type Revision, type Survey, type SurveyContent } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { DesignsService } from '../designs/designs.service.ts';
import { DraftsService } from '../designs/drafts.service.ts';
import { IssueService } from '../designs/issue.service.ts';
import { JobsService } from '../jobs/jobs.service.ts';
import { RainService } from '../rain/rain.service.ts';
import { SurveysService } from '../surveys/surveys.service.ts';
import { act, type Cast } from './cast.ts';
import { stamped } from './sites/documents.ts';

/** The first steps that every site of the demo takes, through the services that people use. */
export interface Begun {
  readonly job: Job;
  readonly survey: Survey;
  readonly rain: RainTableRow;
}

export async function begin(cast: Cast, call: NewJob, content: SurveyContent, document: DesignDocument, daysAgo: number): Promise<Begun> {
  const { app, members } = cast;
  const job = await app.get(JobsService).create(act(cast, 'estimator', daysAgo), call);
  const assignments = [{ memberId: members.estimator.id, role: 'estimator' as const }, { memberId: members.crew.id, role: 'crew' as const }];
  await app.get(JobsService).assign(act(cast, 'owner', daysAgo, 15), job.id, { assignments });
  const survey = await app.get(SurveysService).create(act(cast, 'estimator', daysAgo - 1, 15), job.id, { name: 'First visit', content });
  const rain = await app.get(RainService).type(act(cast, 'estimator', daysAgo - 1, 20), job.id, { name: document.rain.table.name, table: RainTableSchema.parse(document.rain.table) });
  return { job, survey, rain };
}

export function draw(cast: Cast, { job, survey, rain }: Begun, name: string, document: DesignDocument, daysAgo: number): Promise<Revision> {
  const actor = act(cast, 'estimator', daysAgo, 14);
  const copy = stamped(document, survey, rain, actor.request.at);
  return cast.app.get(DesignsService).create(actor, job.id, { name, document: DesignDocumentSchema.parse(copy), fromRevisionId: null });
}

/** Accepts each caution by name, then issues what was seen. */
export async function issue(cast: Cast, revision: Revision, notes: Readonly<Record<string, string>>, daysAgo: number): Promise<Revision> {
  const actor = act(cast, 'estimator', daysAgo, 16);
  let seen = revision;
  for (const { code, at, severity } of revision.evaluation?.findings ?? []) {
    if (severity !== 'caution') continue;
    seen = await cast.app.get(DraftsService).acknowledge(actor, revision.jobId, revision.id, { code, at, note: notes[code] ?? 'Seen on site and accepted.' });
  }
  return cast.app.get(IssueService).issue(withVersion(actor, seen.version), revision.jobId, revision.id);
}

/** As if the page that was read had sent its version along. */
export function withVersion(actor: Actor, version: number): Actor {
  return { ...actor, request: { ...actor.request, ifMatch: `"${String(version)}"` } };
}

