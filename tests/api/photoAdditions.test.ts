import { randomUUID } from 'node:crypto';
import { type Job, type NewPhotoAddition, type Photo, photoAsIs, type PhotoMark, type Portal } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { key, makeCompany, makePerson, type Person, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, releasedJob } from '../support/builders.ts';
import { picture, sendPhoto, sha256 } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;
let customer: Awaited<ReturnType<typeof releasedJob>>['customer'];

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  ({ job, customer } = await releasedJob(test, ours));
}, 240_000);
afterAll(() => test.close());

const arrow = (x: number): PhotoMark => ({ kind: 'arrow', from: { x, y: 0.2 }, to: { x: x + 0.2, y: 0.6 }, words: '' });
const addition = (more: Partial<NewPhotoAddition> = {}): NewPhotoAddition => ({ id: randomUUID(), at: '2026-03-02T14:10:00Z', marks: [arrow(0.1)], note: '', place: null, hides: [], ...more });
const amend = ({ agent }: Person, photoId: string, body: object, of = job.id) => agent.post(`/api/v1/jobs/${of}/photos/${photoId}/additions`).set(key()).send(body);
const stored = async (id: string) => (await get<{ items: Photo[] }>(ours.owner.agent, `/jobs/${job.id}/photos`)).items.find((photo) => photo.id === id);
const taken = async (meta: object = {}): Promise<Photo> => (await sendPhoto(ours.crew.agent, job.id, await picture(), { marks: [arrow(0.5)], note: 'the door', part: 'CH1', ...meta }).expect(201)).body as Photo;

describe('what is added to a photo that is kept', () => {
  it('stands beside it with who and when: crew and office one after the other, and nothing takes the earlier away', async () => {
    const bytes = await picture();
    const photo = (await sendPhoto(ours.crew.agent, job.id, bytes, { marks: [arrow(0.5)], note: 'the door' }).expect(201)).body as Photo;
    const first = addition({ note: 'cracked here' });
    await amend(ours.crew, photo.id, first).expect(200);
    const second = addition({ at: '2026-03-02T14:20:00Z', marks: [arrow(0.2), arrow(0.3)], place: { itemKey: 'B1', part: 'P1', point: { station: 4.25, level: -0.6 } } });
    const answer = (await amend(ours.estimator, photo.id, second).expect(200)).body as Photo;
    expect(answer.additions.map(({ by, at, marks }) => [by, at, marks.length])).toEqual([['Test crew', '2026-03-02T14:10:00.000Z', 1], ['Test estimator', '2026-03-02T14:20:00.000Z', 2]]);
    expect(answer).toMatchObject({ sha256: sha256(bytes), note: 'the door', part: null, marks: [arrow(0.5)] });
    expect(photoAsIs(answer, answer.additions)).toMatchObject({ part: 'P1', itemKey: 'B1', point: { station: 4.25, level: -0.6 }, note: 'the door\ncracked here' });
    expect(await stored(photo.id)).toEqual(answer);
  });

  it('arrives once however often it is sent; its id is of one photo and one person', async () => {
    const [photo, other] = [await taken(), await taken()];
    const body = addition();
    const first = (await amend(ours.crew, photo.id, body).expect(200)).body as Photo;
    expect((await amend(ours.crew, photo.id, body).expect(200)).body).toEqual(first);
    await amend(ours.crew, other.id, body).expect(409);
    await amend(ours.estimator, photo.id, body).expect(409);
    expect((await stored(photo.id))?.additions).toHaveLength(1);
    expect((await stored(other.id))?.additions).toEqual([]);
  });

  it('of a phone whose clock runs ahead is of now', async () => {
    const photo = await taken();
    const { additions } = (await amend(ours.crew, photo.id, addition({ at: '2099-01-01T00:00:00Z' })).expect(200)).body as Photo;
    expect(additions[0]?.at).toBe(additions[0]?.recordedAt);
  });

  it('is of nobody who does not see the job, and not of a customer', async () => {
    const photo = await taken({ forCustomer: true });
    await amend(theirs.owner, photo.id, addition()).expect(404);
    await amend(await makePerson(test, ours.id, ['crew']), photo.id, addition()).expect(404);
    expect((await customer.post(`/api/v1/jobs/${job.id}/photos/${photo.id}/additions`).set(key()).send(addition())).status).toBe(403);
    await amend(ours.crew, randomUUID(), addition()).expect(404);
    await amend(ours.crew, photo.id, addition({ marks: [{ ...arrow(0.1), to: { x: 1.2, y: 0 } }] })).expect(400);
    expect((await stored(photo.id))?.additions).toEqual([]);
  });

  it('is what the customer sees of a photo that is meant for them, without who added it; a hidden set is not drawn', async () => {
    const photo = await taken({ forCustomer: true });
    await test.app.get(Worker).drain();
    const wrong = addition({ marks: [arrow(0.7)] });
    await amend(ours.crew, photo.id, wrong).expect(200);
    await amend(ours.estimator, photo.id, addition({ at: '2026-03-02T14:30:00Z', marks: [arrow(0.3)], note: 'seen by the office', hides: [wrong.id] })).expect(200);
    const seen = (await get<Portal>(customer, '/portal')).photos.find(({ id }) => id === photo.id);
    expect(seen).toEqual({ id: photo.id, note: 'the door\nseen by the office', takenAt: '2026-03-02T14:00:00.000Z', itemKey: null, marks: [arrow(0.5), arrow(0.3)] });
  });
});
