import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldDaywork, type DayworkEntry, type StoredDaywork } from './daywork.ts';

const uuid = (n: number) => `0195b5a0-0000-7000-8000-${String(n).padStart(12, '0')}`;
const at = (time: string) => `2026-11-24T${time}:00Z`;
const now = Date.parse(at('17:00'));
let count = 0;
type Bare<E> = E extends DayworkEntry ? Omit<E, 'id' | 'at'> : never;
function entry(time: string, body: Bare<DayworkEntry>, member = 1): StoredDaywork {
  count += 1;
  return { entry: { id: uuid(count), at: at(time), ...body } as DayworkEntry, memberId: uuid(900 + member), by: `Person ${String(member)}`, serverTime: at('16:00') };
}
const start = (time: string, task: 'C' | 'E' | 'travel', member = 1) => entry(time, { kind: 'started', task }, member);
const stop = (time: string, member = 1) => entry(time, { kind: 'stopped' }, member);
const hours = (list: readonly StoredDaywork[]) => Object.fromEntries(foldDaywork(list, now).totals.map(({ task, seconds }) => [task, seconds / 3600]));

// A day worked out by hand.
describe('time and materials', () => {
  test('a task runs until the next begins or the clock is stopped, each person for themselves', () => {
    const day = [start('07:00', 'travel'), start('07:30', 'C'), stop('11:30'), start('12:00', 'E'), stop('15:00'), start('07:30', 'C', 2), stop('12:00', 2)];
    expect(hours(day)).toEqual({ travel: 0.5, C: 8.5, E: 3 });
  });
  test('a clock that runs counts up to now, and one that was forgotten is asked about', () => {
    const [running] = foldDaywork([start('15:00', 'E')], now).spans;
    expect(running).toMatchObject({ until: null, doubtful: false });
    expect(hours([start('15:00', 'E')])).toEqual({ E: 2 });
    expect(foldDaywork([start('04:00', 'E')], now).spans[0]?.doubtful).toBe(true);
  });
  test('what was struck does not count, and the one before it runs on', () => {
    const wrong = start('09:00', 'E');
    expect(hours([start('07:00', 'C'), wrong, entry('09:01', { kind: 'struck', entry: wrong.entry.id, reason: 'wrong task' }), stop('10:00')])).toEqual({ C: 3 });
  });
  test('what was used and delivered is listed in the order of the day', () => {
    const list = [entry('10:00', { kind: 'used', what: '4 in pipe', amount: 20, unit: 'ft', note: '' }), entry('08:00', { kind: 'delivered', what: 'Stone', amount: 2, unit: 'ton', note: '', photoIds: [] })];
    expect(foldDaywork(list, now).goods.map(({ goods }) => `${goods.kind} ${goods.what} ${String(goods.amount)}`)).toEqual(['delivered Stone 2', 'used 4 in pipe 20']);
  });
  test('any order of arrival, and entries that arrive twice, come to the same', () => {
    const day = [start('07:00', 'C'), start('09:00', 'E'), stop('10:00'), start('08:00', 'C', 2), stop('09:30', 2), entry('09:00', { kind: 'used', what: 'Bag', amount: 1, unit: '', note: '' })];
    fc.assert(fc.property(fc.shuffledSubarray(day, { minLength: day.length }), fc.subarray(day), (order, again) => {
      expect(foldDaywork([...order, ...again], now)).toEqual(foldDaywork(day, now));
    }), { seed: 7 });
  });
});
