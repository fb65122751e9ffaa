import { errorCodes, identity, jobs, type Job } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { call, urlOf } from './api.ts';
import { isNamed } from './issues.ts';
import { ApiProblem } from './problem.ts';

const jobId = '0195b5a0-0000-7000-8000-000000000001';
const me = {
  kind: 'member', id: jobId, name: 'Dana', company: { id: jobId, name: 'Low Spot', language: 'en', state: 'FL', timeZone: 'America/New_York' },
  roles: ['owner'], jobId: null, language: 'en', units: 'us', theme: 'auto',
};

/** Answers the next request and keeps what was asked. */
function office(answer: () => Response) {
  const fetched = vi.fn<(url: string, init: RequestInit) => Promise<Response>>(async () => answer());
  vi.stubGlobal('fetch', fetched);
  return () => {
    const [url = '', init = {}] = fetched.mock.lastCall ?? [];
    return { url, init, headers: new Headers(init.headers) };
  };
}

const problem = (code: string, status: number, issues: unknown[] = []) =>
  Response.json({ type: `urn:yardfall:problem:${code}`, title: code, status, detail: code, code, params: {}, issues, requestId: 'r1' }, { status });

const caught = (promise: Promise<unknown>) => promise.then(() => null, (error: unknown) => error);

afterEach(() => vi.unstubAllGlobals());

describe('an address', () => {
  test('fills in parameters and query, and leaves out what is not given', () => {
    expect(urlOf(jobs.read, { params: { jobId: 'a/b' } })).toBe('/api/v1/jobs/a%2Fb');
    expect(urlOf(jobs.list, { query: { limit: 100, open: 'true', cursor: undefined } })).toBe('/api/v1/jobs?limit=100&open=true');
  });
});

describe('a call', () => {
  test('reads without a key and gives data with its version', async () => {
    const asked = office(() => Response.json(me, { headers: { etag: '"4"' } }));
    expect(await call(identity.me)).toEqual({ data: me, etag: '"4"' });
    expect(asked().headers.get('idempotency-key')).toBeNull();
  });

  test('writes with a key of its own, the version it saw and JSON', async () => {
    const asked = office(() => problem('conflict.stale', 412));
    const error = await caught(call(jobs.update, { params: { jobId }, body: { title: 'Tern Hollow' }, ifMatch: '"3"' }));
    expect(error).toMatchObject({ code: 'conflict.stale', status: 412, requestId: 'r1', passing: false });
    const { init, headers } = asked();
    expect(init).toMatchObject({ method: 'PATCH', body: '{"title":"Tern Hollow"}', credentials: 'same-origin' });
    expect(headers.get('idempotency-key')).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7/);
    expect([headers.get('if-match'), headers.get('content-type')]).toEqual(['"3"', 'application/json']);
  });

  test('sends a file as multipart, its fields first', async () => {
    const asked = office(() => problem('photo.notAnImage', 422));
    await caught(call(jobs.create, { body: {} as never, file: new Blob(['x'], { type: 'text/csv' }), fileName: 'rain.csv' }));
    const form = asked().init.body as FormData;
    expect([...form.keys()]).toEqual(['meta', 'file']);
    expect(asked().headers.get('content-type')).toBeNull();
  });

  test('that does not reach the office says so and is worth another try', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('failed')));
    expect(await caught(call(identity.me))).toMatchObject({ code: 'offline', passing: true });
  });

  test('that is aborted stays an abort', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new DOMException('stopped', 'AbortError')));
    const error = await caught(call(identity.me, { signal: AbortSignal.abort() }));
    expect(error).not.toBeInstanceOf(ApiProblem);
  });

  test.each([
    ['another shape', () => Response.json({ title: 1 } satisfies { [K in keyof Job]?: unknown }), 'unreadableAnswer'],
    ['no JSON at all', () => new Response('<html>'), 'unreadableAnswer'],
    ['a proxy page in place of a problem', () => new Response('<html>', { status: 502 }), 'busy'],
    ['an unknown code', () => problem('something.new', 418), 'unreadableAnswer'],
  ])('answered by %s is not trusted', async (_, answer, code) => {
    office(answer);
    expect(await caught(call(jobs.read, { params: { jobId } }))).toMatchObject({ code });
  });

  test('without an answer body gives nothing', async () => {
    office(() => new Response(null, { status: 204 }));
    expect((await call(identity.signOut)).data).toBeUndefined();
  });
});

describe('a problem', () => {
  test('names its fields however the path is written', () => {
    const refused = new ApiProblem('request.invalid', { issues: [{ path: 'body.customer.email', message: '' }, { path: '/title', message: '' }] });
    expect(['customer.email', 'customer', 'title', 'custom', 'email'].map((field) => isNamed(refused, field))).toEqual([true, true, true, false, false]);
    expect(isNamed(new Error('x'), 'title')).toBe(false);
  });

  test('has a sentence for every code that the office may answer with', () => {
    expect(Object.keys(errorCodes).filter((code) => !isMessageCode(`errors.${code}`))).toEqual([]);
  });
});
