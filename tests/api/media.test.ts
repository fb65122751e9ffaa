import { randomBytes } from 'node:crypto';
import type { Job, Photo } from '@yardfall/contracts';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob } from '../support/builders.ts';
import { emptyPng, heicPicture, video, webm } from '../support/media.ts';
import { filesIn, halvesIn } from '../support/stored.ts';
import { append, beginUpload, newUpload } from '../support/tus.ts';
import { picture } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let job: Job;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  job = await newJob(ours);
}, 120_000);
afterAll(() => test.close());

async function send(bytes: Buffer) {
  const upload = newUpload(bytes);
  await beginUpload(ours.estimator.agent, `/jobs/${job.id}/uploads`, upload).expect(201);
  const answer = await append(ours.estimator.agent, `/api/v1/jobs/${job.id}/uploads/${upload.meta.id}`, 0, bytes);
  return { answer, id: upload.meta.id };
}
const photoOf = async (id: string) => (await get<{ items: Photo[] }>(ours.owner.agent, `/jobs/${job.id}/photos`)).items.find((photo) => photo.id === id);
const file = (id: string, copy: string, headers: Record<string, string> = {}) => ours.owner.agent.get(`/api/v1/jobs/${job.id}/photos/${id}/${copy}`).set(headers).buffer(true).parse((response, done) => {
  const chunks: Buffer[] = [];
  response.on('data', (chunk: Buffer) => chunks.push(chunk));
  response.on('end', () => done(null, Buffer.concat(chunks)));
});
const stored = () => filesIn(test.env.DATA_DIR, 'photos');

/** A JPEG of 60 megapixels: one colour, so that it is small on the line. */
const sixty = () => sharp({ create: { width: 10_000, height: 6_000, channels: 3, background: '#557766' } }).jpeg({ quality: 50 }).toBuffer();

describe('what a phone sends', () => {
  it('of 60 megapixels is kept, with a copy to look at', async () => {
    const { id } = await send(await sixty());
    expect(await photoOf(id)).toMatchObject({ width: 10_000, height: 6_000, mediaType: 'image/jpeg' });
    await test.app.get(Worker).drain();
    const { width, height } = await sharp((await file(id, 'view').expect(200)).body as Buffer).metadata();
    expect([width, height]).toEqual([1600, 960]);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('turned by EXIF orientation %d is shown upright', async (orientation) => {
    const upright = await sharp({ create: { width: 60, height: 40, channels: 3, background: 'red' } }).composite([{ input: { create: { width: 30, height: 20, channels: 3, background: 'blue' } }, left: 0, top: 0 }]).png().toBuffer();
    // The picture as the sensor has it: what the orientation undoes (EXIF 2.32, tag 274).
    const turns = [[0, false], [0, true], [180, false], [180, true], [270, true], [270, false], [90, true], [90, false]] as const;
    const [angle, mirrored] = turns[orientation - 1] ?? [0, false];
    const sensor = await sharp(mirrored ? await sharp(upright).flop().toBuffer() : upright).rotate(angle).jpeg({ quality: 95 }).withMetadata({ orientation }).toBuffer();
    const { id } = await send(sensor);
    expect(await photoOf(id)).toMatchObject({ width: 60, height: 40 });
    await test.app.get(Worker).drain();
    const { data, info } = await sharp((await file(id, 'view').expect(200)).body as Buffer).raw().toBuffer({ resolveWithObject: true });
    const at = (x: number, y: number) => [...data.subarray((y * info.width + x) * info.channels, (y * info.width + x) * info.channels + 3)];
    expect([info.width, info.height]).toEqual([60, 40]);
    expect(at(10, 8)[2]).toBeGreaterThan(200);
    for (const [x, y] of [[50, 8], [10, 32], [50, 32]] as const) expect(at(x, y)[0]).toBeGreaterThan(200);
  });

  it('as HEIC is kept as it came and shown as a copy with its colours in their places', async () => {
    const { id } = await send(heicPicture());
    expect(await photoOf(id)).toMatchObject({ width: 96, height: 64, mediaType: 'image/heic', ready: false });
    await test.app.get(Worker).drain();
    expect(await photoOf(id)).toMatchObject({ ready: true, unshown: false });
    const { data, info } = await sharp((await file(id, 'view').expect(200)).body as Buffer).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([96, 64]);
    // The quarters as they were drawn: red 220 or 30 left and right, green 40 or 200 above and below, blue 90 everywhere.
    for (const [x, y, red, green] of [[24, 16, 220, 40], [72, 16, 30, 40], [24, 48, 220, 200], [72, 48, 30, 200]] as const) {
      const at = (y * info.width + x) * info.channels;
      const far = [red, green, 90].map((value, channel) => Math.abs(value - (data[at + channel] ?? 0)));
      expect(Math.max(...far)).toBeLessThan(25); // two lossy encodings of flat colour
    }
    const original = await file(id, 'original').expect(200);
    expect(original.headers).toMatchObject({ 'content-type': 'image/heic', 'content-disposition': 'attachment', 'x-content-type-options': 'nosniff' });
    expect((original.body as Buffer).equals(heicPicture())).toBe(true);
  });

  it('as HEIC whose picture is damaged is kept, and said not to be shown', async () => {
    const bytes = heicPicture();
    const { id } = await send(Buffer.concat([bytes.subarray(0, bytes.length - 60), randomBytes(60)]));
    await test.app.get(Worker).drain();
    const photo = await photoOf(id);
    expect([photo?.ready, photo?.unshown].filter(Boolean)).toHaveLength(1); // a decoder may still make a picture of it
    await file(id, 'original').expect(200);
  });

  it('as video is played in parts and never taken for anything else', async () => {
    const bytes = video('mp42', 3000);
    const { id } = await send(bytes);
    expect(await photoOf(id)).toMatchObject({ mediaType: 'video/mp4', width: null, height: null, ready: true });
    const whole = await file(id, 'original').expect(200);
    expect(whole.headers).toMatchObject({ 'content-type': 'video/mp4', 'accept-ranges': 'bytes', 'x-content-type-options': 'nosniff', 'content-length': String(bytes.length) });
    const part = await file(id, 'original', { Range: 'bytes=100-199' }).expect(206);
    expect(part.headers).toMatchObject({ 'content-range': `bytes 100-199/${String(bytes.length)}`, 'content-length': '100' });
    expect((part.body as Buffer).equals(bytes.subarray(100, 200))).toBe(true);
    expect(((await file(id, 'original', { Range: 'bytes=-50' }).expect(206)).body as Buffer).equals(bytes.subarray(-50))).toBe(true);
    expect(((await file(id, 'original', { Range: `bytes=${String(bytes.length - 10)}-` }).expect(206)).body as Buffer).length).toBe(10);
    await file(id, 'original', { Range: `bytes=${String(bytes.length)}-` }).expect(200);
    await file(id, 'original', { Range: 'bytes=0-1,5-6' }).expect(200);
    await file(id, 'view').expect(404);
  });
});

describe('what is refused with a sentence, and leaves nothing behind', () => {
  const jpeg = async () => sharp(randomBytes(300 * 200 * 3), { raw: { width: 300, height: 200, channels: 3 } }).jpeg().toBuffer();
  it.each<[string, () => Promise<Buffer> | Buffer, number, string]>([
    ['a page that calls itself a photo', () => Buffer.from('<html><script>alert(1)</script></html>'.repeat(5)), 422, 'photo.notAnImage'],
    ['an SVG', () => Buffer.from('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><script/></svg>'.repeat(3)), 422, 'photo.notAnImage'],
    ['a picture of AV1', () => sharp({ create: { width: 8, height: 8, channels: 3, background: 'red' } }).avif().toBuffer(), 422, 'photo.notAnImage'],
    ['a JPEG that ends in its middle', async () => (await jpeg()).subarray(0, 9_000), 422, 'photo.notAnImage'],
    ['a JPEG with another picture\'s beginning', async () => Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), await jpeg()]), 422, 'photo.notAnImage'],
    ['a PNG of 3,600 megapixels with nothing in it', () => emptyPng(60_000, 60_000), 413, 'photo.tooLarge'],
    ['a PNG that promises what it does not hold', () => emptyPng(4_000, 3_000), 422, 'photo.notAnImage'],
    ['a photo above 25 MB', async () => Buffer.concat([await picture(), Buffer.alloc(25_000_001)]), 413, 'photo.tooLarge'],
    ['a HEIC that ends in its middle', () => heicPicture().subarray(0, 300), 422, 'photo.notAnImage'],
    ['a video that ends in its middle', () => video().subarray(0, 20_000), 422, 'video.unreadable'],
    ['a WebM that ends in its middle', () => webm().subarray(0, 20_000), 422, 'video.unreadable'],
    ['a video without its table', () => Buffer.concat([video().subarray(0, 20), Buffer.from([0, 0, 0, 16]), Buffer.from('mdat12345678')]), 422, 'video.unreadable'],
  ])('%s', async (_what, make, status, code) => {
    const before = stored();
    const { answer, id } = await send(await make());
    expect([answer.status, answer.body.code]).toEqual([status, code]);
    expect(answer.body.detail.length).toBeGreaterThan(40);
    expect(await photoOf(id)).toBeUndefined();
    expect([stored(), filesIn(test.env.DATA_DIR, 'uploads'), halvesIn(test.env.DATA_DIR)]).toEqual([before, [], []]);
  });
});
