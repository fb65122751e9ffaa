import type { FoundReport } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import type { OutboxEntry } from './outbox.ts';
import { stopsNow } from './stops.ts';

const base = { part: null, measure: null, note: '', photoIds: [], hit: null };
const report: FoundReport = {
  ...base, id: 'r1', jobId: 'j', kind: 'water', additions: [], status: 'open', reportedBy: 'Rosa', reportedById: 'rosa', reportedAt: '2026-11-25T15:20:00.000Z', stoppedAt: '2026-11-25T15:00:00.000Z',
  answer: null, answeredBy: null, answeredAt: null, draft: null,
};
const waits = { at: 1, memberId: 'rosa', jobId: 'j', refused: null };
const stop = (id: string, at: string): OutboxEntry => ({ ...waits, kind: 'found', id, report: { ...base, id, at, kind: 'utility' } });
const more = (id: string, reportId: string, told: object): OutboxEntry => ({ ...waits, kind: 'foundMore', id, reportId, more: { ...base, id, at: '2026-11-25T15:30:00.000Z', kind: null, ...told } });
const now = (reports: readonly FoundReport[], outbox: readonly OutboxEntry[]) => stopsNow(reports, outbox, 'j', 'rosa');

test('every open stop is told, the oldest first, and where it is', () => {
  const all = now([report, { ...report, id: 'done', status: 'answered' }], [stop('s1', '2026-11-25T14:00:00.000Z'), { ...stop('s2', '2026-11-25T16:00:00.000Z'), refused: 'notFound' }, { ...stop('far', '2026-11-25T14:00:00.000Z'), jobId: 'other' }]);
  expect(all.map(({ id, inOffice, at }) => [id, inOffice, at.slice(11, 16)])).toEqual([['s1', false, '14:00'], ['r1', true, '15:00'], ['s2', false, '16:00']]);
});

test('what was added here belongs to it before it is sent, and is counted once when it has arrived', () => {
  const hit = more('m1', 's1', { hit: 'danger' });
  expect(now([], [stop('s1', '2026-11-25T14:00:00.000Z'), hit, more('m2', 's1', { photoIds: ['p'], measure: 0.3 })])).toMatchObject([{ hit: 'danger', measure: 0.3, photoIds: ['p'], waiting: 3, inOffice: false, mine: true }]);
  const arrived: FoundReport = { ...report, id: 's1', kind: 'utility', note: 'Yellow', additions: [{ ...base, id: 'm3', kind: null, note: 'Yellow', by: 'Rosa', at: '2026-11-25T15:30:00.000Z', recordedAt: '2026-11-25T15:30:00.000Z' }] };
  expect(now([arrived], [stop('s1', '2026-11-25T14:00:00.000Z'), hit, more('m3', 's1', { note: 'Yellow' })])).toMatchObject([{ id: 's1', hit: 'danger', note: 'Yellow', waiting: 1, inOffice: true }]);
});

test('a line counts as hit from when it was told, not from when the work stopped', () => {
  const later = { ...base, id: 'm3', kind: null, hit: 'line' as const, by: 'Rosa', at: '2026-11-25T15:40:00.000Z', recordedAt: '2026-11-25T15:41:00.000Z' };
  const hits = (reports: readonly FoundReport[], outbox: readonly OutboxEntry[] = []) => now(reports, outbox).map(({ hitAt }) => hitAt);
  expect(hits([report, { ...report, id: 'r2', hit: 'line', additions: [later] }, { ...report, id: 'r3', hit: 'danger' }])).toEqual([null, later.at, report.stoppedAt]);
  expect(hits([report], [more('m1', 'r1', { hit: 'no' }), more('m2', 'r1', { hit: 'danger' }), stop('s1', '2026-11-25T16:00:00.000Z')])).toEqual(['2026-11-25T15:30:00.000Z', null]);
});

test('a report of somebody else is theirs', () => {
  expect(stopsNow([report], [], 'j', 'ines').map(({ mine }) => mine)).toEqual([false]);
});
