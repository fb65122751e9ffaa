import { upgradeDocument, type Choice, type DesignDocument } from '@yardfall/calc';
import { DesignDocumentSchema, Id, Sha256, Study } from '@yardfall/contracts';
import { z } from 'zod';

/** A design document as it was settled when the study was asked for, in the present version's shape. */
const Document = z.preprocess(upgradeDocument, DesignDocumentSchema).transform((document) => document as DesignDocument);

/** What the options of a design may change: fields of parts, and where roof water goes. */
const Alternative = z.strictObject({
  id: z.string(), name: z.string(),
  set: z.array(z.strictObject({ part: z.string(), fields: z.record(z.string(), z.unknown()) })).optional(),
  drains: z.array(z.strictObject({ catchment: z.string(), to: z.strictObject({ kind: z.enum(['lowSpot', 'part']), id: z.string() }) })).optional(),
});
const Choices = z
  .array(z.strictObject({ id: z.string(), kind: z.enum(['diversion', 'collector', 'pipe', 'outlet', 'basin', 'pump', 'line', 'backup']), alternatives: z.array(Alternative).min(1) }))
  .transform((choices) => choices as readonly Choice[]);
const AskedOptions = z.strictObject({
  choices: Choices,
  bought: z.array(z.strictObject({ choice: z.string(), alternative: z.string(), part: z.string(), instead: z.string(), priceCode: z.string() })),
  entries: z.array(z.strictObject({ choice: z.string(), alternative: z.string(), part: z.string(), entry: z.string(), sha256: Sha256 })),
});

/** What was asked of a study, as its row holds it: what a study is run with is read by this and by nothing else. */
export const StoredRequest = z.union([
  z.strictObject({ document: Document, asked: AskedOptions }),
  z.strictObject({ document: Document, recordId: Id, recordName: z.string(), reportedPerYear: z.number().positive().nullable() }),
]);

/** Time and missing hours of a rain record, as its row holds them. */
export const StoredSpan = z.object({ from: z.string(), to: z.string(), years: z.number(), missingHours: z.number() });
/** Kind, state and problem of a study, as its row holds them. */
export const StoredStudy = Study.pick({ kind: true, status: true, problem: true });
