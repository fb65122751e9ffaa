import type { Evaluation } from '@yardfall/calc';
import { z } from 'zod';
import { Id, Instant, JobParams, Language, page, PageQuery, Sha256, text, UnitSystem } from './common.ts';
import { DesignDocumentSchema } from './document/schema.ts';
import { endpoint } from './endpoint.ts';

/** The engine's whole output; its types live in the calc package and its bytes are stored as they were computed. */
export const EvaluationSchema = z
  .custom<Evaluation>((value) => typeof value === 'object' && value !== null && 'calcVersion' in value)
  .meta({ id: 'Evaluation', type: 'object', description: 'Results, findings, workings and mass error in SI, as the calc package gives them' });

export const RevisionStatus = z.enum(['draft', 'issued', 'superseded']).meta({ id: 'RevisionStatus' });

/** A named person accepts a caution of one revision, by its finding code and place. */
export const Acknowledgement = z
  .object({ code: z.string(), at: z.string().nullable(), memberId: Id, by: z.string(), when: Instant, note: z.string() })
  .meta({ id: 'Acknowledgement' });

const revisionCore = {
  id: Id,
  jobId: Id,
  designId: Id,
  designName: z.string(),
  number: z.number().int(),
  status: RevisionStatus,
  documentSha256: Sha256,
  evaluationSha256: Sha256.nullable(),
  calcVersion: z.string().nullable(),
  stopCount: z.number().int(),
  cautionCount: z.number().int(),
  provisional: z.boolean(),
  version: z.number().int(),
  createdAt: Instant,
  updatedAt: Instant,
  createdBy: z.string(),
  issuedAt: Instant.nullable(),
  issuedBy: z.string().nullable(),
  isBuildRevision: z.boolean(),
};
export const RevisionRow = z.object(revisionCore).meta({ id: 'RevisionRow' });
export type RevisionRow = z.infer<typeof RevisionRow>;

export const Revision = z
  .object({ ...revisionCore, document: DesignDocumentSchema, evaluation: EvaluationSchema.nullable(), acknowledgements: z.array(Acknowledgement) })
  .meta({ id: 'Revision' });
export type Revision = z.infer<typeof Revision>;

export const Design = z.object({ id: Id, jobId: Id, name: z.string(), createdAt: Instant, revisions: z.array(RevisionRow) }).meta({ id: 'Design' });
export type Design = z.infer<typeof Design>;

/**
 * One edit of a draft. `path` is a list of keys from the document's root ("system","parts","@P1","invertDown";
 * "@id" picks the element of a list by its id). `base` is the draft version that the editor saw.
 */
export const DraftOperation = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('replace'), path: z.array(text(60, 1)).min(1).max(10), value: z.json() }),
    z.strictObject({ kind: z.literal('add'), path: z.array(text(60, 1)).min(1).max(10), value: z.json() }),
    z.strictObject({ kind: z.literal('remove'), path: z.array(text(60, 1)).min(1).max(10) }),
    z.strictObject({ kind: z.literal('connect'), part: text(40, 1), drainsTo: text(40, 1).nullable() }),
  ])
  .meta({ id: 'DraftOperation' });
export type DraftOperation = z.infer<typeof DraftOperation>;

/** One edit of a draft as it was stored: who made it and when. */
export const DraftEdit = z
  .object({ seq: z.number().int(), at: Instant, by: z.string(), part: z.string(), operation: DraftOperation })
  .meta({ id: 'DraftEdit' });
export type DraftEdit = z.infer<typeof DraftEdit>;

/** Somebody else who has a draft open now. */
export const Presence = z.object({ memberId: Id, name: z.string(), part: z.string().nullable() }).meta({ id: 'Presence' });
export type Presence = z.infer<typeof Presence>;

const RevisionParams = z.strictObject({ jobId: Id, revisionId: Id });
const revisionErrors = ['notFound', 'design.notDraft'] as const;

/** What can be put on paper; `compare` draws this revision over an earlier one. */
export const PrintedSheet = z.enum(['section', 'plan', 'storm', 'pump', 'compare']).meta({ id: 'PrintedSheet' });
export type PrintedSheet = z.infer<typeof PrintedSheet>;

export const designs = {
  list: endpoint({
    id: 'designs.list', method: 'GET', path: '/jobs/:jobId/designs', summary: 'Variants of a job with their revisions',
    access: { permission: 'designs.read' }, status: 200, params: JobParams, query: null, body: null, response: z.object({ items: z.array(Design) }), errors: ['notFound'],
  }),
  create: endpoint({
    id: 'designs.create', method: 'POST', path: '/jobs/:jobId/designs', summary: 'Start a variant: from a document, from another revision, or from the levels and rain of the job',
    access: { permission: 'designs.edit' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ name: text(80, 1), document: DesignDocumentSchema.nullable(), fromRevisionId: Id.nullable() }), response: Revision,
    errors: ['notFound', 'conflict.duplicate', 'document.invalid'],
  }),
  revise: endpoint({
    id: 'designs.revise', method: 'POST', path: '/jobs/:jobId/designs/:designId/revisions', summary: 'Start a draft from an earlier revision of the variant',
    access: { permission: 'designs.edit' }, status: 201, params: z.strictObject({ jobId: Id, designId: Id }), query: null,
    body: z.strictObject({ fromRevisionId: Id }), response: Revision, errors: ['notFound', 'design.draftOpen'],
  }),
  read: endpoint({
    id: 'designs.read', method: 'GET', path: '/jobs/:jobId/revisions/:revisionId', summary: 'One revision with document and evaluation',
    access: { permission: 'designs.read' }, status: 200, params: RevisionParams, query: null, body: null, response: Revision, concurrency: 'etag', errors: ['notFound'],
  }),
  operate: endpoint({
    id: 'designs.operate', method: 'POST', path: '/jobs/:jobId/revisions/:revisionId/operations',
    summary: 'Apply edits to a draft; an edit of a part that changed since its base comes back as draft.conflict',
    access: { permission: 'designs.edit' }, status: 200, params: RevisionParams, query: null,
    body: z.strictObject({ base: z.number().int().min(1), operations: z.array(DraftOperation).min(1).max(200) }), response: Revision,
    errors: [...revisionErrors, 'draft.conflict', 'document.invalid'],
  }),
  history: endpoint({
    id: 'designs.history', method: 'GET', path: '/jobs/:jobId/revisions/:revisionId/operations', summary: 'Edits of a draft, the newest first: who changed what and when',
    access: { permission: 'designs.read' }, status: 200, params: RevisionParams, query: PageQuery, body: null, response: page(DraftEdit), errors: ['notFound'],
  }),
  moment: endpoint({
    id: 'designs.moment', method: 'GET', path: '/jobs/:jobId/revisions/:revisionId/operations/:seq', summary: 'The document as it was after an edit; 0 is the document that the draft began with',
    access: { permission: 'designs.read' }, status: 200, params: RevisionParams.extend({ seq: z.coerce.number().int().min(0) }), query: null, body: null,
    response: z.object({ seq: z.number().int(), document: DesignDocumentSchema }), errors: ['notFound'],
  }),
  print: endpoint({
    id: 'designs.print', method: 'GET', path: '/jobs/:jobId/revisions/:revisionId/print',
    summary: 'A drawing of a revision to scale on paper; the same file each time for an issued revision, and none where there is nothing to draw',
    access: { permission: 'designs.read' }, status: 200, params: RevisionParams,
    query: z.strictObject({ sheet: PrintedSheet, paper: z.enum(['letter', 'a4']).default('letter'), language: Language.optional(), units: UnitSystem.optional(), against: Id.optional() }),
    body: null, response: null, produces: 'application/pdf', errors: ['notFound', 'request.invalid'],
  }),
  presence: endpoint({
    id: 'designs.presence', method: 'PUT', path: '/jobs/:jobId/revisions/:revisionId/presence',
    summary: 'Say that this person has a draft open, and at which part; the answer is who else has. Whoever is not heard of for 75 seconds is gone',
    access: { permission: 'designs.edit' }, status: 200, idempotency: 'none', params: RevisionParams, query: null,
    body: z.strictObject({ part: text(40, 1).nullable(), here: z.boolean() }), response: z.object({ others: z.array(Presence) }), errors: ['notFound', 'design.notDraft'],
  }),
  acknowledge: endpoint({
    id: 'designs.acknowledge', method: 'POST', path: '/jobs/:jobId/revisions/:revisionId/acknowledgements', summary: 'Accept a caution by name',
    access: { permission: 'designs.edit' }, status: 200, params: RevisionParams, query: null,
    body: z.strictObject({ code: text(80, 1), at: text(40).nullable(), note: text(500) }), response: Revision, errors: [...revisionErrors],
  }),
  issue: endpoint({
    id: 'designs.issue', method: 'POST', path: '/jobs/:jobId/revisions/:revisionId/issue', summary: 'Issue a draft: it is evaluated, frozen, and supersedes the issued one of its variant',
    access: { permission: 'designs.issue' }, status: 200, params: RevisionParams, query: null, body: z.strictObject({}), response: Revision, concurrency: 'ifMatch',
    errors: [...revisionErrors, 'design.stopFindings', 'design.unacknowledged', 'design.referred', 'conflict.stale', 'conflict.preconditionRequired'],
  }),
};

export const evaluation = {
  evaluate: endpoint({
    id: 'evaluate.run', method: 'POST', path: '/evaluate', summary: 'Evaluate a design document without storing it',
    access: { permission: 'evaluate.run' }, status: 200, idempotency: 'none', params: null, query: null, body: z.strictObject({ document: DesignDocumentSchema }), maxBody: 524_288,
    response: z.object({ documentSha256: Sha256, evaluation: EvaluationSchema }), errors: ['document.invalid', 'busy'],
  }),
};
