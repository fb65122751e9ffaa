import { randomBytes, randomUUID } from 'node:crypto';
import { uploads, pathOf } from '@yardfall/contracts';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { pause } from '../../tools/child.mjs';
import { jobCalled, setUpCompany } from '../support/firstCompany.ts';
import { heavyPicture } from '../support/media.ts';
import { startService, type RunningService } from '../support/processes.ts';
import { filesIn, halvesIn } from '../support/stored.ts';
import { creationHeaders, newUpload, tusVersion } from '../support/tus.ts';
import { sha256 } from '../support/work.ts';

const pieces = 24;
/** Pieces in the middle of which the service is ended; the last one is the moment in which the photo is taken over. */
const kills = [3, 10, 17, 23];

let service: RunningService;
let headers: Record<string, string>;
let jobId: string;

beforeAll(async () => {
  service = await startService({ env: { DEMO: '0' } });
  headers = { cookie: await setUpCompany(service), origin: service.url };
  const made = await fetch(`${service.url}/api/v1/jobs`, { method: 'POST', headers: { ...headers, 'content-type': 'application/json', 'idempotency-key': randomUUID() }, body: JSON.stringify(jobCalled('Photos')) });
  jobId = ((await made.json()) as { id: string }).id;
});
afterAll(() => service.remove());

const halves = () => halvesIn(`${service.dataDir}/data`);
const partsLeft = () => filesIn(`${service.dataDir}/data`, 'uploads');

async function ask<T>(address: string): Promise<T> {
  const response = await fetch(`${service.url}${address}`, { headers });
  expect(response.status).toBe(200);
  return (await response.json()) as T;
}

/** Undefined while the service is away or lost its answer. */
async function attempt(address: string, init: RequestInit): Promise<number | undefined> {
  const response = await fetch(`${service.url}${address}`, { ...init, headers: { ...headers, ...tusVersion, ...(init.headers as Record<string, string>) } }).catch(() => undefined);
  const offset = response?.headers.get('upload-offset');
  return response?.ok === true && offset !== null && offset !== undefined ? Number(offset) : undefined;
}

it(`a photo goes on over ${kills.length} kills in its middle, and the store never holds half of it`, async () => {
  const bytes = await heavyPicture(1000, 800);
  const upload = newUpload(bytes, { note: randomUUID() });
  const begin = pathOf(uploads.create, { jobId });
  const address = pathOf(uploads.append, { jobId, uploadId: upload.meta.id });
  const step = Math.ceil(bytes.length / pieces);
  const again = async (): Promise<number> => {
    for (const end = Date.now() + 120_000; Date.now() < end; await pause(100)) {
      const offset = await attempt(begin, { method: 'POST', headers: creationHeaders(upload) });
      if (offset !== undefined) return offset;
    }
    throw new Error(`the service did not come back:\n${service.output()}`);
  };
  const left = [...kills];
  let sent = 0;
  for (let offset = await again(); offset < bytes.length; ) {
    expect(halves()).toEqual([]);
    const answer = attempt(address, { method: 'PATCH', headers: { 'upload-offset': String(offset), 'content-type': 'application/offset+octet-stream' }, body: new Uint8Array(bytes.subarray(offset, offset + step)) });
    if (left[0] !== undefined && offset >= left[0] * step) {
      left.shift();
      await pause(left.length); // not always at the same moment of the request
      service.kill('api');
    }
    sent += 1;
    offset = (await answer) ?? (await again());
  }
  expect(left).toEqual([]);
  expect(service.output()).toContain('The API stopped (SIGKILL)');
  expect(sent).toBeLessThan(pieces + 2 * kills.length + 2);
  const { items } = await ask<{ items: { id: string; sha256: string }[] }>(`/api/v1/jobs/${jobId}/photos`);
  expect(items.filter(({ id }) => id === upload.meta.id)).toHaveLength(1);
  const original = await fetch(`${service.url}/api/v1/jobs/${jobId}/photos/${upload.meta.id}/original`, { headers });
  expect(sha256(Buffer.from(await original.arrayBuffer()))).toBe(upload.meta.sha256);
  expect([halves(), partsLeft()]).toEqual([[], []]);
});

it('a kill in the middle of a plain upload leaves no half photo among the photos', async () => {
  const bytes = await heavyPicture(2000, 1500);
  const form = new FormData();
  form.set('meta', JSON.stringify(newUpload(bytes).meta));
  form.set('file', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), 'photo.jpg');
  const answer = fetch(`${service.url}/api/v1/jobs/${jobId}/photos`, { method: 'POST', headers: { ...headers, 'idempotency-key': randomBytes(16).toString('hex') }, body: form }).catch(() => undefined);
  await pause(60);
  service.kill('api');
  await answer;
  await service.ready();
  expect(halves()).toEqual([]);
});
