import type { JobRow } from '@yardfall/contracts';
import { jobStages } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { daysSince, heldBy, sketched, standing, stoppedJobs, timeSince } from './progress.ts';

const now = Date.parse('2031-03-10T12:00:00Z');

function job(title: string, stage: JobRow['stage'], holds: readonly (readonly [JobRow['holds'][number]['waitsFor'], string])[]): JobRow {
  return {
    id: title, number: 1, title, stage, urgency: 'normal', customerName: '', address: '', state: 'FL', timeZone: 'America/New_York', assignments: [],
    holds: holds.map(([waitsFor, since], at) => ({ id: `${title}${at}`, waitsFor, code: 'x', params: {}, since })), locate: null,
    system: ['drain', 'pipe', 'pump'], buildRevisionId: null, releasedAt: null, createdAt: '2031-03-01T12:00:00Z', updatedAt: '2031-03-08T12:00:00Z',
  };
}

describe('the small section', () => {
  test.each(jobStages)('at %s has at most one next part, and nothing done after it', (stage) => {
    for (const system of systems) {
      const seen = [...standing(stage, sketched(system)).values()];
      expect(seen.filter((s) => s === 'next').length).toBeLessThanOrEqual(1);
      expect([...seen].sort((a, b) => order.indexOf(a) - order.indexOf(b))).toEqual(seen);
    }
  });
  const order = ['done', 'next', 'notYet'];
  const systems = [null, ['drain', 'pipe', 'pump'], ['drain', 'pipe'], ['roof', 'pipe', 'swale']] as const;

  test('is whole once the job is handed over', () => {
    for (const system of systems) expect([...standing('handedOver', sketched(system)).values()].every((how) => how === 'done')).toBe(true);
  });

  test('shows what the job has: no pump and pit where there is none, and only the house before a design', () => {
    expect(sketched(['roof', 'drain', 'pipe', 'pump'])).toEqual(['sill', 'drain', 'pipe', 'basin', 'line', 'outlet']);
    expect(sketched(['drain', 'pipe'])).toEqual(['sill', 'drain', 'pipe', 'outlet']);
    expect(sketched(['roof', 'pipe', 'swale'])).toEqual(['sill', 'roof', 'pipe', 'swale', 'outlet']);
    expect(sketched(null)).toEqual(['sill']);
  });
});

describe('held by', () => {
  test('puts each job under its oldest hold, the longest wait first', () => {
    const groups = heldBy([
      job('A', 'offered', [['customer', '2031-03-08T11:00:00Z']]),
      job('B', 'offered', [['marks', '2031-03-09T11:00:00Z'], ['customer', '2031-03-01T11:00:00Z']]),
      job('C', 'design', []),
      job('D', 'handedOver', [['proof', '2031-03-01T11:00:00Z']]),
    ], now);
    expect([...groups].map(([waitsFor, held]) => [waitsFor, held.map((h) => [h.job.title, h.days])])).toEqual([
      ['customer', [['B', 9], ['A', 2]]],
      ['us', [['C', 2]]],
    ]);
  });

  test('never counts a day below zero when the clocks differ', () => {
    expect(daysSince('2031-03-11T12:00:00Z', now)).toBe(0);
  });
});

describe('work that is stopped', () => {
  const at = (hour: string) => `2031-03-10T${hour}:00.000Z`;
  const stopped = (title: string, ...since: readonly string[]) => {
    const row = job(title, 'installing', [['marks', at('06:00')], ...since.map((one) => ['us', one] as const)]);
    return { ...row, holds: row.holds.map((hold) => (hold.waitsFor === 'us' ? { ...hold, code: 'found.hold.open' } : hold)) };
  };
  const all = [stopped('Late', at('11:30')), job('Draft', 'design', [['us', '2031-03-02T11:00:00Z']]), stopped('Early', at('10:00'), at('09:00'))];

  test('comes before all else, the longest first, with every finding and then what else holds the job', () => {
    expect(stoppedJobs(all).map(({ job: { title }, holds }) => [title, holds.map(({ since }) => since.slice(11, 16))])).toEqual([['Early', ['09:00', '10:00', '06:00']], ['Late', ['11:30', '06:00']]]);
  });
  test('is told there and nowhere else', () => {
    expect([...heldBy(all, now).values()].flat().map(({ job: { title } }) => title)).toEqual(['Draft']);
  });
  test('is counted in minutes, then in hours', () => {
    expect([at('11:59'), at('10:01'), at('10:00'), '2031-03-08T12:01:00Z', '2031-03-08T12:00:00Z', at('12:30')].map((since) => Object.values(timeSince(since, now)))).toEqual([['minutes', 1], ['minutes', 119], ['hours', 2], ['hours', 47], ['days', 2], ['minutes', 0]]);
  });
});
