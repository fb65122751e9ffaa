import { randomUUID } from 'node:crypto';
import type { Job, Photo } from '@yardfall/contracts';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob } from '../support/builders.ts';
import { emptyPng } from '../support/media.ts';
import { filesIn } from '../support/stored.ts';
import { picture, sendPhoto, sha256 } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  job = await newJob(ours);
}, 120_000);
afterAll(() => test.close());

const files = () => filesIn(test.env.DATA_DIR, 'photos');
const rows = async () => Number((await test.owner.query('SELECT count(*) AS n FROM photo')).rows[0].n);
const file = (agent: TestCompany['owner']['agent'], id: string, copy: string, of = job.id) => agent.get(`/api/v1/jobs/${of}/photos/${id}/${copy}`).buffer(true).parse((response, done) => {
  const chunks: Buffer[] = [];
  response.on('data', (chunk: Buffer) => chunks.push(chunk));
  response.on('end', () => done(null, Buffer.concat(chunks)));
});

describe('a photo', () => {
  it('is kept as it came; copies are made by the queue, upright and without its place', async () => {
    const bytes = await sharp({ create: { width: 2400, height: 1200, channels: 3, background: '#446688' } })
      .withExif({ IFD0: { Make: 'Phone' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '33/1 0/1 0/1' } }).withMetadata({ orientation: 6 }).jpeg().toBuffer();
    const added = (await sendPhoto(ours.estimator.agent, job.id, bytes, { note: 'the slider' }).expect(201)).body as Photo;
    expect(added).toMatchObject({ sha256: sha256(bytes), bytes: bytes.length, mediaType: 'image/jpeg', width: 1200, height: 2400, ready: false, by: 'Test estimator', note: 'the slider' });
    await file(ours.owner.agent, added.id, 'view').expect(404);
    await test.app.get(Worker).drain();
    const original = await file(ours.owner.agent, added.id, 'original').expect(200);
    expect(sha256(original.body as Buffer)).toBe(sha256(bytes));
    expect(original.headers).toMatchObject({ 'content-type': 'image/jpeg', 'cache-control': 'private, max-age=31536000, immutable', 'x-content-type-options': 'nosniff' });
    for (const [copy, width, height] of [['view', 800, 1600], ['thumb', 160, 320]] as const) {
      const response = await file(ours.owner.agent, added.id, copy).expect(200);
      expect(response.headers['content-type']).toBe('image/webp');
      const facts = await sharp(response.body as Buffer).metadata();
      expect([facts.width, facts.height, facts.exif, facts.orientation]).toEqual([width, height, undefined, undefined]);
    }
    expect((await get<{ items: Photo[] }>(ours.owner.agent, `/jobs/${job.id}/photos`)).items[0]).toMatchObject({ id: added.id, ready: true });
  }, 60_000);

  it('sent again with the same id is the same photo; another picture under its id is refused', async () => {
    const bytes = await picture();
    const id = randomUUID();
    const first = await sendPhoto(ours.estimator.agent, job.id, bytes, { id }).expect(201);
    const again = await sendPhoto(ours.estimator.agent, job.id, bytes, { id }).expect(201);
    expect(again.body).toEqual(first.body);
    await sendPhoto(ours.estimator.agent, job.id, await picture(), { id }).expect(409);
    await sendPhoto(ours.estimator.agent, job.id, await picture(64, 64, 'png'), {}, 'image/png').expect(201);
  });

  it('of another company or of a job one is not on is not there', async () => {
    const added = (await sendPhoto(ours.estimator.agent, job.id, await picture()).expect(201)).body as Photo;
    await file(theirs.owner.agent, added.id, 'original').expect(404);
    await file(ours.crew.agent, added.id, 'original').expect(404);
    const before = files();
    await sendPhoto(theirs.owner.agent, job.id, await picture()).expect(404);
    expect(files()).toEqual(before);
  });

  it('stored twice by two companies is two files: neither learns what the other holds', async () => {
    const bytes = await picture();
    const other = await newJob(theirs);
    await sendPhoto(ours.estimator.agent, job.id, bytes).expect(201);
    await sendPhoto(theirs.estimator.agent, other.id, bytes).expect(201);
    expect(files().filter((name) => name === sha256(bytes))).toHaveLength(2);
  });
});

describe('what is no photo', () => {
  it.each<[string, () => Promise<Buffer>, object, string, number, string]>([
    ['text that calls itself a JPEG', async () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), {}, 'image/jpeg', 422, 'photo.notAnImage'],
    ['a GIF', () => sharp({ create: { width: 8, height: 8, channels: 3, background: 'red' } }).gif().toBuffer(), {}, 'image/jpeg', 422, 'photo.notAnImage'],
    ['a file of another declared type', () => picture(), {}, 'image/gif', 415, 'request.unsupportedType'],
    ['half a JPEG', async () => (await sharp({ create: { width: 900, height: 900, channels: 3, background: 'gray', noise: { type: 'gaussian', mean: 128, sigma: 50 } } }).jpeg().toBuffer()).subarray(0, 40_000), {}, 'image/jpeg', 422, 'photo.notAnImage'],
    ['a picture that says it is enormous', async () => emptyPng(60_000, 60_000), {}, 'image/png', 413, 'photo.tooLarge'],
    ['a picture with the hash of another', () => picture(), { sha256: 'a'.repeat(64) }, 'image/jpeg', 422, 'photo.hashMismatch'],
    ['a file above the limit', async () => Buffer.concat([await picture(), Buffer.alloc(25_000_001)]), {}, 'image/jpeg', 413, 'request.tooLarge'],
    ['an unknown key in its description', () => picture(), { colour: 'red' }, 'image/jpeg', 400, 'request.invalid'],
  ])('%s is refused with the reason and leaves nothing behind', async (_what, make, meta, type, status, code) => {
    const before = [files(), await rows()];
    const refused = await sendPhoto(ours.estimator.agent, job.id, await make(), meta, type);
    expect([refused.status, refused.body.code]).toEqual([status, code]);
    expect(refused.body.detail.length).toBeGreaterThan(20);
    expect([files(), await rows()]).toEqual(before);
  }, 60_000);
});
