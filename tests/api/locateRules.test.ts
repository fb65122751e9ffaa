import type { DigVerdict, Job, LocateTicket, Problem, ResponseOf, SignedLocateRule, locateRuleSets } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { call, get, newJob, post } from '../support/builders.ts';
import { georgia } from '../support/locateSamples.ts';
import { ticketEvent } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

const inGeorgia = { property: { ...call.property, state: 'GA' } };
const asked = { number: 'GA-1', requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas'] };
const verdictOf = async (company: TestCompany, jobId: string) => (await get<{ verdict: DigVerdict }>(company.owner.agent, `/jobs/${jobId}/locate-tickets`)).verdict;
async function answered(company: TestCompany, job: Job, number: string): Promise<LocateTicket> {
  const made = await post<LocateTicket>(company.estimator.agent, `/jobs/${job.id}/locate-tickets`, { ...asked, number }, 201);
  await post(company.estimator.agent, `/jobs/${job.id}/locate-tickets/${made.id}/responses`, { utility: 'Gas', answer: 'clear', note: '' }, 200);
  return ticketEvent(company.estimator.agent, made, 'marksAgree');
}

describe('a state without a confirmed rule', () => {
  it('never lets dig until the owner signs a rule by name; then the open tickets are counted by it', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const job = await newJob(ours, inGeorgia);
    const made = await answered(ours, job, 'GA-1');
    expect([made.rule, made.verdict.reasons.map(({ code }) => code)]).toEqual([null, ['locates.reason.unknownRule']]);

    const signed = await post<SignedLocateRule>(ours.owner.agent, '/locate-rules', { rule: georgia, signedName: 'Test owner' }, 201);
    expect(signed).toMatchObject({ rule: georgia, signedName: 'Test owner', by: 'Test owner', at: '2026-03-02T15:00:00.000Z', inForce: true });
    // By hand: Monday 23 February, two full working days, dig on Thursday 26; 21 calendar days, the first among them, end with Wednesday 18 March (summer time from 8 March).
    const { items: [ticket], verdict } = await get<{ items: LocateTicket[]; verdict: DigVerdict }>(ours.owner.agent, `/jobs/${job.id}/locate-tickets`);
    expect(ticket).toMatchObject({ legalStartAt: '2026-02-26T05:00:00.000Z', expiresAt: '2026-03-19T04:00:00.000Z', rule: { source: georgia.source, asOf: '2026-03-01', signedBy: 'Test owner', tolerance: 0.6096 } });
    expect(verdict).toEqual({ mayDig: true, reasons: [] });
    const { rows } = await test.owner.query<{ params: { state: string; name: string; tickets: number } }>(`SELECT params FROM audit_entry WHERE action = 'locate.ruleSigned'`);
    expect(rows).toEqual([{ params: expect.objectContaining({ state: 'GA', name: 'Test owner', tickets: 1 }) as object }]);
    await expect(test.owner.query(`UPDATE locate_rule SET signed_name = 'x'`)).rejects.toMatchObject({ code: 'YF001' });

    // Another company has signed nothing.
    const other = await newJob(theirs, inGeorgia);
    await answered(theirs, other, 'GA-2');
    expect((await verdictOf(theirs, other.id)).reasons.map(({ code }) => code)).toEqual(['locates.reason.unknownRule']);
    expect((await get<ResponseOf<typeof locateRuleSets.list>>(theirs.crew.agent, '/locate-rules')).entered).toEqual([]);
  });

  it('takes a new signature for new tickets, and leaves those that were counted as they were', async () => {
    const job = await newJob(ours, inGeorgia);
    const before = await answered(ours, job, 'GA-3');
    await post(ours.owner.agent, '/locate-rules', { rule: { ...georgia, notice: { kind: 'fullWorkingDays', days: 3 } }, signedName: 'test owner' }, 201);
    expect((await answered(ours, job, 'GA-4')).legalStartAt).toBe('2026-02-27T05:00:00.000Z');
    const { items } = await get<{ items: LocateTicket[] }>(ours.owner.agent, `/jobs/${job.id}/locate-tickets`);
    expect(items.find(({ number }) => number === 'GA-3')?.legalStartAt).toBe(before.legalStartAt);
    const { entered, builtIn, unconfirmed } = await get<ResponseOf<typeof locateRuleSets.list>>(ours.crew.agent, '/locate-rules');
    expect(entered.map(({ rule, inForce }) => [rule.state, inForce])).toEqual([['GA', true], ['GA', false]]);
    expect(builtIn.every(({ source, asOf, holidays }) => source !== '' && asOf !== '' && holidays.source !== '' && holidays.days.length > 5)).toBe(true);
    // Said whole, so that an owner can hold it against the law: the Code of Alabama 37-15-4(b) as the rule set was read.
    expect(builtIn.find(({ version }) => version === 'AL-2')).toMatchObject({
      notice: { kind: 'hoursFromNextWorkingDay', hours: 48, from: { hour: 7 } }, life: { kind: 'workingDays', days: 20, from: 'legalStart' }, received: null, noAnswer: 'secondNotice', toleranceFrom: 'edge',
    });
    expect(builtIn.find(({ state }) => state === 'VA')?.holidays).toMatchObject({ source: expect.stringContaining('from memory') as string, until: '2028-12-31' });
    expect(unconfirmed.map(({ state }) => state)).toContain('TX');
  });

  it('refuses what cannot be counted with, what is not signed by name, and everybody but the owner', async () => {
    const sign = (body: object) => ours.owner.agent.post('/api/v1/locate-rules').set(key()).send(body);
    const signedName = 'Test owner';
    const pathOf = async (body: object) => ((await sign(body).expect(400)).body as Problem).issues.map(({ path }) => path);
    expect(await pathOf({ rule: georgia, signedName: 'Somebody Else' })).toEqual(['body.signedName']);
    expect(await pathOf({ rule: { ...georgia, life: { kind: 'underCalendarDays', days: 2 } }, signedName })).toEqual(['body.rule']);
    expect(await pathOf({ rule: { ...georgia, readOn: '2026-03-04' }, signedName })).toEqual(['body.rule.readOn']);
    await sign({ rule: { ...georgia, source: '' }, signedName }).expect(400);
    await sign({ rule: { ...georgia, tolerance: null }, signedName }).expect(400);
    await sign({ rule: { ...georgia, notice: { kind: 'fullWorkingDays', days: 0 } }, signedName }).expect(400);
    await post(ours.estimator.agent, '/locate-rules', { rule: georgia, signedName: 'Test estimator' }, 403);
  });
});
