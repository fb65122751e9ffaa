import { z } from 'zod';
import { finite, Id, Instant, JobParams, Level, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { entryFits } from './survey/keys.ts';
import { LevelReading, Survey, SurveyContent, SurveyDrainTest, SurveyObservation, SurveyPoint, SurveyStage } from './surveys.ts';

/** A place on the plan, in plan metres. */
export const PlanPin = z.strictObject({ x: finite(-100_000, 100_000), y: finite(-100_000, 100_000) }).meta({ id: 'PlanPin' });
export type PlanPin = z.infer<typeof PlanPin>;

const attached = { pin: PlanPin.nullable(), photoIds: z.array(Id).max(20) };

/** A line of the level book with its place in the order of the book: a shot between two others gets a number between theirs. */
export const PlacedReading = LevelReading.extend({ place: finite(-1e9, 1e9), ...attached }).meta({ id: 'PlacedReading' });
export type PlacedReading = z.infer<typeof PlacedReading>;

/** What was answered at one step of the diagnosis: what was picked, and figures in SI by name. */
export const DiagnosisAnswer = z
  .strictObject({ picks: z.array(text(40, 1)).max(40), figures: z.record(text(40, 1), finite(-1e9, 1e9)), note: text(1000), ...attached })
  .meta({ id: 'DiagnosisAnswer' });

const factBase = {
  id: Id,
  deviceId: Id,
  seq: z.number().int().min(1).max(1e9),
  deviceTime: Instant,
  factVersion: z.literal(1),
  jobId: Id,
  surveyId: Id,
  /** What of the survey it is about: `survey`, `benchMark`, `mode`, `stageArea`, `reading:<id>`, `point:<name>`, `drainTest:<id>`, `observation:<id>`, `diagnosis:<step>`. */
  entry: text(120, 1),
  /** Facts of the same entry that this one follows. */
  seen: z.array(Id).max(200),
};

/** What a phone recorded about one entry of a survey: a fact sets the whole entry, or strikes it. Facts are only ever added; the survey is the fold of them. */
export const SurveyFact = z
  .discriminatedUnion('kind', [
    /** The survey begins, or gets another name. */
    z.strictObject({ ...factBase, kind: z.literal('begun'), value: z.strictObject({ name: text(80, 1) }) }),
    z.strictObject({ ...factBase, kind: z.literal('benchMark'), value: z.strictObject({ name: text(80, 1), level: Level }) }),
    z.strictObject({ ...factBase, kind: z.literal('mode'), value: z.enum(['heightOfInstrument', 'direct']) }),
    z.strictObject({ ...factBase, kind: z.literal('reading'), value: PlacedReading }),
    z.strictObject({ ...factBase, kind: z.literal('point'), value: SurveyPoint }),
    z.strictObject({ ...factBase, kind: z.literal('stageArea'), value: z.array(SurveyStage).max(100) }),
    z.strictObject({ ...factBase, kind: z.literal('drainTest'), value: SurveyDrainTest.extend(attached) }),
    z.strictObject({ ...factBase, kind: z.literal('observation'), value: SurveyObservation.extend(attached) }),
    z.strictObject({ ...factBase, kind: z.literal('diagnosis'), value: DiagnosisAnswer }),
    /** Counts no more and stays on record. */
    z.strictObject({ ...factBase, kind: z.literal('struck'), reason: text(300) }),
  ])
  .refine(entryFits, { path: ['entry'], message: 'is not an entry of this kind' })
  .meta({ id: 'SurveyFact' });
export type SurveyFact = z.infer<typeof SurveyFact>;

/** Judged after it was stored. `kept` facts count; the others stay on record with the reason. */
export const StoredSurveyFact = z
  .object({ fact: SurveyFact, memberId: Id, by: z.string(), serverTime: Instant, verdict: z.enum(['kept', 'late', 'refused', 'quarantined']), reason: z.string().nullable() })
  .meta({ id: 'StoredSurveyFact' });
export type StoredSurveyFact = z.infer<typeof StoredSurveyFact>;

/** What a survey was before its first fact, when it was stored as a whole. */
export const SurveyBase = z.object({ name: z.string(), content: SurveyContent }).meta({ id: 'SurveyBase' });
export type SurveyBase = z.infer<typeof SurveyBase>;

export const surveyFacts = {
  list: endpoint({
    id: 'surveyFacts.list', method: 'GET', path: '/jobs/:jobId/survey-facts', summary: 'All that phones recorded of the surveys of a job, and what each survey was before its first fact',
    access: { permission: 'surveys.read' }, status: 200, params: JobParams, query: null, body: null,
    response: z.object({ surveys: z.array(z.object({ surveyId: Id, base: SurveyBase.nullable() })), facts: z.array(StoredSurveyFact) }), errors: ['notFound'],
  }),
  record: endpoint({
    id: 'surveyFacts.record', method: 'POST', path: '/jobs/:jobId/survey-facts',
    summary: 'Store facts of surveys. Every well-formed fact of a known device is stored first and judged afterwards; each comes back with its verdict. A survey is born by its first fact',
    access: { permission: 'surveys.record' }, fromCutOff: true, status: 200, params: JobParams, query: null, body: z.strictObject({ facts: z.array(SurveyFact).min(1).max(100) }),
    response: z.object({ facts: z.array(StoredSurveyFact), surveys: z.array(Survey) }), errors: ['notFound'],
  }),
};
