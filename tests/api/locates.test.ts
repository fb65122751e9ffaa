import { randomUUID } from 'node:crypto';
import type { DigVerdict, Job, LocateTicket } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LocateClockService } from '../../apps/api/src/locates/locateClock.service.ts';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acceptedOffer, call, get, newJob, noPermitNeeded, post, releasedJob } from '../support/builders.ts';
import { mayDig, picture, sendPhoto, ticketEvent } from '../support/work.ts';

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
    expect(codes(answered.verdict)).toEqual(['locates.reason.unknownRule', 'locates.reason.marksUnseen']);
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
    await ticketEvent(ours.crew.agent, made, 'marksAgree');
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.beforeStart']]);
    test.clock.set('2026-03-10T15:00:00Z');
    await test.app.get(LocateClockService).queueRechecks();
    await test.app.get(Worker).drain();
    expect(await holds(job.id)).toEqual([]);
  }, 180_000);

  it('are asked for anew in time: two days before the last day to renew the office is reminded, and a longer ticket ends that', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    const url = `/jobs/${job.id}/locate-tickets`;
    const made = await post<LocateTicket>(ours.crew.agent, url, { ...ticket, utilities: ['Gas'] }, 201);
    expect(made.renewByAt).toBe('2026-03-19T04:00:00.000Z');
    await post(ours.crew.agent, `${url}/${made.id}/responses`, { utility: 'Gas', answer: 'clear', note: '' }, 200);
    await ticketEvent(ours.crew.agent, made, 'marksAgree');
    test.clock.set('2026-03-17T04:00:30Z');
    await test.app.get(LocateClockService).queueRechecks();
    await test.app.get(Worker).drain();
    expect(await holds(job.id)).toEqual([['us', 'jobs.hold.renew']]);
    await post(ours.crew.agent, url, { ...ticket, number: 'NC-99', requestedAt: '2026-03-16T14:00:00Z', utilities: ['Gas'] }, 201);
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
    expect(codes((await answer('Power', 'clear')).verdict)).toEqual(['locates.reason.marksUnseen']);
    expect((await ticketEvent(ours.crew.agent, made, 'marksAgree')).verdict).toEqual({ mayDig: true, reasons: [] });
    expect(await holds(job.id)).toEqual([]);
    // An answer that changed later is looked at again.
    test.clock.forward(1);
    expect(codes((await answer('Power', 'marked')).verdict)).toEqual(['locates.reason.marksUnseen']);
    await ticketEvent(ours.crew.agent, made, 'marksAgree');

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

describe('the life of a ticket', () => {
  type Line = { locate: Job['locate']; id: string };
  const asked = (jobId: string, path: string, body: object, status: number) => post<LocateTicket>(ours.crew.agent, `/jobs/${jobId}/locate-tickets${path}`, body, status);

  it('begins prepared, without a clock, and is submitted once', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    const made = await asked(job.id, '/drafts', { area: 'White line, 40 by 60 ft', method: 'Trencher', depth: 0.6, utilities: ['Gas'] }, 201);
    expect(made).toMatchObject({ draft: true, number: '', requestedAt: null, legalStartAt: null, method: 'Trencher', depth: 0.6 });
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.draft']]);
    await asked(job.id, `/${made.id}/responses`, { utility: 'Gas', answer: 'clear', note: '' }, 409);
    await asked(job.id, `/${made.id}/events`, { kind: 'marksAgree', utility: '', hazard: false, note: '', photoId: null, at: '2026-03-02T15:00:00Z' }, 409);
    const submitted = await asked(job.id, `/${made.id}/submit`, { number: 'NC-77', requestedAt: '2026-03-02T15:00:00Z' }, 200);
    expect(submitted).toMatchObject({ draft: false, number: 'NC-77', legalStartAt: '2026-03-06T05:00:00.000Z', renewByAt: '2026-03-19T04:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z' });
    await asked(job.id, `/${made.id}/submit`, { number: 'NC-78', requestedAt: '2026-03-02T15:00:00Z' }, 409);
    // The clock stands on every line of the job, for crew too.
    const { items } = await get<{ items: Line[] }>(ours.crew.agent, '/jobs');
    expect(items.find(({ id }) => id === job.id)?.locate).toEqual({ number: 'NC-77', legalStartAt: submitted.legalStartAt, renewByAt: submitted.renewByAt, expiresAt: submitted.expiresAt });
  }, 180_000);

  it('waits for a utility that the center did not name at first, under whatever case it is written', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    const made = await asked(job.id, '', { ...ticket, utilities: ['Gas'] }, 201);
    test.clock.set('2026-03-06T15:00:00Z');
    await asked(job.id, `/${made.id}/responses`, { utility: 'Gas', answer: 'clear', note: '' }, 200);
    expect((await ticketEvent(ours.crew.agent, made, 'marksAgree')).verdict.mayDig).toBe(true);
    test.clock.forward(60);
    const added = await asked(job.id, `/${made.id}/responses`, { utility: 'Fiber', answer: 'none', note: 'A post by the fence' }, 200);
    expect(added.verdict).toEqual({ mayDig: false, reasons: [{ code: 'locates.reason.silent', params: { number: made.number, utility: 'Fiber' } }] });
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.silent']]);
    expect(added.responses.at(-1)).toMatchObject({ utility: 'Fiber', answer: 'none', note: 'A post by the fence', by: 'Test crew' });
    const answered = await asked(job.id, `/${made.id}/responses`, { utility: 'FIBER', answer: 'marked', note: '' }, 200);
    expect(answered.responses.map(({ utility, answer }) => [utility, answer])).toEqual([['Gas', 'none'], ['Gas', 'clear'], ['Fiber', 'none'], ['Fiber', 'marked']]);
    expect(codes(answered.verdict)).toEqual(['locates.reason.marksUnseen']);
    expect((await ticketEvent(ours.crew.agent, made, 'marksAgree')).verdict.mayDig).toBe(true);
    const { items } = await get<{ items: { action: string; params: object }[] }>(ours.owner.agent, `/audit?jobId=${job.id}`);
    expect(items.filter(({ action }) => action === 'locate.utilityAdded').map(({ params }) => params)).toEqual([{ utility: 'Fiber' }]);
    await asked(job.id, `/${made.id}/close`, {}, 200);
    await asked(job.id, `/${made.id}/responses`, { utility: 'Alarm', answer: 'none', note: '' }, 409);
  }, 180_000);

  it('keeps the code of the center and the photo of the marks beside our word', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    const made = await asked(job.id, '', { ...ticket, utilities: ['Gas'] }, 201);
    const photo = (await sendPhoto(ours.crew.agent, job.id, await picture()).expect(201)).body as { id: string };
    const answered = await asked(job.id, `/${made.id}/responses`, { utility: 'Gas', answer: 'marked', code: '3A', note: 'two yellow lines', photoId: photo.id }, 200);
    expect(answered.responses.at(-1)).toMatchObject({ answer: 'marked', code: '3A', note: 'two yellow lines', photoId: photo.id });
    await asked(job.id, `/${made.id}/responses`, { utility: 'Gas', answer: 'marked', note: '', photoId: randomUUID() }, 404);
  }, 180_000);

  it('stops at marks that went, a wrong mark, a hit line and a larger area, and goes on once that is answered', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const { job } = await releasedJob(test, ours);
    const made = await mayDig(ours.crew.agent, job.id);
    const spans = async () => (await get<{ digging: { from: string; until: string }[] }>(ours.crew.agent, `/jobs/${job.id}/checklist`)).digging;
    const whole = [{ from: made.legalStartAt, until: made.expiresAt }];
    expect([await holds(job.id), await spans()]).toEqual([[], whole]);
    for (const [stop, end] of [['marksDestroyed', 'remarked'], ['markError', 'remarked'], ['damage', 'damageCleared']] as const) {
      const before = await spans();
      test.clock.forward(60);
      const at = test.clock.now().toISOString();
      expect(codes((await ticketEvent(ours.crew.agent, made, stop, at, { utility: 'Gas', hazard: true })).verdict)).toEqual([`locates.reason.${stop}`]);
      expect(await holds(job.id)).toEqual([['marks', `locates.reason.${stop}`]]);
      expect((await spans()).at(-1)).toEqual({ from: before.at(-1)?.from, until: at });
      await ticketEvent(ours.crew.agent, made, 'remarkRequested', at);
      expect(await holds(job.id)).toEqual([['marks', `locates.reason.${stop}`]]);
      if (stop === 'damage') await asked(job.id, `/${made.id}/close`, {}, 409);
      test.clock.forward(60);
      // Told as if it had been there long before: it counts from now.
      expect((await ticketEvent(ours.crew.agent, made, end, '2026-03-01T00:00:00Z')).verdict.mayDig).toBe(true);
      expect((await spans()).at(-1)).toEqual({ from: test.clock.now().toISOString(), until: made.expiresAt });
      expect(await holds(job.id)).toEqual([]);
    }
    expect(await spans()).toHaveLength(4);
    await ticketEvent(ours.crew.agent, made, 'areaEnlarged', test.clock.now().toISOString());
    expect(await holds(job.id)).toEqual([['marks', 'locates.reason.areaEnlarged']]);
    await mayDig(ours.crew.agent, job.id);
    expect(await holds(job.id)).toEqual([]);
    const { rows } = await test.owner.query<{ n: string }>('SELECT count(*) AS n FROM locate_event WHERE ticket_id = $1', [made.id]);
    expect(Number(rows[0]?.n)).toBe(11);
    await expect(test.owner.query(`DELETE FROM locate_event WHERE ticket_id = $1`, [made.id])).rejects.toMatchObject({ code: 'YF001' });
  }, 180_000);
});
