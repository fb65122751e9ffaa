import type { Job, Survey } from '@yardfall/contracts';
import { canonicalBytes, sha256Hex } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ternHollowSurvey } from '../../apps/api/src/seed/sites/ternHollow.survey.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
});
afterAll(() => test.close());

const body = { name: 'First visit', content: ternHollowSurvey };

describe('a survey', () => {
  it('is stored as canonical bytes with their hash and read with its reduction; the job goes on to the design', async () => {
    const job = await newJob(ours);
    const survey = await post<Survey>(ours.estimator.agent, `/jobs/${job.id}/surveys`, body, 201);
    expect(survey.content).toEqual(ternHollowSurvey);
    expect(survey.sha256).toBe(await sha256Hex(canonicalBytes(ternHollowSurvey)));
    expect(survey.reduction.verdict).toBe('closes');
    expect(survey.reduction.gravity.map(({ shortfall }) => Math.round((shortfall / 0.3048) * 100) / 100)).toEqual([0.9, 1]);
    expect(survey.reduction.gravity.map(({ uncertainty, verdict }) => [Math.round((uncertainty / 0.3048) * 100) / 100, verdict])).toEqual([[0.01, 'short'], [0.01, 'short']]);
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).history.map(({ stage }) => stage)).toEqual(['intake', 'visit', 'design']);
  });

  it('is corrected by whoever read the last version, and by nobody from an older one', async () => {
    const job = await newJob(ours);
    const survey = await post<Survey>(ours.estimator.agent, `/jobs/${job.id}/surveys`, body, 201);
    const url = `/api/v1/jobs/${job.id}/surveys/${survey.id}`;
    const put = (version: number, name: string) => ours.estimator.agent.put(url).set(key()).set('If-Match', `"${String(version)}"`).send({ ...body, name });
    await ours.estimator.agent.put(url).set(key()).send(body).expect(428);
    const corrected = await put(1, 'Corrected').expect(200);
    expect(corrected.body).toMatchObject({ name: 'Corrected', version: 2 });
    expect(corrected.headers['etag']).toBe('"2"');
    await put(1, 'Late').expect(412);
    expect((await get<Survey>(ours.estimator.agent, `/jobs/${job.id}/surveys/${survey.id}`)).name).toBe('Corrected');
  });

  it('tells what is wrong with a book and keeps every reading', async () => {
    const job = await newJob(ours);
    const readings = ternHollowSurvey.levelBook.readings.map((reading, index) => (index === 2 ? { ...reading, intermediate: 25 } : reading));
    const content = { ...ternHollowSurvey, levelBook: { ...ternHollowSurvey.levelBook, readings } };
    const survey = await post<Survey>(ours.estimator.agent, `/jobs/${job.id}/surveys`, { name: 'Odd', content }, 201);
    expect(survey.reduction.problems).toMatchObject([{ readingId: readings[2]?.id }]);
    expect(survey.content.levelBook.readings).toHaveLength(readings.length);
  });

  it('is read by its own company only and written by the office only', async () => {
    const job = await newJob(ours);
    const survey = await post<Survey>(ours.estimator.agent, `/jobs/${job.id}/surveys`, body, 201);
    await theirs.owner.agent.get(`/api/v1/jobs/${job.id}/surveys`).expect(404);
    await theirs.owner.agent.get(`/api/v1/jobs/${job.id}/surveys/${survey.id}`).expect(404);
    await ours.crew.agent.post(`/api/v1/jobs/${job.id}/surveys`).set(key()).send(body).expect(403);
    await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/surveys`).set(key()).send({ ...body, content: { ...ternHollowSurvey, extra: 1 } }).expect(400);
    expect((await get<{ items: Survey[] }>(ours.estimator.agent, `/jobs/${job.id}/surveys`)).items).toEqual([survey]);
  });
});
