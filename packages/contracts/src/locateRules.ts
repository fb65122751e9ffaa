import { z } from 'zod';
import { CalendarDate, finite, Id, Instant, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { StateCode } from './identity.ts';
import { holidayNames } from './locate/holidayLists.ts';
import type { EnteredRule } from './locate/entered.ts';

const count = (max: number) => z.number().int().min(1).max(max);
const hour = z.number().int().min(0).max(24);

const Notice = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fullWorkingDays'), days: count(30) }),
  z.strictObject({ kind: z.literal('hoursFromNextWorkingDay'), hours: count(240), from: z.strictObject({ hour: z.number().int().min(0).max(23) }) }),
  z.strictObject({ kind: z.literal('workingHours'), hours: count(240) }),
]);
const Life = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('workingDays'), days: count(120), from: z.enum(['request', 'legalStart']) }),
  z.strictObject({ kind: z.literal('calendarDays'), days: count(180), from: z.literal('legalStart') }),
  z.strictObject({ kind: z.literal('underCalendarDays'), days: count(180) }),
  z.strictObject({ kind: z.literal('periodsOf24Hours'), days: count(180), from: z.literal('legalStart') }),
]);
const Renewal = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('workingDay'), day: count(120) }),
  z.strictObject({ kind: z.literal('calendarDay'), day: count(180) }),
  z.strictObject({ kind: z.literal('workingDaysBeforeExpiry'), days: count(30) }),
  z.strictObject({ kind: z.literal('notice') }),
]);

const Received = z.strictObject({ from: hour, until: hour }).refine(({ from, until }) => from < until, { message: 'ends before it begins' }).nullable();
const ToleranceFrom = z.enum(['mark', 'edge']);
const NoAnswer = z.enum(['checkThenNotifyAgain', 'callAgain', 'newTicket', 'secondNotice', 'threeHourNotice']);

/** Notice, kind of days, life, renewal and strip as the owner read them, with the text or address where, and when. */
export const EnteredLocateRule = z
  .strictObject({
    state: StateCode, notice: Notice, life: Life, renewal: Renewal,
    received: Received,
    /** Hand-dig strip each side [m]. */
    tolerance: finite(0.1, 3), toleranceFrom: ToleranceFrom,
    noAnswer: NoAnswer,
    holidays: z.array(z.enum(holidayNames)).max(holidayNames.length), source: text(500, 10), readOn: CalendarDate,
  })
  .meta({ id: 'EnteredLocateRule' }) satisfies z.ZodType<EnteredRule>;
export type EnteredLocateRule = z.infer<typeof EnteredLocateRule>;

const SignedLocateRule = z.object({ id: Id, rule: EnteredLocateRule, signedName: z.string(), by: z.string(), at: Instant, inForce: z.boolean() }).meta({ id: 'SignedLocateRule' });
export type SignedLocateRule = z.infer<typeof SignedLocateRule>;

/** A rule set of the program with all that it counts by, so that an owner can check it against the law. */
const BuiltInRule = z
  .object({
    state: StateCode, version: z.string(), source: z.string(), asOf: CalendarDate, undated: z.boolean(), from: CalendarDate.nullable(), until: CalendarDate.nullable(),
    notice: Notice, life: Life, renewal: Renewal, received: Received, noAnswer: NoAnswer,
    /** Hand-dig strip each side [m]; null when not confirmed. */
    tolerance: z.number().nullable(), toleranceFrom: ToleranceFrom,
    /** `sure`: the law or the center names it; one that is not sure holds a start back and lets no ticket live longer. Nothing is counted past `until`. */
    holidays: z.object({ source: z.string(), until: CalendarDate, days: z.array(z.object({ name: z.string(), sure: z.boolean() })) }),
  })
  .meta({ id: 'BuiltInLocateRule' });
export type BuiltInLocateRule = z.infer<typeof BuiltInRule>;

export const locateRuleSets = {
  list: endpoint({
    id: 'locateRuleSets.list', method: 'GET', path: '/locate-rules', summary: 'Rule sets of the locate clocks: built in, not confirmed, and those that the owner entered and signed',
    access: { permission: 'locates.read' }, status: 200, params: null, query: null, body: null,
    response: z.object({
      builtIn: z.array(BuiltInRule),
      unconfirmed: z.array(z.object({ state: StateCode, why: z.string() })),
      entered: z.array(SignedLocateRule),
    }),
  }),
  sign: endpoint({
    id: 'locateRuleSets.sign', method: 'POST', path: '/locate-rules', summary: "Enter a state's rule set and sign it by name; open tickets without a clock get theirs",
    access: { permission: 'company.manage' }, status: 201, params: null, query: null, body: z.strictObject({ rule: EnteredLocateRule, signedName: text(120, 2) }), response: SignedLocateRule,
  }),
};
