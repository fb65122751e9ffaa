import { z } from 'zod';
import { finite, Id, Instant, JobParams, text } from './common.ts';
import { endpoint } from './endpoint.ts';

/** What hours are booked on: the stages of the checklist, and what stands in no list. */
export const tasks = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'travel', 'other'] as const;
export const DayworkTask = z.enum(tasks).meta({ id: 'DayworkTask' });
export type DayworkTask = z.infer<typeof DayworkTask>;

const base = { id: Id, at: Instant };
const goods = { what: text(120, 1), amount: finite(0, 1e6), unit: text(20), note: text(500) };

/** Time and materials as the crew notes them. Entries are only ever added; one that is wrong is struck with a reason. */
export const DayworkEntry = z
  .discriminatedUnion('kind', [
    /** The clock of the person who notes it runs on this task; a task that ran before ends here. */
    z.strictObject({ ...base, kind: z.literal('started'), task: DayworkTask }),
    z.strictObject({ ...base, kind: z.literal('stopped') }),
    z.strictObject({ ...base, kind: z.literal('used'), ...goods }),
    z.strictObject({ ...base, kind: z.literal('delivered'), ...goods, photoIds: z.array(Id).max(10) }),
    z.strictObject({ ...base, kind: z.literal('struck'), entry: Id, reason: text(300, 3) }),
  ])
  .meta({ id: 'DayworkEntry' });
export type DayworkEntry = z.infer<typeof DayworkEntry>;

export const StoredDaywork = z.object({ entry: DayworkEntry, memberId: Id, by: z.string(), serverTime: Instant }).meta({ id: 'StoredDaywork' });
export type StoredDaywork = z.infer<typeof StoredDaywork>;

export const daywork = {
  list: endpoint({
    id: 'daywork.list', method: 'GET', path: '/jobs/:jobId/daywork', summary: 'Time and materials that the crew noted, in the order of noting', access: { permission: 'checklists.read' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ items: z.array(StoredDaywork) }), errors: ['notFound'],
  }),
  record: endpoint({
    id: 'daywork.record', method: 'POST', path: '/jobs/:jobId/daywork', summary: 'Store entries of time and materials, each once by its id; a second one of the same id and other content is refused',
    access: { permission: 'checklists.record' }, status: 200, params: JobParams, query: null, body: z.strictObject({ entries: z.array(DayworkEntry).min(1).max(100) }),
    response: z.object({ items: z.array(StoredDaywork) }), errors: ['notFound', 'conflict.state'],
  }),
};

/** One stretch of one person's work; `until` is null while the clock runs. */
export interface WorkSpan {
  readonly id: string;
  readonly memberId: string;
  readonly by: string;
  readonly task: DayworkTask;
  readonly from: string;
  readonly until: string | null;
  /** Longer than anybody works at one thing: the clock was probably forgotten. */
  readonly doubtful: boolean;
}

export type Goods = Extract<DayworkEntry, { kind: 'used' | 'delivered' }>;

export interface Daywork {
  readonly spans: readonly WorkSpan[];
  readonly goods: readonly { readonly goods: Goods; readonly by: string }[];
  /** Person-seconds by task, running clocks up to now. */
  readonly totals: readonly { readonly task: DayworkTask; readonly seconds: number }[];
}

/** A stretch of more than this [s] is asked about (ours). */
const longStretch = 12 * 3600;

/** What the entries come to. Each person has one clock; the order of arrival plays no part. */
export function foldDaywork(stored: readonly StoredDaywork[], now: number): Daywork {
  const struck = new Set(stored.flatMap(({ entry }) => (entry.kind === 'struck' ? [entry.entry] : [])));
  const kept = [...new Map(stored.map((one) => [one.entry.id, one])).values()]
    .filter(({ entry }) => entry.kind !== 'struck' && !struck.has(entry.id))
    .sort((a, b) => Date.parse(a.entry.at) - Date.parse(b.entry.at) || (a.entry.id < b.entry.id ? -1 : 1));
  const people = [...new Set(kept.map(({ memberId }) => memberId))];
  const spans = people.flatMap((memberId) => spansOf(kept.filter((one) => one.memberId === memberId), now)).sort((a, b) => Date.parse(a.from) - Date.parse(b.from));
  const goods = kept.flatMap(({ entry, by }) => (entry.kind === 'used' || entry.kind === 'delivered' ? [{ goods: entry, by }] : []));
  const totals = tasks.map((task) => ({ task, seconds: spans.filter((span) => span.task === task).reduce((sum, span) => sum + lengthOf(span, now), 0) })).filter(({ seconds }) => seconds > 0);
  return { spans, goods, totals };
}

function spansOf(own: readonly StoredDaywork[], now: number): WorkSpan[] {
  const clock = own.filter(({ entry }) => entry.kind === 'started' || entry.kind === 'stopped');
  return clock.flatMap(({ entry, memberId, by }, index): WorkSpan[] => {
    if (entry.kind !== 'started') return [];
    const span = { id: entry.id, memberId, by, task: entry.task, from: entry.at, until: clock[index + 1]?.entry.at ?? null };
    return [{ ...span, doubtful: lengthOf(span, now) > longStretch }];
  });
}

/** Length of a stretch [s]. */
export function lengthOf({ from, until }: Pick<WorkSpan, 'from' | 'until'>, now: number): number {
  return Math.max(0, ((until === null ? now : Date.parse(until)) - Date.parse(from)) / 1000);
}
