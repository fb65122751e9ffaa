import { digSpans, jobVerdict, type checklists, type locates, type LocateTicket, type ResponseOf } from '@yardfall/contracts';
import { answerKey } from './answerKeys.ts';
import type { Answer } from './api.ts';
import { inStores } from './idb.ts';
import { asJudged } from './tickets.ts';

type TicketsOfJob = ResponseOf<typeof locates.list>;
type Checklist = ResponseOf<typeof checklists.read>;

/** The tickets with one as the office has just answered it. */
export function withTicket({ items }: TicketsOfJob, ticket: LocateTicket, now: number): TicketsOfJob {
  const next = items.some(({ id }) => id === ticket.id) ? items.map((one) => (one.id === ticket.id ? ticket : one)) : [ticket, ...items];
  return { items: next, verdict: jobVerdict(next.map(asJudged), new Date(now).toISOString()) };
}

/** The times in which the steps of the checklist may dig, by these tickets. */
export function withDigging(checklist: Checklist, { items }: TicketsOfJob): Checklist {
  return { ...checklist, digging: [...digSpans(items.map(asJudged))] };
}

/** A stop that has arrived leaves this phone's outbox: what the phone knows of the job must hold it by then, should the signal go again. */
export async function rememberTicket(jobId: string, ticket: LocateTicket, now = Date.now()): Promise<void> {
  const [listKey, stepsKey] = ['locates.list', 'checklists.read'].map((id) => answerKey(id, { params: { jobId } })) as [string, string];
  await inStores(['answers'], 'readwrite', async ({ answers }) => {
    const list = (await answers.get(listKey)) as Answer<TicketsOfJob> | undefined;
    if (list === undefined) return;
    const data = withTicket(list.data, ticket, now);
    await answers.put({ ...list, data }, listKey);
    const steps = (await answers.get(stepsKey)) as Answer<Checklist> | undefined;
    if (steps !== undefined) await answers.put({ ...steps, data: withDigging(steps.data, data) }, stepsKey);
  });
}
