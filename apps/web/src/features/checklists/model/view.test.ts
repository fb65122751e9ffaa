import type { Checklist, ChecklistItem, FieldFact } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { asksPhoto, mayTick, seenOf, signersAsked, type FactBody } from './evidence.ts';
import { nextOf } from './next.ts';
import { standingOf } from './standing.ts';
import { mistypedBy } from './slips.ts';
import { leftCount, viewOf } from './view.ts';

const uuid = (n: number) => `0195b5a0-0000-7000-8000-${String(n).padStart(12, '0')}`;
const now = Date.parse('2026-11-25T15:00:00Z');
const hash = 'a'.repeat(64);

/** An item as the list has it (ours): D4 two photos not older than 2 h, I1 and I2 one photo here, I3 guarded by HP-13. */
function item(template: string, position: number, photos: number, freshFor: number | null = null, guardedBy: readonly string[] = []): ChecklistItem {
  return {
    key: `${template}:P1`, template, group: template.slice(0, 1), part: 'P1', partName: 'Channel', position, holdPoint: template === 'I3' ? null : 'HP-13', requirementHash: hash,
    requirement: { template, part: 'P1', evidence: photos > 0 ? ['tick', 'photo'] : ['tick'], signers: ['crewLead'], minPhotos: photos, measures: [], params: {}, freshFor },
    state: 'open', heldBy: guardedBy.length > 0 ? [{ holdPoint: 'HP-13', items: [...guardedBy] }] : [], missing: ['tick', `photo:${String(photos)}`], reopenedReason: null, facts: [],
  };
}

const pour = (): Checklist => {
  const before = ['D4:P1', 'I1:P1', 'I2:P1'];
  const items = [item('D4', 0, 2, 7200), item('I1', 1, 1), item('I2', 2, 1), item('I3', 3, 1, null, before)];
  return { jobId: uuid(1), revisionId: uuid(2), items, digging: [], holdPoints: [{ id: 'HP-13', part: 'P1', open: false, waived: false, items: before, guards: ['I3:P1'] }] };
};

let count = 10;
function fact(itemKey: string, body: FactBody, seen: string[] = []): FieldFact {
  count += 1;
  return { id: uuid(count), deviceId: uuid(3), seq: count, deviceTime: '2026-11-25T15:00:00Z', factVersion: 1, revisionId: uuid(2), itemKey, requirementHash: hash, seen, ...body } as FieldFact;
}
const photo = (key: string, takenAt = '2026-11-25T14:30:00Z') => fact(key, { kind: 'photo', photoId: uuid(count + 500), takenAt });
const tick = (key: string) => fact(key, { kind: 'ticked', note: '' });
const proof = (takenAt?: string) => [photo('D4:P1', takenAt), photo('D4:P1', takenAt), tick('D4:P1'), photo('I1:P1'), tick('I1:P1'), photo('I2:P1'), tick('I2:P1')];
const of = (facts: readonly FieldFact[], at = now) => viewOf(pour(), facts, at);
const heldKeys = (view: ReturnType<typeof of>) => view.items.find(({ item: { template } }) => template === 'I3')?.heldBy.flatMap(({ items }) => items);

describe('the checklist on this phone', () => {
  test('without news from this phone is the word of the office', () => {
    const view = of([]);
    expect(heldKeys(view)).toEqual(['D4:P1', 'I1:P1', 'I2:P1']);
    expect(nextOf(view)?.item.key).toBe('D4:P1');
    expect(leftCount(view.items)).toBe(view.items.length);
  });
  test('what stopped the digging on this phone holds the first cut, whatever the office last said', () => {
    const marks = { ...item('A2', 0, 0), holdPoint: 'HP-1', facts: [{ fact: tick('A2:P1'), verdict: 'kept', reason: null } as never] };
    const cut = { ...pour(), items: [marks, item('C1', 1, 0)], digging: [{ from: '2026-11-20T05:00:00Z', until: '2026-12-20T05:00:00Z' }] };
    const held = (stoppedHere: boolean) => viewOf(cut, [], now, [], {}, stoppedHere).items[1]?.heldBy.map(({ holdPoint }) => holdPoint);
    expect([held(false), held(true)]).toEqual([[], ['HP-1']]);
  });
  test('keeps the pour held while D4 lacks a photo', () => expect(heldKeys(of(proof().slice(1)))).toEqual(['D4:P1']));
  test('opens the pour with D4, I1 and I2 shown', () => {
    const view = of(proof());
    expect(heldKeys(view)).toEqual([]);
    expect(view.holdPoints.find(({ id }) => id === 'HP-13')?.open).toBe(true);
    expect([leftCount(view.items), nextOf(view)?.item.key]).toEqual([1, 'I3:P1']);
  });
  test('a taped grate of more than two hours ago holds the pour again, but not one that began in time', () => {
    const old = proof('2026-11-25T12:30:00Z');
    expect(heldKeys(of(old))).toEqual(['D4:P1']);
    expect(heldKeys(of([...old, fact('I3:P1', { kind: 'begun' })]))).toEqual([]);
  });
  test('goes on after the step on screen, then from the top, and passes by what only the office can tick', () => {
    const ours = of([]);
    const officeTicks = { ...pour(), items: pour().items.map((one) => (one.template === 'D4' ? { ...one, requirement: { ...one.requirement, evidence: ['tick' as const], minPhotos: 0, signers: ['owner' as const] } } : one)) };
    const theirs = viewOf(officeTicks, [], now);
    expect([nextOf(ours, 'I1:P1'), nextOf(ours, 'I2:P1'), nextOf(theirs), nextOf(theirs, null, ['owner'])].map((view) => view?.item.key)).toEqual(['I2:P1', 'D4:P1', 'I1:P1', 'D4:P1']);
  });
  test('asks for the beginning where the age of a photo before it counts', () => {
    expect(of([]).items.map(({ asksBegin }) => asksBegin)).toEqual([false, false, false, true]);
  });
  test('holds again what the office called open, once the photo has grown old without a signal', () => {
    const checklist = pour();
    const stored = proof().map((known) => ({ fact: known, memberId: uuid(4), by: 'A', serverTime: known.deviceTime, verdict: 'kept' as const, reason: null, clockBehind: 0 }));
    const items = checklist.items.map((one) => ({ ...one, state: one.holdPoint === null ? one.state : ('proven' as const), heldBy: [], facts: stored.filter(({ fact: { itemKey } }) => itemKey === one.key) }));
    const later = (hours: number) => heldKeys(viewOf({ ...checklist, items }, [], now + hours * 3_600_000));
    expect([later(0), later(1), later(2)]).toEqual([[], [], ['D4:P1']]);
  });
  test('a fact for another design of the item does not count', () => {
    const [first, ...rest] = proof();
    expect(heldKeys(of([{ ...first, requirementHash: 'b'.repeat(64) } as FieldFact, ...rest]))).toEqual(['D4:P1']);
  });
});

describe('a step of which nothing has changed', () => {
  const checklist = pour();
  test('is the same one after another step was recorded', () => {
    const [before, after] = [viewOf(checklist, [], now), viewOf(checklist, [tick('D4:P1')], now)];
    expect(before.items.map((view, n) => view === after.items[n])).toEqual([false, true, true, true]);
  });
  test('is another one once what holds or stops it changes', () => {
    const before = viewOf(checklist, [], now);
    expect(viewOf(checklist, [], now, [{ kind: 'other', part: 'P1' }]).items.every((view, n) => view !== before.items[n])).toBe(true);
    const opened = viewOf(checklist, proof(), now);
    expect(opened.items[3]).not.toBe(before.items[3]);
    expect(opened.items[3]?.heldBy).toEqual([]);
  });
});

describe('what an item asks for', () => {
  test('a new fact follows all that is known', () => {
    const one = tick('I1:P1');
    const list = of([one]);
    const view = list.items[1];
    expect(view && seenOf(view, list)).toEqual([one.id]);
  });
  test('work on a guarded step follows what opened its hold points', () => {
    const facts = proof();
    const list = of(facts);
    const pourStep = list.items.find(({ item: { template } }) => template === 'I3');
    expect(pourStep && [...seenOf(pourStep, list)].sort()).toEqual(facts.map(({ id }) => id).sort());
  });
  test('after a correction a photo and a second signature', () => {
    const failed = fact('I1:P1', { kind: 'failed', reason: 'no dowels' });
    const view = of([failed, fact('I1:P1', { kind: 'corrected', note: 'set again' }, [failed.id])]).items[1];
    expect(view?.missing).toContain('signature:second');
    expect(view && asksPhoto(view)).toBe(true);
    expect(view && signersAsked(view.item, view.missing)).toEqual(['crewLead']);
  });
  test('the owner or estimator ticks what the owner signs for', () => {
    const requirement = { ...item('A1', 0, 0).requirement, signers: ['owner' as const] };
    expect([mayTick(requirement, ['crew']), mayTick(requirement, ['crew', 'owner']), mayTick(item('D4', 0, 2).requirement, ['crew'])]).toEqual([false, true, true]);
  });
});

describe('a finding of the crew', () => {
  const found = (kind: 'steel' | 'other', part: string | null) => viewOf(pour(), [], now, [{ kind, part }]);
  test('stops the steps of its part and is told before the hold points', () => {
    const view = found('other', 'P1');
    expect(view.items.map((one) => standingOf(one, null))).toEqual(['stopped', 'stopped', 'stopped', 'stopped']);
    // With everything stopped the first of the list is still named.
    expect(nextOf(view)?.item.key).toBe('D4:P1');
  });
  test('at another part leaves them as they are', () => expect(found('other', 'P2').items.flatMap(({ stops }) => stops)).toEqual([]));
  test('of a line that was hit holds all that waits for the marks, until the office tells what it made of it', () => {
    const [hitAt, later] = ['2026-11-25T14:50:00.000Z', '2026-12-11T05:00:00.000Z'];
    const may = (until: string, hits: string | null) => {
      const marks = { ...item('A2', 0, 0), key: 'A2', part: null, holdPoint: 'HP-1' };
      const digs = { ...item('C5', 1, 0), key: 'C5', part: null, heldBy: [] };
      const list: Checklist = { ...pour(), items: [marks, digs], digging: [{ from: '2026-11-20T05:00:00.000Z', until }] };
      const proven = [fact('A2', { kind: 'ticked', note: '' })];
      return viewOf(list, proven, now, [{ kind: 'utility', part: null, hitAt: hits }]).items[1]?.heldBy.map(({ holdPoint }) => holdPoint);
    };
    expect([may(later, null), may(later, hitAt), may(hitAt, null), may(hitAt, hitAt)]).toEqual([[], ['HP-1'], ['HP-1'], ['HP-1']]);
  });
  test('no longer marks what was built before', () => {
    const view = viewOf(pour(), proof(), now, [{ kind: 'other', part: 'P1' }]);
    expect(view.items.map((one) => standingOf(one, null))).toEqual(['proven', 'proven', 'proven', 'stopped']);
  });
});

describe('a figure outside its limits, on this phone', () => {
  const me = { by: 'Rosa Delgado', memberId: uuid(800) };
  const measured = (): Checklist => ({ ...pour(), items: pour().items.map((one) => ({ ...one, requirement: { ...one.requirement, rules: 2, evidence: ['value' as const], minPhotos: 0, freshFor: null, measures: [{ name: 'edge', quantity: 'height' as const, target: 0.002, min: 0.001, max: 0.003 }] } })) });
  const edge = (value: number, seen: string[] = []) => fact('I1:P1', { kind: 'measured', name: 'edge', value }, seen);
  const shown = (...facts: readonly FieldFact[]) => viewOf(measured(), facts, now, [], me).items[1];
  test('fails without a signal as in the office, and whoever put it right does not sign the second look', () => {
    const bad = edge(0.01);
    expect(shown(bad, edge(0.002, [bad.id]))).toMatchObject({ state: 'failed', missing: ['outside:edge', 'correction'] });
    const corrected = fact('I1:P1', { kind: 'corrected', note: 'ground down' }, [bad.id]);
    const good = edge(0.002, [corrected.id]);
    const signed = (name: string) => fact('I1:P1', { kind: 'signed', signer: 'crewLead', name, licence: '', statement: '' }, [corrected.id]);
    expect(shown(bad, corrected, good, signed('Rosa Delgado'))?.missing).toEqual(['signature:second']);
    expect(shown(bad, corrected, good, signed('Cal Ito'))?.state).toBe('proven');
  });
  test('may be taken back by whoever typed it, for some minutes', () => {
    const bad = edge(0.01);
    const view = shown(bad);
    if (view === undefined) throw new Error('no step');
    expect([mistypedBy(view, me.memberId, now + 600_000), mistypedBy(view, me.memberId, now + 660_000)]).toEqual([bad.id, null]);
    const struck = shown(bad, fact('I1:P1', { kind: 'struck', figure: bad.id, reason: 'ten typed for one' }, [bad.id]));
    expect([struck?.state, struck && mistypedBy(struck, me.memberId, now)]).toEqual(['open', null]);
  });
});
