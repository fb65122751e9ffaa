import type { Job, LocateTicket } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, post, releasedJob, siteDocument } from '../support/builders.ts';
import { Phone } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let job: Job;
let crew: Phone;
let ticket: LocateTicket;

/** Tern Hollow as a designer draws it who saw no line. */
function undrawn() {
  const document = siteDocument('tern-hollow');
  return { ...document, site: { ...document.site, utilities: [] } };
}

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  job = (await releasedJob(test, ours, undrawn())).job;
  crew = await Phone.of(test, ours.crew, job.id);
  ticket = await post<LocateTicket>(ours.crew.agent, `/jobs/${job.id}/locate-tickets`, { number: 'T-1', requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas', 'Power'] }, 201);
}, 300_000);
afterAll(() => test.close());

const answer = (utility: string, word: string) => post(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${ticket.id}/responses`, { utility, answer: word, note: '' }, 200);
const declare = (question: string, state: string) => post(ours.crew.agent, `/jobs/${job.id}/private-lines`, { lines: [{ question, state, note: '', on: null, photoId: null }] }, 200);
const lines = async () => (await crew.checklist()).items.filter(({ template }) => template === 'C3').map((item) => item.key);
const heldFor = async (itemKey: string) => (await crew.item(itemKey)).heldBy.find(({ holdPoint }) => holdPoint === 'HP-4')?.items ?? [];

describe('a line that the designer did not draw', () => {
  it('is no step while nobody has said that it is there', async () => {
    expect(await lines()).toEqual([]);
    await answer('Power', 'clear');
    expect([await lines(), await heldFor('C6:B1')]).toEqual([[], []]);
  });

  it('comes into the list of a job that is at work when a ticket calls it marked, and holds the machine', async () => {
    await answer('Gas', 'marked');
    expect([await lines(), await heldFor('C6:B1'), await heldFor('C4')]).toEqual([['C3:t-gas'], ['C3:t-gas'], ['C3:t-gas']]);
    expect(await crew.item('C3:t-gas')).toMatchObject({ holdPoint: 'HP-4', state: 'open', requirement: { minPhotos: 1, params: { line: 'Gas' } } });
    const order = (await crew.checklist()).items.map(({ template }) => template);
    expect([order.indexOf('C3') > order.indexOf('C2'), order.indexOf('C3') < order.indexOf('C4')]).toEqual([true, true]);
  });

  it('comes as well when the homeowner declares it; the other step and what was recorded of it stay', async () => {
    await post(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${ticket.id}/events`, { kind: 'marksAgree', utility: '', hazard: false, note: '', photoId: null, at: '2026-03-02T15:00:00Z' }, 200);
    await crew.prove('A2');
    await crew.prove('C3:t-gas');
    expect(await crew.item('C3:t-gas')).toMatchObject({ state: 'proven' });
    await declare('septic', 'yes');
    await declare('pool', 'no');
    expect([await lines(), await heldFor('C6:B1')]).toEqual([['C3:p-septic', 'C3:t-gas'], ['C3:p-septic']]);
    expect(await crew.item('C3:t-gas')).toMatchObject({ state: 'proven' });
  });

  it('goes when it turns out that there is none, and its record comes back with it', async () => {
    await declare('septic', 'no');
    await answer('Gas', 'clear');
    expect([await lines(), await heldFor('C6:B1')]).toEqual([[], []]);
    await answer('Gas', 'marked');
    expect([await lines(), (await crew.item('C3:t-gas')).state]).toEqual([['C3:t-gas'], 'proven']);
    const { rows } = await test.owner.query(`SELECT params FROM audit_entry WHERE job_id = $1 AND action = 'checklist.lines' ORDER BY id DESC LIMIT 1`, [job.id]);
    expect(rows[0].params).toMatchObject({ items: 1, retired: 0 });
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).id).toBe(job.id);
  });
});
