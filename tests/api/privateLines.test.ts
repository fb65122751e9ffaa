import { randomUUID } from 'node:crypto';
import { privateLineWarnings, type PrivateLines, privateQuestions } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

describe("the homeowner's own lines", () => {
  it('are unknown until somebody says so, and every earlier word stays', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    const job = await newJob(ours);
    const url = `/jobs/${job.id}/private-lines`;
    const before = await get<PrivateLines>(ours.owner.agent, url);
    expect(before.lines.map(({ question, state }) => [question, state])).toEqual(privateQuestions.map((question) => [question, 'unknown']));
    const line = { question: 'septic', state: 'unknown', note: '', on: null, photoId: null };
    await post(ours.estimator.agent, url, { lines: [line, { ...line, question: 'pool', state: 'no' }] }, 200);
    test.clock.forward(60);
    const { lines } = await post<PrivateLines>(ours.estimator.agent, url, { lines: [{ ...line, state: 'yes', note: 'Tank by the shed, says the homeowner', on: '2026-03-02' }] }, 200);
    expect(lines.find(({ question }) => question === 'septic')).toMatchObject({ state: 'yes', note: 'Tank by the shed, says the homeowner', on: '2026-03-02', by: 'Test estimator' });
    expect(privateLineWarnings(lines).filter(({ kind }) => kind === 'septic' || kind === 'pool')).toEqual([{ kind: 'septic', why: 'notLocated' }]);
    const { rows } = await test.owner.query<{ n: string }>(`SELECT count(*) AS n FROM job_answer WHERE job_id = $1 AND topic = 'privateLine'`, [job.id]);
    expect(Number(rows[0]?.n)).toBe(3);
    await post(ours.estimator.agent, url, { lines: [{ ...line, state: 'maybe' }] }, 400);
    await post(ours.estimator.agent, url, { lines: [{ ...line, photoId: randomUUID() }] }, 404);
    await post(ours.crew.agent, url, { lines: [line] }, 404);
    await post(theirs.owner.agent, url, { lines: [line] }, 404);
  });

  it('that a phone kept without a signal count from when they were said, once, and undo nothing that was heard later', async () => {
    const job = await newJob(ours);
    const url = `/jobs/${job.id}/private-lines`;
    const line = { question: 'septic', note: '', on: null, photoId: null };
    const septic = async () => (await get<PrivateLines>(ours.owner.agent, url)).lines.find(({ question }) => question === 'septic');
    test.clock.set('2026-03-02T14:00:00Z');
    await post(ours.owner.agent, url, { lines: [{ ...line, state: 'yes', note: 'The tank is by the shed' }] }, 200);
    test.clock.set('2026-03-02T16:00:00Z');
    const early = { ...line, state: 'no', kept: { id: randomUUID(), at: '2026-03-02T13:00:00Z', sentAt: '2026-03-02T16:00:00Z' } };
    for (let sent = 0; sent < 2; sent += 1) await post(ours.estimator.agent, url, { lines: [early] }, 200);
    expect(await septic()).toMatchObject({ state: 'yes', note: 'The tank is by the shed', at: '2026-03-02T14:00:00.000Z' });
    await post(ours.estimator.agent, url, { lines: [{ ...early, kept: { id: randomUUID(), at: '2026-03-02T15:30:00Z', sentAt: '2026-03-02T16:00:00Z' } }] }, 200);
    expect(await septic()).toMatchObject({ state: 'no', at: '2026-03-02T15:30:00.000Z', by: 'Test estimator' });
    const { rows } = await test.owner.query<{ n: string }>(`SELECT count(*) AS n FROM job_answer WHERE job_id = $1`, [job.id]);
    expect(Number(rows[0]?.n)).toBe(3);
  });
});
