import { describe, expect, test } from 'vitest';
import { dayIn, endOfDay } from './daily.ts';
import { foldItem } from './fold.ts';
import { heldBy } from './holdPoints.ts';
import { fact, statesWith, stepOf } from './times.test-d.ts';

/** 29 CFR 1926.651(k)(1): before the start of work, each day and after every rainstorm. */
const c5 = stepOf('C5');
const look = (at: string, name = 'Rosa Delgado') => [fact(at, { kind: 'photo' }), fact(at, { kind: 'written', name: 'competentPerson', text: name }), fact(at, { kind: 'ticked', note: '' })];
const monday = look('2026-03-02T13:00:00Z');
const ms = (at: string) => Date.parse(at);
const at = (text: string) => ({ at: ms(text), mayDig: true });
const by = (states: ReturnType<typeof statesWith>, template: string, moment: { at: number | null; mayDig: boolean; now?: number | null }) =>
  heldBy(states, stepOf(template).key, moment).map(({ holdPoint }) => holdPoint).filter((id) => id.startsWith('HP-trench'));

describe('a day where the property stands', () => {
  test('ends at its own midnight, also when clocks are put forward or back', () => {
    expect(dayIn('America/New_York', ms('2026-03-03T04:59:00Z'))).toBe('2026-03-02');
    expect(new Date(endOfDay('America/New_York', ms('2026-03-02T13:00:00Z'))).toISOString()).toBe('2026-03-03T05:00:00.000Z');
    // Clocks go forward on 8 March 2026 and back on 1 November 2026 (15 U.S.C. 260a): days of 23 and 25 hours.
    expect(new Date(endOfDay('America/New_York', ms('2026-03-08T05:00:00Z'))).toISOString()).toBe('2026-03-09T04:00:00.000Z');
    expect(new Date(endOfDay('America/New_York', ms('2026-11-01T04:00:00Z'))).toISOString()).toBe('2026-11-02T05:00:00.000Z');
  });
});

describe('the look at the trench', () => {
  test('counts to the end of its day, and the next day asks for photo, name and tick again', () => {
    expect(foldItem(c5.requirement, monday)).toMatchObject({ state: 'proven', freshUntil: ms('2026-03-03T05:00:00Z') });
    expect(foldItem(c5.requirement, monday, ms('2026-03-02T22:00:00Z'))).toMatchObject({ state: 'proven' });
    expect(foldItem(c5.requirement, monday, ms('2026-03-03T12:00:00Z'))).toMatchObject({ state: 'open', missing: ['tick', 'photo:1', 'text:competentPerson'] });
    expect(foldItem(c5.requirement, [...monday, ...look('2026-03-03T12:00:00Z')], ms('2026-03-03T12:00:00Z'))).toMatchObject({ state: 'proven', freshUntil: ms('2026-03-04T05:00:00Z') });
  });
  test('is no look of today with the photo of yesterday', () => {
    const [, name, tick] = look('2026-03-03T12:00:00Z');
    expect(foldItem(c5.requirement, [...monday, ...[name, tick].flatMap((one) => one ?? [])]).freshUntil).toBe(ms('2026-03-03T05:00:00Z'));
  });
  test('counts no more when it rained after it, whatever came first into the office', () => {
    const rain = fact('2026-03-02T15:00:00Z', { kind: 'rained' });
    for (const order of [[...monday, rain], [rain, ...monday]]) expect(foldItem(c5.requirement, order)).toMatchObject({ state: 'open', freshUntil: -Infinity });
    expect(foldItem(c5.requirement, [...monday, rain, ...look('2026-03-02T16:00:00Z')])).toMatchObject({ state: 'proven' });
  });
  test('goes by the office\'s clock where the clock of the phone is behind', () => {
    const late = look('2026-03-03T04:30:00Z').map((one) => ({ ...one, clockBehind: 3600 }));
    expect(foldItem(c5.requirement, late).freshUntil).toBe(ms('2026-03-04T05:00:00Z'));
  });
});

describe('work in the trench', () => {
  const opened = statesWith({ C5: monday });
  test('waits for the first look; digging does not, because there is nothing to look at before it', () => {
    const before = statesWith({});
    expect(by(before, 'E1', at('2026-03-02T13:00:00Z'))).toEqual(['HP-trench']);
    expect(by(before, 'C4', at('2026-03-02T13:00:00Z'))).toEqual([]);
  });
  test('goes on for the day, then waits for the next look, digging too', () => {
    for (const template of ['C4', 'C6', 'E1', 'E5', 'E6', 'F1', 'G1', 'G3', 'G7']) {
      expect(by(opened, template, at('2026-03-02T22:00:00Z')), template).toEqual([]);
      expect(by(opened, template, at('2026-03-03T12:00:00Z')), template).toEqual([template.startsWith('C') ? 'HP-trench again' : 'HP-trench']);
    }
    // On the slab, on the bench and in the basin nobody stands in a trench.
    for (const template of ['C1', 'D2', 'F4', 'F7', 'I3']) expect(by(opened, template, at('2026-03-03T12:00:00Z')), template).toEqual([]);
  });
  test('that has begun waits for the look all the same', () => {
    expect(by(opened, 'E1', { at: null, mayDig: true, now: ms('2026-03-03T12:00:00Z') })).toEqual(['HP-trench']);
  });
  test('waits while the look failed, digging too', () => {
    const failed = statesWith({ C5: [...monday, fact('2026-03-02T14:00:00Z', { kind: 'failed', reason: 'A crack along the edge' })] });
    expect([by(failed, 'C4', at('2026-03-02T14:30:00Z')), by(failed, 'E1', at('2026-03-02T14:30:00Z'))]).toEqual([['HP-trench again'], ['HP-trench']]);
  });
  test('is over when all of it is covered: nobody is asked to look into a lawn', () => {
    const covered = opened.map((item) => (['E6', 'G7'].includes(item.template) ? { ...item, state: 'proven' as const } : item));
    expect(by(covered, 'E1', at('2026-03-09T12:00:00Z'))).toEqual([]);
    const [last] = covered.filter(({ template }) => template === 'E6');
    expect(by(covered.map((item) => (item === last ? { ...item, state: 'started' as const } : item)), 'E1', at('2026-03-09T12:00:00Z'))).toEqual(['HP-trench']);
  });
  test('of a list that was built by earlier rules waits for nothing of this', () => {
    const old = statesWith({}).map((item) => ({ ...item, holdPoint: item.template === 'C5' ? null : item.holdPoint ?? null }));
    expect(by(old, 'E1', at('2026-03-03T12:00:00Z'))).toEqual([]);
  });
  test('stands in the way of the handover when nobody ever looked', () => {
    expect(heldBy(statesWith({}, 'proven').map((item) => (item.template === 'C5' ? { ...item, state: 'open' as const } : item)), stepOf('E1').key, { at: null, mayDig: true }).map(({ holdPoint }) => holdPoint)).toEqual(['HP-trench']);
  });
});
