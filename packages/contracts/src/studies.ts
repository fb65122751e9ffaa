import { z } from 'zod';
import { finite, Id, Instant, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** Years of rain at a gauge, as the company uploaded them. */
export const RainRecordRow = z
  .object({
    id: Id, name: z.string(), originalName: z.string(), sha256: Sha256,
    /** Length of one reading in the file [s]: 300, 900 or 3600. */
    step: z.number().int(),
    from: z.string(), to: z.string(), years: z.number(), missingHours: z.number(), createdAt: Instant, by: z.string(),
  })
  .meta({ id: 'RainRecordRow' });
export type RainRecordRow = z.infer<typeof RainRecordRow>;

export const StudyStatus = z.enum(['waiting', 'running', 'done', 'stopped', 'failed']).meta({ id: 'StudyStatus' });
/** Something that takes a while and is worked out beside the page: the options of a design, or years of rain through it. */
export const Study = z
  .object({
    id: Id, jobId: Id, revisionId: Id, kind: z.enum(['options', 'record']), status: StudyStatus,
    /** Share that is done, 0 to 1. */
    progress: z.number(),
    /** Why it failed: a code of the engine and its parameters. */
    problem: z.object({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) }).nullable(),
    /** The document that it was asked about; a draft may have moved on since. */
    documentSha256: Sha256, calcVersion: z.string(), createdAt: Instant, finishedAt: Instant.nullable(), by: z.string(),
  })
  .meta({ id: 'Study' });
export type Study = z.infer<typeof Study>;

/** Other figures for one part, from the library. What is drawn is always one of the choices. */
const OptionPick = z.strictObject({ part: text(40, 1), entries: z.array(Id).min(1).max(40) });
export const OptionsRequest = z
  .strictObject({
    picks: z.array(OptionPick).max(12),
    /** Gutters whose roof water may be led away or left to fall. */
    diversions: z.array(text(40, 1)).max(12),
  })
  .meta({ id: 'OptionsRequest' });
export type OptionsRequest = z.infer<typeof OptionsRequest>;

const StudyParams = z.strictObject({ jobId: Id, studyId: Id });
const RevisionParams = z.strictObject({ jobId: Id, revisionId: Id });
/** What was asked and what came out, as the calc package gives it. */
const Outcome = z.record(z.string(), z.unknown());

export const studies = {
  records: endpoint({
    id: 'studies.records', method: 'GET', path: '/rain-records', summary: 'Rain records that the company has uploaded, newest first',
    access: { permission: 'rain.read' }, status: 200, params: null, query: null, body: null, response: z.object({ items: z.array(RainRecordRow) }),
  }),
  uploadRecord: endpoint({
    id: 'studies.uploadRecord', method: 'POST', path: '/rain-records', summary: 'Upload years of hourly, 15-minute or 5-minute rain as CSV; a broken file is refused with line and column',
    access: { permission: 'rain.edit' }, status: 201, params: null, query: null, body: z.strictObject({ name: text(80, 1) }), response: RainRecordRow,
    upload: { maxBytes: 33_554_432, types: ['text/csv', 'text/plain', 'application/vnd.ms-excel', 'application/octet-stream'] },
    errors: ['rain.unreadable', 'request.tooLarge'],
  }),
  list: endpoint({
    id: 'studies.list', method: 'GET', path: '/jobs/:jobId/revisions/:revisionId/studies', summary: 'Studies of a revision, newest first',
    access: { permission: 'studies.read' }, status: 200, params: RevisionParams, query: null, body: null, response: z.object({ items: z.array(Study) }), errors: ['notFound'],
  }),
  options: endpoint({
    id: 'studies.options', method: 'POST', path: '/jobs/:jobId/revisions/:revisionId/studies/options', summary: 'Look for the cheapest combinations at every protection, among parts of the library',
    access: { permission: 'studies.run' }, status: 202, params: RevisionParams, query: null, body: OptionsRequest, response: Study, errors: ['notFound', 'conflict.state'],
  }),
  record: endpoint({
    id: 'studies.record', method: 'POST', path: '/jobs/:jobId/revisions/:revisionId/studies/record', summary: 'Run years of recorded rain through the design',
    access: { permission: 'studies.run' }, status: 202, params: RevisionParams, query: null,
    body: z.strictObject({ recordId: Id, /** Times a year that the customer has had water in; null when nobody knows. */ reportedPerYear: finite(0.01, 100).nullable() }), response: Study,
    errors: ['notFound', 'conflict.state'],
  }),
  read: endpoint({
    id: 'studies.read', method: 'GET', path: '/jobs/:jobId/studies/:studyId', summary: 'One study with what was asked and what came out',
    access: { permission: 'studies.read' }, status: 200, params: StudyParams, query: null, body: null, response: Study.extend({ request: Outcome, result: Outcome.nullable() }), errors: ['notFound'],
  }),
  stop: endpoint({
    id: 'studies.stop', method: 'POST', path: '/jobs/:jobId/studies/:studyId/stop', summary: 'Stop a study that waits or runs',
    access: { permission: 'studies.run' }, status: 200, params: StudyParams, query: null, body: z.strictObject({}), response: Study, errors: ['notFound', 'conflict.state'],
  }),
};
