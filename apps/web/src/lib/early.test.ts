import { identity, jobs } from '@yardfall/contracts';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { urlOf } from './api.ts';
import { askFirstQuestions, takeEarly } from './early.ts';

afterEach(() => vi.unstubAllGlobals());

function office(status: number): string[] {
  const seen: string[] = [];
  vi.stubGlobal('fetch', (url: string) => {
    seen.push(url);
    return Promise.resolve(new Response('{}', { status }));
  });
  return seen;
}

describe('the first questions of a page', () => {
  test('are those that the gate and the home ask, each answered once', async () => {
    const seen = office(200);
    askFirstQuestions(true);
    expect(seen).toEqual([urlOf(identity.me), urlOf(jobs.list, { query: { open: 'true', limit: 100 } })]);
    expect((await takeEarly(urlOf(identity.me)))?.status).toBe(200);
    expect(await takeEarly(urlOf(identity.me))).toBeNull();
    await takeEarly(seen[1] ?? '');
  });
  test('on another page only who is signed in', () => {
    const seen = office(200);
    askFirstQuestions(false);
    expect(seen).toEqual([urlOf(identity.me)]);
  });
  test('refused, or too long ago, are asked anew', async () => {
    office(401);
    askFirstQuestions(false);
    expect(await takeEarly(urlOf(identity.me))).toBeNull();
    office(200);
    askFirstQuestions(false);
    const now = performance.now();
    vi.spyOn(performance, 'now').mockReturnValue(now + 20_000);
    expect(await takeEarly(urlOf(identity.me))).toBeNull();
    vi.restoreAllMocks();
  });
});
