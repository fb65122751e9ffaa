import { randomUUID } from 'node:crypto';
import type { DigVerdict, Job, LocateTicket } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LocateClockService } from '../../apps/api/src/locates/locateClock.service.ts';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acceptedOffer, call, get, newJob, noPermitNeeded, post, releasedJob } from '../support/builders.ts';
import { mayDig } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

type List = { items: LocateTicket[]; verdict: DigVerdict };
const ticket = { number: '2603-17', requestedAt: '2026-03-02T15:00:00Z', area: 'Back yard, 40 by 60 ft', utilities: ['Gas', 'Power', 'Gas'] };
const codes = ({ reasons }: DigVerdict) => reasons.map(({ code }) => code);
const holds = async (jobId: string) => (await get<Job>(ours.owner.agent, `/jobs/${jobId}`)).holds.map(({ code, waitsFor }) => [waitsFor, code]);

describe('a ticket', () => {
  it('gets its clock by the rule of the state in the zone of the property, and shows source and date', async () => {
    const job = await newJob(ours);
    const made = await post<LocateTicket>(ours.estimator.agent, `/jobs/${job.id}/locate-tickets`, ticket, 201);
    // NC811, counted by hand: Monday 2 March, three full working days, dig on Friday; 15 working days over the change to summer time.
    expect(made).toMatchObject({ state: 'NC', legalStartAt: '2026-03-06T05:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z', renewByAt: '2026-03-19T04:00:00.000Z', closed: false });
    expect(made.rule).toMatchObject({ version: 'NC-1', asOf: '2026-11-29' });
    expect(made.rule?.source).toMatch(/NC811/);
    expect(made.responses.map(({ utility, answer, by }) => [utility, answer, by])).toEqual([['Gas', 'none', 'Test estimator'], ['Power', 'none', 'Test estimator']]);
    expect(codes(made.verdict)).toEqual(['locates.reason.beforeStart', 'locates.reason.silent', 'locates.reason.silent']);
  });

  it('of a state without a confirmed rule is kept, has no clock and never lets dig', async () => {
    const job = await newJob(ours, { property: { ...call.property, state: 'GA' } });
    const made = await post<LocateTicket>(ours.estimator.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, utilities: ['Gas'] }, 201);
    const answered = await post<LocateTicket>(ours.estimator.agent, `/jobs/${job.id}/locate-tickets/${made.id}/responses`, { utility: 'Gas', answer: 'clear', note: '' }, 200);
    expect(answered).toMatchObject({ legalStartAt: null, expiresAt: null, rule: null, verdict: { mayDig: false } });
    expect(codes(answered.verdict)).toEqual(['locates.reason.unknownRule']);
  });

  it('is not recorded twice, nor for a job of another company, nor with an unknown key', async () => {
    const job = await newJob(ours);
    await post(ours.estimator.agent, `/jobs/${job.id}/locate-tickets`, ticket, 201);
    await post(ours.estimator.agent, `/jobs/${job.id}/locate-tickets`, ticket, 409);
    await post(theirs.owner.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, number: 'x' }, 404);
    await post(ours.crew.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, number: 'x' }, 404);
    await post(ours.estimator.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, colour: 'white' }, 400);
    await post(ours.estimator.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, number: 'A\u0000' }, 400);
    expect((await get<List>(ours.owner.agent, `/jobs/${job.id}/locate-tickets`)).items).toHaveLength(1);
  });
});

describe('the marks of a released job', () => {
  it('do not hold it when they were there before the release', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job, offer } = await acceptedOffer(test, ours);
    await mayDig(ours.estimator.agent, job.id);
    await noPermitNeeded(ours.estimator.agent, job.id);
    await post(ours.owner.agent, `/jobs/${job.id}/release`, { offerId: offer.id }, 200);
    expect(await holds(job.id)).toEqual([]);
  }, 180_000);

  it('are looked at again after the service stood still for days', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    const made = await post<LocateTicket>(ours.crew.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, utilities: ['Gas'] }, 201);
    await post(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${made.id}/responses`, { utility: 'Gas', answer: 'clear', note: '' }, 200);
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.beforeStart']]);
    test.clock.set('2026-03-10T15:00:00Z');
    await test.app.get(LocateClockService).queueRechecks();
    await test.app.get(Worker).drain();
    expect(await holds(job.id)).toEqual([]);
  }, 180_000);

  it('hold it until the clock has passed and every utility has answered; silence is never clearance', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    expect(await holds(job.id)).toEqual([['marks', 'jobs.hold.locate']]);
    const made = await post<LocateTicket>(ours.crew.agent, `/jobs/${job.id}/locate-tickets`, { ...ticket, utilities: ['Gas', 'Power'] }, 201);
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.beforeStart']]);
    const answer = (utility: string, word: string) => post<LocateTicket>(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${made.id}/responses`, { utility, answer: word, note: '3A' }, 200);
    await answer('Gas', 'marked');
    await answer('Power', 'notResponded');
    test.clock.set('2026-03-06T15:00:00Z');
    expect(codes((await get<List>(ours.crew.agent, `/jobs/${job.id}/locate-tickets`)).verdict)).toEqual(['locates.reason.notResponded']);
    expect((await answer('Power', 'clear')).verdict).toEqual({ mayDig: true, reasons: [] });
    expect(await holds(job.id)).toEqual([]);

    // It runs out by itself: the clock of the service writes the hold.
    test.clock.set('2026-03-24T04:10:00Z');
    await test.app.get(LocateClockService).queueRechecks();
    await test.app.get(Worker).drain();
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.expired']]);
    expect(codes((await get<List>(ours.crew.agent, `/jobs/${job.id}/locate-tickets`)).verdict)).toEqual(['locates.reason.expired']);
    await post(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${made.id}/close`, {}, 200);
    expect(codes((await get<List>(ours.crew.agent, `/jobs/${job.id}/locate-tickets`)).verdict)).toEqual(['locates.reason.noTicket']);
    await ours.crew.agent.post(`/api/v1/jobs/${job.id}/locate-tickets/${made.id}/responses`).set(key()).send({ utility: 'Gas', answer: 'clear', note: '' }).expect(409);
    await post(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${randomUUID()}/close`, {}, 404);
  }, 180_000);
});
