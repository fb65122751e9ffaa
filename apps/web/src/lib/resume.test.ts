import { uploads } from '@yardfall/contracts';
import { afterEach, expect, test, vi } from 'vitest';
import { sendWhole } from './resume.ts';

afterEach(() => vi.unstubAllGlobals());

const jobId = '0198c2f0-0000-7000-8000-000000000001';
const meta = { id: 'a', note: 'agua en la puerta, ñ' };

/** An office of the protocol that breaks lines as it is told, before or after it has taken the bytes. */
function office(faults: readonly ('before' | 'after' | 'none')[]) {
  const got: number[] = [];
  const seen: string[] = [];
  let at = 0;
  const problem = (status: number, code: string, params: object) => new Response(JSON.stringify({ type: '', title: '', status, detail: '', code, params, issues: [], requestId: '' }), { status });
  const fetch = async (_: string, init: RequestInit): Promise<Response> => {
    const headers = new Headers(init.headers);
    seen.push(`${init.method ?? ''} ${headers.get('upload-offset') ?? ''}`.trim());
    if (init.method === 'POST') return new Response(null, { status: 201, headers: { location: '/here', 'upload-offset': String(got.length) } });
    const fault = faults[at++] ?? 'none';
    if (fault === 'before') throw new TypeError('no line');
    if (Number(headers.get('upload-offset')) !== got.length) return problem(409, 'upload.offset', { offset: got.length });
    for (const byte of new Uint8Array(await (init.body as Blob).arrayBuffer())) got.push(byte);
    if (fault === 'after') throw new TypeError('no line');
    return new Response(null, { status: 204, headers: { 'upload-offset': String(got.length) } });
  };
  vi.stubGlobal('fetch', fetch);
  return { got, seen };
}

test('a file goes on where the office has it, and arrives byte for byte, whatever breaks', async () => {
  const bytes = Uint8Array.from({ length: 900_000 }, (_, index) => (index * 7) % 251);
  const { got, seen } = office(['none', 'before', 'after', 'none']);
  const told: number[] = [];
  const send = () => sendWhole({ begin: uploads.create, params: { jobId } }, new Blob([bytes]), meta, (sent) => told.push(sent));
  await expect(send()).rejects.toMatchObject({ code: 'offline' });
  expect(got.length).toBeGreaterThan(0);
  await expect(send()).rejects.toMatchObject({ code: 'offline' });
  await send();
  expect(Buffer.compare(Buffer.from(got), Buffer.from(bytes))).toBe(0);
  expect(seen.filter((line) => line === 'PATCH 0')).toHaveLength(1);
  expect(told.at(-1)).toBe(bytes.length);
});

test('what the office has already is not sent', async () => {
  const { got, seen } = office([]);
  got.push(1, 2, 3);
  await sendWhole({ begin: uploads.create, params: { jobId } }, new Blob([new Uint8Array([1, 2, 3])]), meta);
  expect(seen).toEqual(['POST']);
});

test('the description travels as its UTF-8 bytes in base64', async () => {
  let header = '';
  vi.stubGlobal('fetch', async (_: string, init: RequestInit) => {
    header = new Headers(init.headers).get('upload-metadata') ?? '';
    return new Response(null, { status: 201, headers: { location: '/x', 'upload-offset': '0' } });
  });
  await sendWhole({ begin: uploads.create, params: { jobId } }, new Blob([]), meta);
  expect(JSON.parse(Buffer.from(header.slice(5), 'base64').toString('utf8'))).toEqual(meta);
});
