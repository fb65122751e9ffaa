import { z } from 'zod';
import { CalendarDate, finite, Id, Instant, JobParams, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** One pump-down between two calibrated marks: levels in m, volume in m3, time in s. */
export const PumpDownRun = z
  .strictObject({
    upperLevel: finite(-10_000, 10_000), lowerLevel: finite(-10_000, 10_000), volume: finite(1e-6, 100), seconds: finite(0.1, 86_400),
    /** A run that began with an empty line fills it first and is not counted. */
    emptyLine: z.boolean(),
  })
  .meta({ id: 'PumpDownRun' });
export type PumpDownRun = z.infer<typeof PumpDownRun>;

export const ProofTest = z
  .object({
    id: Id, jobId: Id, revisionId: Id, pump: z.string(), runs: z.array(PumpDownRun),
    meanFlow: z.number(), uncertainty: z.number(), spread: z.number(), predictedFlow: z.number(), meanLevel: z.number(), difference: z.number(),
    verdict: z.enum(['pass', 'explain', 'fail', 'repeat']), note: z.string(), sha256: Sha256, recordedBy: z.string(), recordedAt: Instant,
  })
  .meta({ id: 'ProofTest' });
export type ProofTest = z.infer<typeof ProofTest>;

export const AsBuiltLevel = z.strictObject({ part: text(40, 1), field: text(40, 1), level: finite(-10_000, 10_000) }).meta({ id: 'AsBuiltLevel' });

/** Where each buried part lies: its level and two tapes [m] from fixed points of the house. */
export const TiesOnRecord = z
  .object({
    from: z.tuple([z.string(), z.string()]),
    parts: z.array(z.object({ part: z.string(), name: z.string(), at: z.enum(['middle', 'centre']), level: z.number().nullable(), one: z.number().nullable(), two: z.number().nullable() })),
  })
  .meta({ id: 'TiesOnRecord' });
export type TiesOnRecord = z.infer<typeof TiesOnRecord>;

export const Handover = z
  .object({
    jobId: Id, asBuilt: z.array(AsBuiltLevel.extend({ designed: z.number(), difference: z.number() })), pumpSerial: z.string(), breaker: z.string(),
    deviations: z.string(), customerName: z.string(), handedOverAt: Instant, warrantyFrom: CalendarDate, warrantyUntil: CalendarDate, sha256: Sha256, by: z.string(),
    /** Null on records from before they were asked for. */
    ties: TiesOnRecord.nullable(),
  })
  .meta({ id: 'Handover' });
export type Handover = z.infer<typeof Handover>;

export const proof = {
  list: endpoint({
    id: 'proof.list', method: 'GET', path: '/jobs/:jobId/proof-tests', summary: 'Pump-down tests with their verdicts', access: { permission: 'proof.read' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ items: z.array(ProofTest) }), errors: ['notFound'],
  }),
  record: endpoint({
    id: 'proof.record', method: 'POST', path: '/jobs/:jobId/proof-tests', summary: 'Record a pump-down: three runs against the duty at that level',
    access: { permission: 'proof.record' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ pump: text(40, 1), runs: z.array(PumpDownRun).min(1).max(10), note: text(1000) }), response: ProofTest,
    errors: ['notFound', 'proof.invalid', 'checklist.notBuildRevision', 'checklist.held'],
  }),
};

export const handover = {
  read: endpoint({
    id: 'handover.read', method: 'GET', path: '/jobs/:jobId/handover', summary: 'As-built record and warranty, or what is still open before the handover',
    access: { permission: 'handover.read' }, status: 200, params: JobParams, query: null, body: null,
    response: z.object({ handover: Handover.nullable(), open: z.array(z.object({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) })) }), errors: ['notFound'],
  }),
  complete: endpoint({
    id: 'handover.complete', method: 'POST', path: '/jobs/:jobId/handover', summary: 'Hand over: as-built levels, who was shown, warranty from today',
    access: { permission: 'handover.complete' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({
      asBuilt: z.array(AsBuiltLevel).max(200), pumpSerial: text(80), breaker: text(80), deviations: text(2000), customerName: text(120, 1), warrantyYears: z.number().int().min(1).max(10),
    }),
    response: Handover, errors: ['notFound', 'handover.notReady'],
  }),
};
