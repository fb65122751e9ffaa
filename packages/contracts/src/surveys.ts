import { z } from 'zod';
import { finite, Id, Instant, JobParams, Level, Sha256, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** One line of the level book. Rod readings in metres; exactly the columns that were read are filled. */
export const LevelReading = z
  .strictObject({
    id: Id,
    point: text(80, 1),
    backsight: finite(-10, 30).nullable(),
    intermediate: finite(-10, 30).nullable(),
    foresight: finite(-10, 30).nullable(),
    /** Direct reading relative to the bench mark, plus is above. */
    direct: finite(-100, 100).nullable(),
    note: text(300),
  })
  .meta({ id: 'LevelReading' });
export type LevelReading = z.infer<typeof LevelReading>;

export const LevelBook = z
  .strictObject({
    mode: z.enum(['heightOfInstrument', 'direct']),
    benchMark: z.strictObject({ name: text(80, 1), level: Level }),
    readings: z.array(LevelReading).max(500),
  })
  .meta({ id: 'LevelBook' });
export type LevelBook = z.infer<typeof LevelBook>;

export const pointRoles = ['sill', 'lowSpot', 'rim', 'floor', 'collectorInvert', 'outlet', 'grade', 'other'] as const;

/** What a surveyed point is; an outlet carries the pipe length to it [m] and the water to allow for above it [m]. */
export const SurveyPoint = z
  .strictObject({
    point: text(80, 1), role: z.enum(pointRoles), station: finite(-1000, 5000).nullable(), distance: finite(0, 5000).nullable(), tailwater: finite(0, 20).nullable(),
  })
  .meta({ id: 'SurveyPoint' });
/** Water-surface area of the low spot at one of its rising levels. */
export const SurveyStage = z.strictObject({ level: Level, area: finite(0, 1e6) }).meta({ id: 'SurveyStage' });
export const SurveyDrainTest = z
  .strictObject({
    id: Id, name: text(80, 1), diameter: finite(0.01, 2), hoseFlow: finite(0, 0.05), backedUpAfter: finite(0, 86_400).nullable(), dyeSeen: z.boolean(), cameraStop: finite(0, 1000).nullable(),
  })
  .meta({ id: 'SurveyDrainTest' });
export const SurveyObservation = z.strictObject({ id: Id, kind: text(40, 1), note: text(1000) }).meta({ id: 'SurveyObservation' });

/** Where a point of the book stands on the plan of the job, in plan meters. */
export const SurveyPin = z.strictObject({ point: text(80, 1), x: finite(-100_000, 100_000), y: finite(-100_000, 100_000) }).meta({ id: 'SurveyPin' });

export const SurveyContent = z
  .strictObject({
    levelBook: LevelBook,
    points: z.array(SurveyPoint).max(200),
    stageArea: z.array(SurveyStage).max(100),
    drainTests: z.array(SurveyDrainTest).max(20),
    observations: z.array(SurveyObservation).max(50),
    /** Left out where nothing is pinned, so that such a survey keeps its hash. */
    pins: z.array(SurveyPin).max(500).optional(),
  })
  .meta({ id: 'SurveyContent' });
export type SurveyContent = z.infer<typeof SurveyContent>;

export const ReducedPoint = z
  .object({ readingId: Id, point: z.string(), level: z.number(), adjusted: z.number(), instrumentHeight: z.number().nullable() })
  .meta({ id: 'ReducedPoint' });

/** What the calc package made of the book. */
export const SurveyReduction = z
  .object({
    points: z.array(ReducedPoint),
    sumCheck: z.object({ backsights: z.number(), foresights: z.number(), difference: z.number(), agrees: z.boolean() }).nullable(),
    misclosure: z.number().nullable(),
    allowable: z.number(),
    verdict: z.enum(['closes', 'caution', 'open', 'notClosed']),
    gravity: z.array(
      z.object({
        outlet: z.string(), shortfall: z.number(), shortfallWithMargin: z.number(), feasible: z.boolean(),
        /** Half width of the band in which the fall lies [m], and the answer with it. */
        uncertainty: z.number(), verdict: z.enum(['works', 'tight', 'cannotTell', 'short']),
      }),
    ),
    volumeToSill: z.number().nullable(),
    drainTests: z.array(z.object({ id: Id, volume: z.number().nullable(), blindLength: z.number().nullable() })),
    problems: z.array(z.object({ code: z.string(), readingId: Id.nullable(), params: z.record(z.string(), z.union([z.string(), z.number()])) })),
  })
  .meta({ id: 'SurveyReduction' });
export type SurveyReduction = z.infer<typeof SurveyReduction>;

export const Survey = z
  .object({
    id: Id, jobId: Id, name: z.string(), content: SurveyContent, sha256: Sha256, reduction: SurveyReduction,
    version: z.number().int(), createdAt: Instant, updatedAt: Instant, by: z.string(),
    /** Entries of which phones said different things without knowing of each other; a person chooses. */
    disputed: z.array(z.string()),
  })
  .meta({ id: 'Survey' });
export type Survey = z.infer<typeof Survey>;

const SurveyParams = z.strictObject({ jobId: Id, surveyId: Id });

export const surveys = {
  list: endpoint({
    id: 'surveys.list', method: 'GET', path: '/jobs/:jobId/surveys', summary: 'Surveys of a job with their reduction',
    access: { permission: 'surveys.read' }, status: 200, params: JobParams, query: null, body: null, response: z.object({ items: z.array(Survey) }), errors: ['notFound'],
  }),
  create: endpoint({
    id: 'surveys.create', method: 'POST', path: '/jobs/:jobId/surveys', summary: 'Record a survey', access: { permission: 'surveys.edit' }, status: 201,
    params: JobParams, query: null, body: z.strictObject({ name: text(80, 1), content: SurveyContent }), response: Survey, concurrency: 'etag', errors: ['notFound'],
  }),
  read: endpoint({
    id: 'surveys.read', method: 'GET', path: '/jobs/:jobId/surveys/:surveyId', summary: 'One survey', access: { permission: 'surveys.read' }, status: 200,
    params: SurveyParams, query: null, body: null, response: Survey, concurrency: 'etag', errors: ['notFound'],
  }),
  replace: endpoint({
    id: 'surveys.replace', method: 'PUT', path: '/jobs/:jobId/surveys/:surveyId', summary: 'Store the corrected survey. Of one that phones recorded, the differences become facts of the desk', access: { permission: 'surveys.edit' }, status: 200,
    params: SurveyParams, query: null, body: z.strictObject({ name: text(80, 1), content: SurveyContent }), response: Survey, concurrency: 'ifMatch',
    errors: ['notFound', 'conflict.stale', 'conflict.preconditionRequired'],
  }),
};
