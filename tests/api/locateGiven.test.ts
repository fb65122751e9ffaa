import type { DigVerdict, Job, LocateTicket, Problem } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { call, get, newJob, post } from '../support/builders.ts';
import { georgia } from '../support/locateSamples.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

// NC811, counted by hand: Monday 2 March, three full working days, dig on Friday; 15 working days over the change to summer time.
const counted = { legalStartAt: '2026-03-06T05:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z' };
const ticket = { number: 'NC-1', requestedAt: '2026-03-02T15:00:00Z', area: 'Back yard', utilities: ['Gas'] };

async function onJob(property: object = {}) {
  test.clock.set('2026-03-02T15:00:00Z');
  const job = await newJob(ours, { property: { ...call.property, ...property } });
  const url = `/jobs/${job.id}/locate-tickets`;
  const give = (made: LocateTicket, body: object, status = 200, by = ours.estimator) => post<LocateTicket>(by.agent, `${url}/${made.id}/given`, { startAt: null, expiresAt: null, note: '', ...body }, status);
  return { job, url, give };
}

describe('what the center wrote on a ticket', () => {
  it('counts where it is the stricter, and the history says who entered it', async () => {
    const { url, give } = await onJob();
    const made = await post<LocateTicket>(ours.estimator.agent, url, ticket, 201);
    expect(made).toMatchObject({ ...counted, given: [] });
    const later = await give(made, { startAt: '2026-03-09T05:00:00Z', expiresAt: '2026-03-20T04:00:00Z' });
    expect(later).toMatchObject({ legalStartAt: '2026-03-09T05:00:00.000Z', expiresAt: '2026-03-20T04:00:00.000Z', rule: { version: 'NC-1' } });
    expect(later.renewByAt).toBe('2026-03-19T04:00:00.000Z');
    expect(later.given).toMatchObject([{ startAt: '2026-03-09T05:00:00.000Z', expiresAt: '2026-03-20T04:00:00.000Z', note: '', at: '2026-03-02T15:00:00.000Z', by: 'Test estimator' }]);
    test.clock.set('2026-03-07T15:00:00Z');
    const { verdict } = await get<{ verdict: DigVerdict }>(ours.owner.agent, url);
    expect(verdict.reasons[0]).toEqual({ code: 'locates.reason.beforeStart', params: { number: 'NC-1', at: '2026-03-09T05:00:00.000Z' } });
  });

  it('never lets dig earlier or longer than the rule counts, whatever is written', async () => {
    const { url, give } = await onJob();
    const loose = { startAt: '2026-03-03T05:00:00Z', expiresAt: '2027-01-01T05:00:00Z' };
    const made = await post<LocateTicket>(ours.estimator.agent, url, { ...ticket, given: loose }, 201);
    expect(made).toMatchObject(counted);
    expect(made.given).toHaveLength(1);
    expect(await give(made, { ...loose, note: 'Again' })).toMatchObject(counted);
  });

  it('is corrected with a reason where that lets dig earlier or longer than before', async () => {
    const { url, give } = await onJob();
    const made = await post<LocateTicket>(ours.estimator.agent, url, { ...ticket, given: { startAt: null, expiresAt: '2026-03-10T04:00:00Z' } }, 201);
    expect(made).toMatchObject({ ...counted, expiresAt: '2026-03-10T04:00:00.000Z' });
    const refused = await ours.estimator.agent.post(`/api/v1${url}/${made.id}/given`).set(key()).send({ startAt: null, expiresAt: '2026-03-20T04:00:00Z', note: '' }).expect(400);
    expect((refused.body as Problem).issues.map(({ path }) => path)).toEqual(['body.note']);
    await give(made, {}, 400);
    expect(await give(made, { expiresAt: '2026-03-09T04:00:00Z' }), 'a stricter one needs none').toMatchObject({ expiresAt: '2026-03-09T04:00:00.000Z' });
    const right = await give(made, { expiresAt: '2026-03-20T04:00:00Z', note: 'Typed the wrong day; the ticket says the 19th' }, 200, ours.owner);
    expect(right).toMatchObject({ expiresAt: '2026-03-20T04:00:00.000Z' });
    expect(right.given.map(({ by, note }) => [by, note])).toEqual([['Test estimator', ''], ['Test estimator', ''], ['Test owner', 'Typed the wrong day; the ticket says the 19th']]);
    expect(await give(made, { note: 'The center wrote none' })).toMatchObject(counted);
  });

  it('is told when a prepared ticket is taken, and stands on every line of the job', async () => {
    const { job, url } = await onJob();
    const draft = await post<LocateTicket>(ours.estimator.agent, `${url}/drafts`, { area: 'Back yard', utilities: ['Gas'] }, 201);
    const taken = await post<LocateTicket>(ours.estimator.agent, `${url}/${draft.id}/submit`, { number: 'NC-2', requestedAt: ticket.requestedAt, given: { startAt: '2026-03-10T04:00:00Z', expiresAt: null } }, 200);
    expect(taken.legalStartAt).toBe('2026-03-10T04:00:00.000Z');
    const { items } = await get<{ items: Pick<Job, 'id' | 'locate'>[] }>(ours.owner.agent, '/jobs');
    expect(items.find(({ id }) => id === job.id)?.locate?.legalStartAt).toBe('2026-03-10T04:00:00.000Z');
  });

  it('opens nothing in a state whose rule is unknown, and counts once the owner signed one', async () => {
    const { url, give } = await onJob({ state: 'GA' });
    const made = await post<LocateTicket>(ours.estimator.agent, url, ticket, 201);
    const given = await give(made, { startAt: '2026-03-03T05:00:00Z', expiresAt: '2026-03-12T04:00:00Z' });
    expect(given).toMatchObject({ legalStartAt: null, expiresAt: null, verdict: { mayDig: false } });
    expect(given.verdict.reasons[0]?.code).toBe('locates.reason.unknownRule');
    await post(ours.owner.agent, '/locate-rules', { rule: georgia, signedName: 'Test owner' }, 201);
    const { items } = await get<{ items: LocateTicket[] }>(ours.owner.agent, url);
    // Two full working days after Monday 2 March: dig on Thursday the 5th; the end that the center wrote comes first.
    expect(items[0]).toMatchObject({ legalStartAt: '2026-03-05T05:00:00.000Z', expiresAt: '2026-03-12T04:00:00.000Z' });
  });

  it('belongs to an open ticket of the own company, and ends after it starts', async () => {
    const { url, give } = await onJob();
    const made = await post<LocateTicket>(ours.estimator.agent, url, ticket, 201);
    await give(made, { startAt: '2026-03-09T05:00:00Z', expiresAt: '2026-03-09T05:00:00Z' }, 400);
    await give(made, { expiresAt: '2026-03-20T04:00:00Z' }, 404, theirs.owner);
    await post(ours.estimator.agent, `${url}/${made.id}/close`, {}, 200);
    await give(made, { expiresAt: '2026-03-20T04:00:00Z' }, 409);
    const { items } = await get<{ items: LocateTicket[] }>(ours.owner.agent, url);
    expect(items[0]?.given).toEqual([]);
  });
});
