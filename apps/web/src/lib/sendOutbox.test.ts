import type { FieldFact } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import type { OutboxEntry } from './outbox.ts';
import { ApiProblem } from './problem.ts';
import { mayPass, nextBatch } from './sendOutbox.ts';

const base = (at: number, jobId = 'j', memberId = 'm') => ({ at, id: String(at), memberId, jobId, refused: null });
const fact = (at: number, jobId?: string, memberId?: string): OutboxEntry => ({ ...base(at, jobId, memberId), kind: 'fact', fact: { id: String(at) } as FieldFact });
const photo = (at: number): OutboxEntry => ({ ...base(at), kind: 'photo', meta: { id: String(at) } as never, file: new Blob() });
const ids = (batch: readonly OutboxEntry[]) => batch.map(({ id }) => id);

describe('what is sent next', () => {
  test('a photo goes before the facts recorded after it', () => {
    expect(ids(nextBatch([photo(1), fact(2), fact(3)], 'm'))).toEqual(['1']);
    expect(ids(nextBatch([fact(2), fact(3), photo(4), fact(5)], 'm'))).toEqual(['2', '3']);
  });
  test('facts of two jobs go apart, and at most 100 at once', () => {
    expect(ids(nextBatch([fact(1), fact(2, 'other')], 'm'))).toEqual(['1']);
    expect(nextBatch(Array.from({ length: 130 }, (_, at) => fact(at)), 'm')).toHaveLength(100);
  });
  test('a pump-down goes by itself, after the facts that were recorded before it', () => {
    const pumpDown = (at: number): OutboxEntry => ({ ...base(at), kind: 'proof', test: { pump: 'PU1', runs: [], note: '' } });
    expect(ids(nextBatch([fact(1), pumpDown(2), pumpDown(3)], 'm'))).toEqual(['1']);
    expect(ids(nextBatch([pumpDown(2), pumpDown(3)], 'm'))).toEqual(['2']);
  });
  test('an answer for the job goes by itself, after the photo of the paper that shows it', () => {
    const granted = (at: number): OutboxEntry => ({ ...base(at), kind: 'answer', answer: { what: 'permit', said: { kind: 'tree', state: 'granted', number: '', note: '', on: '2026-03-02', expiresOn: null, photoId: '1' } } });
    expect(ids(nextBatch([photo(1), granted(2), granted(3)], 'm'))).toEqual(['1']);
    expect(ids(nextBatch([granted(2), granted(3)], 'm'))).toEqual(['2']);
  });
  test('a stop goes before the photos of the day, and that a line was hit with it; what else is told of it keeps its turn', () => {
    const told = { part: null, measure: null, note: '', photoIds: [] };
    const stop: OutboxEntry = { ...base(5), kind: 'found', report: { ...told, kind: 'utility' } };
    const more = (at: number, hit: 'danger' | null, photoIds: string[] = []): OutboxEntry => ({ ...base(at), kind: 'foundMore', reportId: '5', more: { ...told, id: 'm', at: '2026-11-25T15:00:00Z', kind: null, hit, photoIds } });
    const all = [photo(1), fact(2), stop, photo(6), more(7, null, ['6']), more(8, 'danger')];
    const order: string[][] = [];
    for (let left: readonly OutboxEntry[] = all; left.length > 0; left = left.filter(({ id }) => !order.at(-1)?.includes(id))) order.push(ids(nextBatch(left, 'm')));
    expect(order).toEqual([['5'], ['8'], ['1'], ['2'], ['6'], ['7']]);
  });
  test('what happened to a ticket goes before all else, in its order, after the photo that shows it', () => {
    const act = (at: number, ticketId = 't', photoId: string | null = null): OutboxEntry => ({
      ...base(at), kind: 'locate', ticketId, act: { what: 'event', body: { kind: 'damage', utility: '', hazard: false, note: '', photoId, at: '2026-03-10T11:00:00Z' } },
    });
    expect(ids(nextBatch([photo(1), fact(2), act(3), act(4)], 'm'))).toEqual(['3']);
    expect(ids(nextBatch([photo(1), photo(2), act(3, 't', '2'), act(4)], 'm'))).toEqual(['1']);
    expect(ids(nextBatch([photo(2), act(3, 't', '2'), act(4, 'u')], 'm'))).toEqual(['4']);
    expect(ids(nextBatch([{ ...photo(2), refused: 'photo.notAnImage' }, act(3, 't', '2')], 'm'))).toEqual(['3']);
  });
  test('a video and what names it go after all else, by themselves only where it costs nothing, else when somebody said so', () => {
    const video = (at: number, now?: true): OutboxEntry => ({ ...base(at), kind: 'photo', meta: { id: String(at) } as never, file: new Blob([], { type: 'video/mp4' }), ...(now === undefined ? {} : { now }) });
    const shows = (at: number, photoId: string): OutboxEntry => ({ ...base(at), kind: 'fact', fact: { id: String(at), kind: 'photo', photoId } as FieldFact });
    const more = (at: number, photoId: string): OutboxEntry => ({ ...base(at), kind: 'photoMore', photoId, more: { id: String(at) } as never });
    const all = [video(1), shows(2, '1'), more(3, '1'), photo(4), shows(5, '4'), fact(6)];
    expect(ids(nextBatch(all, 'm', true))).toEqual(['4']);
    expect(ids(nextBatch([video(1), shows(2, '1'), shows(5, '4'), fact(6)], 'm', true))).toEqual(['5', '6']);
    expect(ids(nextBatch([video(1), shows(2, '1'), more(3, '1')], 'm', true))).toEqual(['1']);
    expect(ids(nextBatch([video(1), shows(2, '1'), more(3, '1')], 'm', false))).toEqual([]);
    expect(ids(nextBatch([video(1), shows(2, '1'), video(3, true)], 'm', false))).toEqual(['3']);
    expect(ids(nextBatch([shows(2, '1'), more(3, '1')], 'm', false))).toEqual(['2']);
  });
  test("another person's entries and refused ones stay where they are", () => {
    expect(ids(nextBatch([fact(1, 'j', 'other'), { ...fact(2), refused: 'request.invalid' }, fact(3)], 'm'))).toEqual(['3']);
    expect(nextBatch([fact(1, 'j', 'other')], 'm')).toEqual([]);
  });
});

describe('a problem on the way', () => {
  test.each([['offline', 0, true], ['busy', 503, true], ['internal', 500, true], ['storage.full', 507, true], ['auth.required', 401, true], ['auth.tooManyAttempts', 429, true], ['unreadableAnswer', 200, true],
    ['photo.hashMismatch', 422, false], ['notFound', 404, false], ['checklist.notBuildRevision', 409, false], ['request.invalid', 400, false]] as const)('%s', (code, status, later) => {
    expect(mayPass(new ApiProblem(code, { status }))).toBe(later);
  });
});
