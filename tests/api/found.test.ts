import { randomUUID } from 'node:crypto';
import type { FoundReport, Job, Photo } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post } from '../support/builders.ts';
import { picture, sendPhoto } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  job = await newJob(ours);
  await ours.owner.agent.put(`/api/v1/jobs/${job.id}/assignments`).set(key()).send({ assignments: [{ memberId: ours.crew.id, role: 'crew' }] }).expect(200);
}, 120_000);
afterAll(() => test.close());

const thick = { kind: 'thickerSlab', part: 'CH1', measure: 0.216, note: 'Eight and a half inches at the second hole', photoIds: [] as string[] };
const holds = async () => (await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).holds.filter(({ code }) => code.startsWith('found.')).map(({ code, params, waitsFor }) => ({ code, params, waitsFor }));

describe('"stop work: we found ..."', () => {
  it('holds the job until the estimator has answered every report', async () => {
    const photo = (await sendPhoto(ours.crew.agent, job.id, await picture()).expect(201)).body as Photo;
    const slab = await post<FoundReport>(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, photoIds: [photo.id] }, 201);
    expect(slab).toMatchObject({ ...thick, photoIds: [photo.id], status: 'open', reportedBy: 'Test crew', answer: null });
    test.clock.forward(60);
    const pipe = await post<FoundReport>(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, kind: 'pipeInTheWay', measure: null }, 201);
    expect(await holds()).toEqual([{ code: 'found.hold.open', waitsFor: 'us', params: { kind: 'found.kind.thickerSlab' } }]);
    const answered = await post<FoundReport>(ours.estimator.agent, `/jobs/${job.id}/found/${slab.id}/answer`, { answer: 'Breaker comes at ten' }, 200);
    expect(answered).toMatchObject({ status: 'answered', answer: 'Breaker comes at ten', answeredBy: 'Test estimator' });
    expect(await holds()).toEqual([{ code: 'found.hold.open', waitsFor: 'us', params: { kind: 'found.kind.pipeInTheWay' } }]);
    await post(ours.estimator.agent, `/jobs/${job.id}/found/${slab.id}/answer`, { answer: 'again' }, 409);
    await post(ours.estimator.agent, `/jobs/${job.id}/found/${pipe.id}/answer`, { answer: 'Cut and cap' }, 200);
    expect(await holds()).toEqual([]);
    expect((await get<{ items: FoundReport[] }>(ours.crew.agent, `/jobs/${job.id}/found`)).items.map(({ id }) => id)).toEqual([pipe.id, slab.id]);
  });

  it('is not answered by the crew, nor across companies, nor with a photo of elsewhere', async () => {
    const report = await post<FoundReport>(ours.crew.agent, `/jobs/${job.id}/found`, thick, 201);
    await post(ours.crew.agent, `/jobs/${job.id}/found/${report.id}/answer`, { answer: 'go on' }, 403);
    await post(theirs.owner.agent, `/jobs/${job.id}/found/${report.id}/answer`, { answer: 'go on' }, 404);
    await post(theirs.owner.agent, `/jobs/${job.id}/found`, thick, 404);
    await post(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, photoIds: [randomUUID()] }, 404);
    await post(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, kind: 'gold' }, 400);
    expect((await get<{ items: FoundReport[] }>(ours.owner.agent, `/jobs/${job.id}/found`)).items.filter(({ status }) => status === 'open')).toHaveLength(1);
  });
});
