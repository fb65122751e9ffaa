import { checklists, found, identity, jobs } from '@yardfall/contracts';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { readAnswersAhead } from './ahead.ts';
import { call, urlOf } from './api.ts';
import { askFirstQuestions, takeEarly } from './early.ts';

afterEach(() => vi.unstubAllGlobals());

function office(status: number, answers: Readonly<Record<string, unknown>> = {}): string[] {
  const seen: string[] = [];
  vi.stubGlobal('fetch', (url: string) => {
    seen.push(url);
    return Promise.resolve(new Response(JSON.stringify(answers[url] ?? {}), { status }));
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
  test('go on to the job that this crew member goes out for, before the page itself knows it', async () => {
    const assignments = (memberId: string) => [{ memberId, role: 'crew' }];
    const items = [
      { id: 'of another', stage: 'installing', assignments: assignments('ben') }, { id: 'later', stage: 'released', assignments: assignments('ana') },
      { id: 'now', stage: 'installing', assignments: assignments('ana') }, { id: 'sold', stage: 'offered', assignments: assignments('ana') },
    ];
    const params = { jobId: 'now' };
    const list = urlOf(jobs.list, { query: { open: 'true', limit: 100 } });
    const seen = office(200, { [urlOf(identity.me)]: { id: 'ana' }, [list]: { items } });
    askFirstQuestions(true);
    await vi.waitFor(() => expect(seen.slice(2)).toEqual([urlOf(jobs.read, { params }), urlOf(checklists.read, { params }), urlOf(found.list, { params })]));
    // Reading ahead takes nothing from who asks.
    expect(await (await takeEarly(list))?.json()).toEqual({ items });
    await Promise.all([...seen].map(takeEarly));
  });
  test('are read as they come, and taken as read', async () => {
    const me = { kind: 'member', id: '01a2288c-7f99-71f7-97d4-63f590f88e01', name: 'Rosa', company: { id: '01a2288c-7f99-71f7-97d4-63f590f88e02', name: 'Low Spot', language: 'en', state: 'NC', timeZone: 'America/New_York' }, roles: ['crew'], jobId: null, language: 'en', units: 'us', theme: 'auto' };
    office(200, { [urlOf(identity.me)]: me });
    askFirstQuestions(false);
    readAnswersAhead();
    const read = vi.spyOn(identity.me.response, 'safeParse');
    await vi.waitFor(() => expect(read).toHaveBeenCalledTimes(1));
    expect((await call(identity.me)).data).toEqual(me);
    expect(read).toHaveBeenCalledTimes(1);
    read.mockRestore();
    // What cannot be read is told to whoever takes it.
    office(200, { [urlOf(identity.me)]: { name: 7 } });
    askFirstQuestions(false);
    await expect(call(identity.me)).rejects.toMatchObject({ code: 'unreadableAnswer' });
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
