import 'fake-indexeddb/auto';
import type { SurveyDraft } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { keepPhoto, keepSurveyFact, loadOutbox, markRefused, outboxNow, removeEntries } from './outbox.ts';
import { photosIn } from './room.ts';

const begun: SurveyDraft = { kind: 'begun', entry: 'survey', seen: [], value: { name: 'Visit' } };
const mine = (memberId: string) => outboxNow().filter((entry) => entry.memberId === memberId);

describe('what is recorded on a phone', () => {
  test('has a number of its own for each fact of a person, also when many are recorded at once', async () => {
    const facts = await Promise.all(Array.from({ length: 12 }, () => keepSurveyFact('ana', 'job', 'survey', begun)));
    expect(facts.map(({ seq }) => seq).sort((a, b) => a - b)).toEqual(Array.from({ length: 12 }, (_, index) => index + 1));
    expect(new Set(facts.map(({ deviceId }) => deviceId)).size).toBe(1);
    expect((await keepSurveyFact('ben', 'job', 'survey', begun)).seq).toBe(1);
    expect(mine('ana')).toHaveLength(12);
  });
  test('is there after the page was opened anew, with the bytes of its photos', async () => {
    const bytes = new Uint8Array([255, 216, 255, 1, 2, 3]);
    await keepPhoto({ id: 'photo', memberId: 'cid', jobId: 'job', meta: { id: 'photo' } as never, file: new Blob([bytes]) });
    await loadOutbox();
    const [entry] = mine('cid');
    if (entry?.kind !== 'photo') throw new Error('no photo');
    expect(new Uint8Array(await entry.file.arrayBuffer())).toEqual(bytes);
  });
  test('keeps a photo and what it shows in one step, the photo first', async () => {
    const shows = ['A', 'B'].map((itemKey) => ({ kind: 'photo' as const, photoId: 'two', takenAt: '2026-11-29T12:00:00Z', revisionId: 'r', itemKey, requirementHash: 'h', seen: [] }));
    await keepPhoto({ id: 'two', memberId: 'eli', jobId: 'job', meta: { id: 'two' } as never, file: new Blob(['x']) }, shows);
    const kept = mine('eli');
    expect(kept.map(({ kind }) => kind)).toEqual(['photo', 'fact', 'fact']);
    expect(kept.flatMap((entry) => (entry.kind === 'fact' ? [[entry.fact.itemKey, entry.fact.seq]] : []))).toEqual([['A', 1], ['B', 2]]);
    // What cannot be stored leaves nothing behind, the number neither.
    await expect(keepPhoto({ id: 'three', memberId: 'eli', jobId: 'job', meta: { id: 'three' } as never, file: (() => 0) as never }, shows)).rejects.toThrow();
    await loadOutbox();
    expect(mine('eli')).toHaveLength(3);
    expect((await keepSurveyFact('eli', 'job', 'survey', begun)).seq).toBe(3);
  });
  test('stays with its reason when the office refuses it, until a person decides', async () => {
    await keepSurveyFact('dee', 'job', 'survey', begun);
    await markRefused(mine('dee'), 'notFound');
    await loadOutbox();
    expect(mine('dee').map(({ refused }) => refused)).toEqual(['notFound']);
    await markRefused(mine('dee'), null);
    expect(mine('dee').map(({ refused }) => refused)).toEqual([null]);
    await removeEntries(mine('dee'));
    expect(mine('dee')).toEqual([]);
  });
});

describe('the room of a phone in photos', () => {
  test('leaves fifty megabytes to work in, and is none below that', () => {
    expect([photosIn(150_000_000, 5_000_000), photosIn(54_999_999, 5_000_000), photosIn(10, 5_000_000)]).toEqual([20, 0, 0]);
  });
});
