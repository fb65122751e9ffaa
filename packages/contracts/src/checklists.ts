import { z } from 'zod';
import { CalendarDate, finite, Id, Instant, JobParams, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

export const evidenceKinds = ['tick', 'photo', 'value', 'signature', 'document', 'text'] as const;
export const EvidenceKind = z.enum(evidenceKinds).meta({ id: 'EvidenceKind' });
export type EvidenceKind = z.infer<typeof EvidenceKind>;
/** crew lead, owner or estimator, electrician, homeowner, inspector. */
export const signers = ['crewLead', 'owner', 'electrician', 'homeowner', 'inspector'] as const;
export const Signer = z.enum(signers).meta({ id: 'Signer' });
export type Signer = z.infer<typeof Signer>;

const factBase = {
  id: Id,
  deviceId: Id,
  seq: z.number().int().min(1).max(1e9),
  deviceTime: Instant,
  factVersion: z.literal(1),
  revisionId: Id,
  itemKey: text(80, 1),
  requirementHash: Sha256,
  /** Facts that this one follows: those of the same item, and those that opened the hold points before it. */
  seen: z.array(Id).max(200),
};

/** What a phone recorded about one item. Facts are only ever added; the state of an item is the fold of them. */
export const FieldFact = z
  .discriminatedUnion('kind', [
    /** The work of the item begins; from here the age of a guarding photo no longer matters. */
    z.strictObject({ ...factBase, kind: z.literal('begun') }),
    z.strictObject({ ...factBase, kind: z.literal('ticked'), note: text(1000) }),
    z.strictObject({ ...factBase, kind: z.literal('photo'), photoId: Id, takenAt: Instant }),
    /** Measured value in SI, against the design's value for the item. */
    z.strictObject({ ...factBase, kind: z.literal('measured'), name: text(60, 1), value: z.number().min(-1e6).max(1e6) }),
    /** Inverts of a laid pipe from its upper end: `at` along it and `level`, both in m. They stand for its measures, the least fall of any segment for its slope. */
    z.strictObject({ ...factBase, kind: z.literal('profile'), shots: z.array(z.strictObject({ at: finite(0, 2000), level: finite(-10_000, 10_000) })).min(2).max(60) }),
    /** A serial or a model, as it stands on the plate. */
    z.strictObject({ ...factBase, kind: z.literal('written'), name: text(60, 1), text: text(120, 1) }),
    /** `drawn` is the signature as the path of an SVG in a field of 300 by 100. */
    z.strictObject({
      ...factBase, kind: z.literal('signed'), signer: Signer, name: text(120, 1), licence: text(60), statement: text(500), drawn: z.string().min(1).max(6000).regex(/^[ML0-9 ]+$/).optional(),
    }),
    z.strictObject({ ...factBase, kind: z.literal('document'), reference: text(200, 1), validOn: CalendarDate.nullable() }),
    /** The figure of that fact was mistyped: it counts no more and stays on record with the reason. */
    z.strictObject({ ...factBase, kind: z.literal('struck'), figure: Id, reason: text(500, 3) }),
    /** The taped grate was lifted again: photos and tick of before show nothing of it any more. */
    z.strictObject({ ...factBase, kind: z.literal('lifted') }),
    /** It rained: the look of the day before shows nothing of the trench any more. */
    z.strictObject({ ...factBase, kind: z.literal('rained') }),
    z.strictObject({ ...factBase, kind: z.literal('notApplicable'), reason: text(500, 3) }),
    z.strictObject({ ...factBase, kind: z.literal('failed'), reason: text(500, 3) }),
    z.strictObject({ ...factBase, kind: z.literal('corrected'), note: text(500, 3) }),
    z.strictObject({ ...factBase, kind: z.literal('waived'), reason: text(500, 10) }),
  ])
  .meta({ id: 'FieldFact' });
export type FieldFact = z.infer<typeof FieldFact>;
export type FieldFactKind = FieldFact['kind'];

/** Judged after it was stored. `kept` facts count; `late` and `refused` ones stay on record with the reason. */
export const StoredFact = z
  .object({
    fact: FieldFact, memberId: Id, by: z.string(), serverTime: Instant, verdict: z.enum(['kept', 'late', 'refused', 'quarantined']), reason: z.string().nullable(),
    /** How far the phone's clock was behind the office's when it sent the fact [s]; 0 when it did not say. */
    clockBehind: z.number().int(),
  })
  .meta({ id: 'StoredFact' });
export type StoredFact = z.infer<typeof StoredFact>;

export const ItemState = z.enum(['open', 'started', 'proven', 'notApplicable', 'failed', 'disputed', 'waived']).meta({ id: 'ItemState' });
export type ItemState = z.infer<typeof ItemState>;

/** What must be shown for the item to count as proven. Limits are in SI and come from the build revision. */
export const Requirement = z
  .object({
    template: z.string(),
    /** By which rules the list was built; absent for those of the first. */
    rules: z.number().int().optional(),
    part: z.string().nullable(),
    evidence: z.array(EvidenceKind),
    signers: z.array(Signer),
    minPhotos: z.number().int(),
    measures: z.array(
      z.object({ name: z.string(), quantity: z.enum(['level', 'height', 'length', 'slope', 'volume', 'count', 'flow', 'minutes', 'seconds', 'share', 'number', 'check']), target: z.number(), min: z.number().nullable(), max: z.number().nullable(),
        /** Not asked for where the measure of this name is there and good. */
        unless: z.string().optional(),
        /** Asked for only where the measure of that name came out as high as this. */
        when: z.object({ name: z.string(), least: z.number() }).optional(),
        /** May be measured and need not: outside its limits it is no failure. */
        optional: z.boolean().optional(),
      }),
    ),
    /** What is written down from a plate; absent when nothing is. */
    texts: z.array(z.string()).optional(),
    params: z.record(z.string(), z.union([z.string(), z.number()])),
    /** How long before the guarded work a photo may have been taken [s]; null for no limit. */
    freshFor: z.number().nullable(),
    /** Asked for again on each day in this time zone, and after rain; absent where once is enough. */
    daily: z.string().optional(),
    /** How long joints cure before they bear pressure [s], from which temperature [°F] on, the warmest first; absent where nothing is glued. */
    cure: z.array(z.object({ from: z.number(), wait: z.number() })).optional(),
    /** The moment before which it is not ticked; absent where there is none. */
    tickFrom: z.string().optional(),
  })
  .meta({ id: 'Requirement' });
export type Requirement = z.infer<typeof Requirement>;

export const ChecklistItem = z
  .object({
    key: z.string(), template: z.string(), group: z.string(), part: z.string().nullable(), partName: z.string().nullable(), position: z.number().int(),
    holdPoint: z.string().nullable(), requirement: Requirement, requirementHash: Sha256, state: ItemState,
    /** Hold points that still guard this item, with the items that would open each. */
    heldBy: z.array(z.object({ holdPoint: z.string(), items: z.array(z.string()) })),
    missing: z.array(z.string()),
    reopenedReason: z.string().nullable(),
    facts: z.array(StoredFact),
  })
  .meta({ id: 'ChecklistItem' });
export type ChecklistItem = z.infer<typeof ChecklistItem>;

export const HoldPointState = z
  .object({
    id: z.string(),
    /** Set when each part has its own hold point: two channels may be poured on two days. */
    part: z.string().nullable(),
    open: z.boolean(), waived: z.boolean(), items: z.array(z.string()), guards: z.array(z.string()),
  })
  .meta({ id: 'HoldPointState' });

export const Checklist = z
  .object({
    jobId: Id, revisionId: Id, items: z.array(ChecklistItem), holdPoints: z.array(HoldPointState),
    /** When the locate tickets say "may dig", as far as is known now: a phone without a signal goes by it. */
    digging: z.array(z.object({ from: Instant, until: Instant })),
  })
  .meta({ id: 'Checklist' });
export type Checklist = z.infer<typeof Checklist>;

/** The build revision evaluated with its levels as they were shot, beside the same engine's answer to the design as it was issued. */
export const AsBuilt = z
  .object({
    revisionId: Id, calcVersion: z.string(),
    /** Levels and pipes that were shot so far. */
    levels: z.array(z.object({ part: z.string(), field: z.string(), level: z.number() })),
    pipes: z.array(z.object({ part: z.string(), shots: z.array(z.object({ at: z.number(), level: z.number() })) })),
    documentSha256: Sha256, resultsSha256: Sha256.nullable(),
    /** Why what was shot cannot be evaluated. */
    problem: z.object({ code: z.string(), path: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) }).nullable(),
    /** Room below each sill in the designed storm [m]. */
    freeboards: z.array(z.object({ sill: z.string(), returnPeriod: z.number(), designed: z.number(), built: z.number() })),
  })
  .meta({ id: 'AsBuilt' });
export type AsBuilt = z.infer<typeof AsBuilt>;

export const checklists = {
  read: endpoint({
    id: 'checklists.read', method: 'GET', path: '/jobs/:jobId/checklist', summary: 'The checklist of the build revision with states and hold points',
    access: { permission: 'checklists.read' }, status: 200, params: JobParams, query: null, body: null, response: Checklist, errors: ['notFound', 'checklist.notBuildRevision'],
  }),
  record: endpoint({
    id: 'checklists.record', method: 'POST', path: '/jobs/:jobId/facts',
    summary: 'Store field facts. Every well-formed fact of a known device is stored first and judged afterwards; each comes back with its verdict',
    access: { permission: 'checklists.record' }, status: 200, params: JobParams, query: null, body: z.strictObject({ facts: z.array(FieldFact).min(1).max(100), sentAt: Instant.optional() }),
    fromCutOff: true, response: z.object({ facts: z.array(StoredFact), checklist: Checklist }), errors: ['notFound', 'checklist.notBuildRevision'],
  }),
  asBuilt: endpoint({
    id: 'checklists.asBuilt', method: 'GET', path: '/jobs/:jobId/as-built', summary: 'The design with the levels that were shot in the open trench: room below the sills as designed and as built',
    access: { permission: 'checklists.read' }, status: 200, params: JobParams, query: null, body: null, response: AsBuilt, errors: ['notFound', 'checklist.notBuildRevision', 'busy'],
  }),
  /** Answers 409 checklist.held for work that a closed hold point guards: the crew's "start" of an item. */
  begin: endpoint({
    id: 'checklists.begin', method: 'POST', path: '/jobs/:jobId/checklist/:itemKey/begin', summary: 'Begin the work of an item; refused while a hold point guards it',
    access: { permission: 'checklists.record' }, status: 200, params: z.strictObject({ jobId: Id, itemKey: text(80, 1) }), query: null, body: z.strictObject({}),
    response: ChecklistItem, errors: ['notFound', 'checklist.held', 'checklist.stopped'],
  }),
  waive: endpoint({
    id: 'checklists.waive', method: 'POST', path: '/jobs/:jobId/checklist/:itemKey/waive', summary: "An owner's waiver of one item of a hold point, with a reason that the customer can read",
    access: { permission: 'checklists.waive' }, status: 200, params: z.strictObject({ jobId: Id, itemKey: text(80, 1) }), query: null,
    body: z.strictObject({ reason: text(500, 10) }), response: Checklist, errors: ['notFound'],
  }),
};
