import { randomUUID } from 'node:crypto';
import http from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Job, Photo, UploadState } from '@yardfall/contracts';
import * as tus from 'tus-js-client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { UploadSweep } from '../../apps/api/src/photos/uploadSweep.ts';
import { makeCompany, password, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob } from '../support/builders.ts';
import { heavyPicture } from '../support/media.ts';
import { filesIn } from '../support/stored.ts';
import { append, beginUpload, metadata, newUpload, type NewUpload, tusVersion } from '../support/tus.ts';
import { picture, sendPhoto, sha256 } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;
let cookie: string;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  job = await newJob(ours);
  const { headers } = await ours.estimator.agent.post('/api/v1/session').send({ email: ours.estimator.email, password }).expect(201);
  cookie = String(headers['set-cookie']).split(';')[0] ?? '';
}, 120_000);
afterAll(() => test.close());

const url = () => `http://127.0.0.1:${String((test.server.address() as AddressInfo).port)}`;
const path = () => `/jobs/${job.id}/uploads`;
const at = (id: string) => `/api/v1${path()}/${id}`;
const photos = async () => (await get<{ items: Photo[] }>(ours.owner.agent, `/jobs/${job.id}/photos`)).items;
const photoOf = async (upload: NewUpload) => (await photos()).find(({ id }) => id === upload.meta.id);
const begin = (upload: NewUpload, agent = ours.estimator.agent) => beginUpload(agent, path(), upload);
const offsetOf = async (id: string) => Number((await ours.estimator.agent.head(at(id)).set(tusVersion).expect(200)).headers['upload-offset']);
const stored = () => filesIn(test.env.DATA_DIR, 'photos');
const parts = () => filesIn(test.env.DATA_DIR, 'uploads');
const original = async (id: string): Promise<Buffer> => {
  const { body } = await ours.owner.agent.get(`/api/v1/jobs/${job.id}/photos/${id}/original`).buffer(true).parse((response, done) => {
    const chunks: Buffer[] = [];
    response.on('data', (chunk: Buffer) => chunks.push(chunk));
    response.on('end', () => done(null, Buffer.concat(chunks)));
  }).expect(200);
  return body as Buffer;
};

/** Sends the first bytes of a request that promises more, and cuts the line when the office has them. */
function cutOff(id: string, offset: number, bytes: Buffer, after: number): Promise<void> {
  const headers = { ...tusVersion, cookie, 'upload-offset': String(offset), 'content-type': 'application/offset+octet-stream', 'content-length': String(bytes.length) };
  const request = http.request(`${url()}${at(id)}`, { method: 'PATCH', headers });
  return new Promise((resolve) => {
    request.on('error', () => resolve());
    request.write(bytes.subarray(0, after), () => {
      const waiting = setInterval(() => void offsetOf(id).then((now) => {
        if (now < offset + after) return;
        clearInterval(waiting);
        request.destroy();
        resolve();
      }), 20);
    });
  });
}

describe('an upload in parts', () => {
  it('goes on where the line was cut: what came before is not sent again, and the photo is there with its last byte', async () => {
    const bytes = await heavyPicture(900, 700);
    const upload = newUpload(bytes, { note: 'the low corner' });
    const before = stored();
    const { headers } = await begin(upload).expect(201);
    expect(headers).toMatchObject({ location: at(upload.meta.id), 'upload-offset': '0', 'tus-resumable': '1.0.0', 'cache-control': 'no-store' });
    const most = Math.floor(bytes.length * 0.9);
    await cutOff(upload.meta.id, 0, bytes, most);
    expect(await offsetOf(upload.meta.id)).toBe(most);
    expect([stored(), parts(), await photoOf(upload)]).toEqual([before, [`${upload.meta.id}.part`], undefined]);
    const { headers: end } = await append(ours.estimator.agent, at(upload.meta.id), most, bytes.subarray(most)).expect(204);
    expect(end['upload-offset']).toBe(String(bytes.length));
    expect(await photoOf(upload)).toMatchObject({ sha256: sha256(bytes), bytes: bytes.length, width: 900, height: 700, note: 'the low corner', by: 'Test estimator', fromCustomer: false, marks: [] });
    expect([stored().length, parts()]).toEqual([before.length + 1, []]);
    expect(sha256(await original(upload.meta.id))).toBe(sha256(bytes));
    await test.app.get(Worker).drain();
    expect((await photoOf(upload))?.ready).toBe(true);
  });

  it('is found again by whoever asks with the same id: nothing is stored twice, whatever is repeated', async () => {
    const bytes = await picture();
    const upload = newUpload(bytes);
    const half = bytes.length >> 1;
    await begin(upload).expect(201);
    await append(ours.estimator.agent, at(upload.meta.id), 0, bytes.subarray(0, half)).expect(204);
    expect((await begin(upload).expect(201)).headers['upload-offset']).toBe(String(half));
    const { body } = await append(ours.estimator.agent, at(upload.meta.id), 0, bytes.subarray(0, half)).expect(409);
    expect(body).toMatchObject({ code: 'upload.offset', params: { offset: half } });
    await append(ours.estimator.agent, at(upload.meta.id), half, bytes.subarray(half)).expect(204);
    await append(ours.estimator.agent, at(upload.meta.id), bytes.length, Buffer.alloc(0)).expect(204);
    expect((await begin(upload).expect(201)).headers['upload-offset']).toBe(String(bytes.length));
    expect((await photos()).filter(({ id }) => id === upload.meta.id)).toHaveLength(1);
    await begin(newUpload(await picture(), { id: upload.meta.id })).expect(409);
    await ours.estimator.agent.delete(at(upload.meta.id)).set(tusVersion).expect(409);
  });

  it('of two lines of one phone the newer one goes on', async () => {
    const bytes = await heavyPicture(500, 400);
    const upload = newUpload(bytes);
    await begin(upload).expect(201);
    const headers = { ...tusVersion, cookie, 'upload-offset': '0', 'content-type': 'application/offset+octet-stream', 'content-length': String(bytes.length) };
    const dead = http.request(`${url()}${at(upload.meta.id)}`, { method: 'PATCH', headers });
    dead.on('error', () => undefined);
    dead.write(bytes.subarray(0, 1000));
    for (let size = 0; size < 1000; size = await offsetOf(upload.meta.id));
    await append(ours.estimator.agent, at(upload.meta.id), 1000, bytes.subarray(1000)).expect(204);
    dead.destroy();
    expect(sha256(await original(upload.meta.id))).toBe(sha256(bytes));
  });

  it('of bytes that the company has already is in the job at once; another company has to send them', async () => {
    const bytes = await picture();
    await sendPhoto(ours.estimator.agent, job.id, bytes).expect(201);
    const files = stored();
    const upload = newUpload(bytes, { note: 'the same once more' });
    expect((await begin(upload).expect(201)).headers['upload-offset']).toBe(String(bytes.length));
    expect(await photoOf(upload)).toMatchObject({ note: 'the same once more', sha256: sha256(bytes) });
    expect([stored(), parts()]).toEqual([files, []]);
    const other = await newJob(theirs);
    const { headers } = await beginUpload(theirs.estimator.agent, `/jobs/${other.id}/uploads`, newUpload(bytes)).expect(201);
    expect(headers['upload-offset']).toBe('0');
  });

  it('with other bytes than it promised is thrown away, and may begin anew', async () => {
    const bytes = await picture();
    const upload = newUpload(bytes);
    const wrong = Buffer.from(bytes);
    wrong[wrong.length - 30] = (wrong[wrong.length - 30] ?? 0) ^ 1;
    const before = stored();
    await begin(upload).expect(201);
    expect((await append(ours.estimator.agent, at(upload.meta.id), 0, wrong).expect(422)).body.code).toBe('photo.hashMismatch');
    await ours.estimator.agent.head(at(upload.meta.id)).set(tusVersion).expect(404);
    expect([stored(), parts()].map((names) => names.filter((name) => name.includes(upload.meta.id)))).toEqual([[], []]);
    expect(stored()).toEqual(before);
    expect((await begin(upload).expect(201)).headers['upload-offset']).toBe('0');
    await append(ours.estimator.agent, at(upload.meta.id), 0, bytes).expect(204);
    expect(await photoOf(upload)).toBeDefined();
  });

  it('that is no photo is refused with its first bytes, before the rest is sent', async () => {
    const bytes = Buffer.concat([Buffer.from('<!doctype html><script>'), Buffer.alloc(5000, 65)]);
    const upload = newUpload(bytes);
    await begin(upload).expect(201);
    const refused = await append(ours.estimator.agent, at(upload.meta.id), 0, bytes.subarray(0, 100)).expect(422);
    expect(refused.body).toMatchObject({ code: 'photo.notAnImage', status: 422 });
    expect(refused.body.detail).toMatch(/not a photo or video/);
    expect(refused.headers['tus-resumable']).toBe('1.0.0');
    expect(parts().filter((name) => name.includes(upload.meta.id))).toEqual([]);
  });

  it('is of whoever began it, speaks one version, and takes no more than it promised', async () => {
    const upload = newUpload(await picture());
    const { agent } = ours.estimator;
    await begin(upload).expect(201);
    await ours.owner.agent.head(at(upload.meta.id)).set(tusVersion).expect(404);
    await theirs.owner.agent.head(at(upload.meta.id)).set(tusVersion).expect(404);
    const old = await agent.get(at(upload.meta.id)).set('Tus-Resumable', '0.2.2').expect(412);
    expect([old.body.code, old.headers['tus-version']]).toEqual(['upload.version', '1.0.0']);
    await agent.patch(at(upload.meta.id)).set({ ...tusVersion, 'Upload-Offset': '0', 'Content-Type': 'image/jpeg' }).send(Buffer.alloc(10)).expect(415);
    await agent.patch(at(upload.meta.id)).set({ ...tusVersion, 'Upload-Offset': 'x', 'Content-Type': 'application/offset+octet-stream' }).send(Buffer.alloc(10)).expect(400);
    await append(agent, at(upload.meta.id), 0, Buffer.alloc(upload.length + 1)).expect(413);
    await begin({ ...upload, length: 500_000_001 }).expect(400);
    await agent.post(`/api/v1${path()}`).set({ ...tusVersion, 'Upload-Length': '10', 'Upload-Metadata': `${metadata(upload.meta)},other e30=` }).expect(400);
    await agent.post(`/api/v1${path()}`).set({ ...tusVersion, 'Upload-Length': '10', 'Upload-Metadata': 'meta bm90IEpTT04=' }).expect(400);
    await agent.delete(at(upload.meta.id)).set(tusVersion).expect(204);
    await agent.head(at(upload.meta.id)).set(tusVersion).expect(404);
    const options = await agent.options('/api/v1/uploads').expect(204);
    expect(options.headers).toMatchObject({ 'tus-version': '1.0.0', 'tus-extension': 'creation,expiration,termination', 'tus-max-size': '500000000' });
  });

  it('that nobody goes on with is swept with its part', async () => {
    const bytes = await picture();
    const upload = newUpload(bytes);
    await begin(upload).expect(201);
    await append(ours.estimator.agent, at(upload.meta.id), 0, bytes.subarray(0, 200)).expect(204);
    test.clock.forward(15 * 86_400);
    try {
      await ours.estimator.agent.post('/api/v1/session').send({ email: ours.estimator.email, password }).expect(201);
      await ours.estimator.agent.head(at(upload.meta.id)).set(tusVersion).expect(404);
      await test.app.get(UploadSweep).run();
      expect(parts().filter((name) => name.includes(upload.meta.id))).toEqual([]);
      expect(Number((await test.owner.query('SELECT count(*) AS n FROM photo_upload WHERE id = $1', [upload.meta.id])).rows[0].n)).toBe(0);
    } finally {
      test.clock.forward(-15 * 86_400);
    }
  });
});

/** The protocol's own open-source client (tus-js-client, MIT), which knows nothing of us, is the check of what we say it is. */
describe('the client of the protocol', () => {
  const send = (upload: NewUpload, source: tus.UploadOptions & { readonly bytes: Buffer }): Promise<tus.Upload> => new Promise((resolve, reject) => {
    const { bytes, ...options } = source;
    const sender: tus.Upload = new tus.Upload(bytes, {
      endpoint: `${url()}/api/v1${path()}`, headers: { cookie }, metadata: { meta: JSON.stringify(upload.meta) }, chunkSize: 40_000, retryDelays: null,
      ...options, onError: reject, onSuccess: () => resolve(sender),
    });
    sender.start();
  });

  it('creates, sends in pieces, and finishes', async () => {
    const bytes = await heavyPicture(400, 300);
    const upload = newUpload(bytes);
    const seen: number[] = [];
    await send(upload, { bytes, onChunkComplete: (_, accepted) => seen.push(accepted) });
    expect(seen.at(-1)).toBe(bytes.length);
    expect(seen.length).toBeGreaterThan(1);
    expect(await photoOf(upload)).toMatchObject({ sha256: sha256(bytes) });
  });

  it('resumes what another began, from the offset that it is told', async () => {
    const bytes = await heavyPicture(400, 300);
    const upload = newUpload(bytes);
    await begin(upload).expect(201);
    await append(ours.estimator.agent, at(upload.meta.id), 0, bytes.subarray(0, 30_000)).expect(204);
    const from: number[] = [];
    await send(upload, { bytes, uploadUrl: `${url()}${at(upload.meta.id)}`, onProgress: (sent) => from.push(sent) });
    expect(Math.min(...from)).toBeGreaterThanOrEqual(30_000);
    expect(await photoOf(upload)).toMatchObject({ sha256: sha256(bytes) });
  });

  it('is told with the status of the protocol that an upload is not there', async () => {
    const { status } = await ours.estimator.agent.head(at(randomUUID())).set(tusVersion);
    expect(status).toBe(404);
    const state = (await ours.estimator.agent.get(at((await begin(newUpload(await picture()))).body.id as string)).set(tusVersion).expect(200)).body as UploadState;
    expect(state.offset).toBe(0);
  });
});
