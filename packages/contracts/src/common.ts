import { z } from 'zod';

const loneSurrogate = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/;

/** Text as people write it: no U+0000, no lone surrogates, stored as NFC, trimmed. */
export function text(max: number, min = 0) {
  return z
    .string()
    .max(max)
    .refine((s) => !s.includes('\u0000') && !loneSurrogate.test(s), { message: 'holds a character that cannot be stored' })
    .overwrite((s) => s.normalize('NFC').trim())
    .min(min);
}

export const Id = z.uuid().meta({ id: 'Id', description: 'UUID, version 7 for what the service makes' });
export const Instant = z.iso.datetime({ offset: true }).meta({ id: 'Instant', description: 'RFC 3339 date-time' });
export const CalendarDate = z.iso.date().meta({ id: 'CalendarDate', description: 'YYYY-MM-DD, without a zone' });
export const Sha256 = z.string().regex(/^[0-9a-f]{64}$/).meta({ id: 'Sha256' });
export const Email = z.email().max(254).overwrite((s) => s.toLowerCase());
export const TimeZone = text(64, 1)
  .refine(isTimeZone, { message: 'is not an IANA time zone' })
  .meta({ id: 'TimeZone', description: 'IANA time zone, for example America/New_York' });
export const Language = z.enum(['en', 'es']).meta({ id: 'Language' });
export type Language = z.infer<typeof Language>;
export const UnitSystem = z.enum(['us', 'metric']).meta({ id: 'UnitSystem' });
export type UnitSystem = z.infer<typeof UnitSystem>;
export const Cents = z.number().int().min(-1e13).max(1e13).meta({ id: 'Cents', description: 'US cents' });
/** A finite number within bounds that no yard exceeds. */
export const finite = (min: number, max: number) => z.number().min(min).max(max);
/** Level or length in metres. */
export const Level = finite(-10_000, 10_000);

export const PageQuery = z.strictObject({
  cursor: text(200).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(50),
});

export function page<T extends z.ZodType>(item: T) {
  return z.object({ items: z.array(item), next: z.string().nullable() });
}

export const JobParams = z.strictObject({ jobId: Id });

/** What a phone adds to an answer that it kept without a signal: its own id for it, when it was given by its clock, and what that clock said as it was sent. */
export const KeptAnswer = z.strictObject({ id: Id, at: Instant, sentAt: Instant }).meta({ id: 'KeptAnswer' });
export type KeptAnswer = z.infer<typeof KeptAnswer>;

/** Text parameters of a finding, a hold or a trail entry: {code, params} is rendered in the reader's language. */
export const TextParams = z.record(z.string(), z.union([z.string(), z.number()])).meta({ id: 'TextParams' });

function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en-US', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
