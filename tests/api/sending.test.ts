import { randomUUID } from 'node:crypto';
import type { Job, Photo, Sending, SendingLink } from '@yardfall/contracts';
import sharp from 'sharp';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { hashToken } from '../../apps/api/src/common/session.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post, sentOffer, type Agent } from '../support/builders.ts';
import { heicPicture, video, webm } from '../support/media.ts';
import { openSending, sendingToken } from '../support/sender.ts';
import { append, beginUpload, newSent, tusVersion } from '../support/tus.ts';
import { picture, sha256 } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let job: Job;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  job = await newJob(ours);
}, 120_000);
afterAll(() => test.close());

const page = (agent: Agent) => get<Sending>(agent, '/sending');
const photos = async (of = job.id) => (await get<{ items: Photo[] }>(ours.owner.agent, `/jobs/${of}/photos`)).items;
const state = () => get<{ open: SendingLink | null }>(ours.owner.agent, `/jobs/${job.id}/sending-link`);
async function send(agent: Agent, bytes: Buffer, meta: Parameters<typeof newSent>[1] = {}): Promise<string> {
  const upload = newSent(bytes, meta);
  await beginUpload(agent, '/sending/uploads', upload).expect(201);
  await append(agent, `/api/v1/sending/uploads/${upload.meta.id}`, 0, bytes).expect(204);
  return upload.meta.id;
}

describe('the link for photos of the rain', () => {
  it('holds a token of 256 bits behind #, of which only the hash is stored; the page it opens says whom it goes to and nothing of the job', async () => {
    const { link } = await post<{ link: string }>(ours.estimator.agent, `/jobs/${job.id}/sending-link`, {}, 201);
    expect(link).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/send#[A-Za-z0-9_-]{43}$/);
    const token = link.split('#')[1] ?? '';
    const { rows } = await test.owner.query(`SELECT token_hash FROM link WHERE kind = 'sending' AND job_id = $1 AND revoked_at IS NULL`, [job.id]);
    expect(rows.map(({ token_hash }) => Buffer.from(token_hash).toString('hex'))).toEqual([Buffer.from(hashToken(token)).toString('hex')]);
    const agent = supertest.agent(test.server);
    const { body } = await agent.post('/api/v1/sending').send({ token }).expect(201);
    expect(body).toMatchObject({ company: { name: 'Trial Yards', phone: '919-555-0150' }, filesLeft: 60, arrived: [] });
    expect(JSON.stringify(body)).not.toContain(job.customer.name);
    expect((await state()).open?.usedAt).toBe(test.clock.now().toISOString());
  });

  it('lets nobody see the job, its photos or another page', async () => {
    const agent = await openSending(test, ours, job.id);
    for (const address of [`/jobs/${job.id}`, `/jobs/${job.id}/photos`, '/portal', '/jobs']) expect((await agent.get(`/api/v1${address}`)).status, address).toBe(403);
    await agent.get('/api/v1/session').expect(401);
  });

  it('takes photos and videos, which stand in the job as the customer\'s', async () => {
    const agent = await openSending(test, ours, job.id);
    const taken = await sharp({ create: { width: 200, height: 100, channels: 3, background: 'teal' } }).withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '33/1 0/1 0/1' } }).jpeg().toBuffer();
    const files: [Buffer, string][] = [[taken, 'image/jpeg'], [await picture(64, 64, 'png'), 'image/png'], [heicPicture(), 'image/heic'], [video(), 'video/mp4'], [video('qt  '), 'video/quicktime'], [webm(), 'video/webm']];
    for (const [bytes, type] of files) {
      const id = await send(agent, bytes, { note: 'May 3, behind the house' });
      expect((await photos()).find((photo) => photo.id === id), type).toMatchObject({ mediaType: type, fromCustomer: true, by: '', note: 'May 3, behind the house', forCustomer: false, bytes: bytes.length });
    }
    expect(await page(agent)).toMatchObject({ filesLeft: 54 });
    expect((await page(agent)).arrived.map(({ mediaType }) => mediaType).sort()).toEqual(files.map(([, type]) => type).sort());
    await test.app.get(Worker).drain();
    expect((await photos()).map(({ ready }) => ready)).toEqual(files.map(() => true));
  });

  it('that is minted anew or ended stops working at once, also for who is on its page', async () => {
    const first = await sendingToken(ours, job.id);
    const agent = supertest.agent(test.server);
    await agent.post('/api/v1/sending').send({ token: first }).expect(201);
    const second = await sendingToken(ours, job.id);
    await agent.get('/api/v1/sending').expect(401);
    expect((await supertest(test.server).post('/api/v1/sending').send({ token: first }).expect(410)).body.code).toBe('auth.linkInvalid');
    await agent.post('/api/v1/sending').send({ token: second }).expect(201);
    expect((await post<{ open: unknown }>(ours.owner.agent, `/jobs/${job.id}/sending-link/end`, {}, 200)).open).toBeNull();
    await beginUpload(agent, '/sending/uploads', newSent(await picture())).expect(401);
    expect((await state()).open).toBeNull();
    const third = await sendingToken(ours, job.id);
    test.clock.forward(61 * 86_400);
    await supertest(test.server).post('/api/v1/sending').send({ token: third }).expect(410);
    test.clock.forward(-61 * 86_400);
  });

  it('of another kind opens nothing here, and this one opens no other page', async () => {
    const token = await sendingToken(ours, job.id);
    expect((await supertest(test.server).post('/api/v1/customer-session').send({ token })).status).toBe(410);
    await supertest(test.server).post('/api/v1/invitations/redeem').send({ token, password: 'a long enough password' }).expect(410);
    await ours.crew.agent.post(`/api/v1/jobs/${job.id}/sending-link`).set(key()).send({}).expect(403);
  });

  it('does not tell whether the company holds a file, and is of one job only', async () => {
    const bytes = await picture();
    const upload = { length: bytes.length, meta: { id: randomUUID(), sha256: sha256(bytes), takenAt: '2026-03-02T14:00:00Z', itemKey: null, part: null, note: '', forCustomer: false } };
    await beginUpload(ours.estimator.agent, `/jobs/${job.id}/uploads`, upload).expect(201);
    await append(ours.estimator.agent, `/api/v1/jobs/${job.id}/uploads/${upload.meta.id}`, 0, bytes).expect(204);
    const agent = await openSending(test, ours, job.id);
    const sent = newSent(bytes);
    expect((await beginUpload(agent, '/sending/uploads', sent).expect(201)).headers['upload-offset']).toBe('0');
    await agent.head(`/api/v1/sending/uploads/${upload.meta.id}`).set(tusVersion).expect(404);
    await beginUpload(agent, '/sending/uploads', newSent(bytes, { id: upload.meta.id })).expect(409);
    const other = await openSending(test, ours, (await newJob(ours)).id);
    await other.head(`/api/v1/sending/uploads/${sent.meta.id}`).set(tusVersion).expect(404);
    await append(agent, `/api/v1/sending/uploads/${sent.meta.id}`, 0, bytes).expect(204);
    const again = newSent(bytes);
    expect((await beginUpload(agent, '/sending/uploads', again).expect(201)).headers['upload-offset']).toBe(String(bytes.length));
  });

  it('takes so many files and no more, and says so', async () => {
    const agent = await openSending(test, ours, (await newJob(ours)).id);
    for (let n = 0; n < 60; n += 1) await beginUpload(agent, '/sending/uploads', newSent(Buffer.from(String(n)))).expect(201);
    const { body } = await beginUpload(agent, '/sending/uploads', newSent(Buffer.from('x'))).expect(409);
    expect(body.code).toBe('sending.full');
    const large = await openSending(test, ours, (await newJob(ours)).id);
    for (let n = 0; n < 4; n += 1) await beginUpload(large, '/sending/uploads', { ...newSent(Buffer.from(String(n))), length: 500_000_000 }).expect(201);
    expect((await beginUpload(large, '/sending/uploads', newSent(Buffer.from('x'))).expect(409)).body.code).toBe('sending.full');
  });

  it('leaves a customer who is on their own page there', async () => {
    const { job: sold, customer } = await sentOffer(test, ours);
    await customer.post('/api/v1/sending').send({ token: await sendingToken(ours, sold.id) }).expect(201);
    await customer.get('/api/v1/portal').expect(200);
    await customer.get('/api/v1/sending').expect(200);
    const id = await send(customer, video());
    expect((await photos(sold.id)).find((photo) => photo.id === id)?.fromCustomer).toBe(true);
    expect(JSON.stringify((await customer.get('/api/v1/portal')).body)).not.toContain(id);
  });
});
