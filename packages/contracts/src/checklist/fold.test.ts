import { describe, expect, test } from 'vitest';
import type { FieldFact, Requirement, StoredFact } from '../checklists.ts';
import { foldItem } from './fold.ts';

const requirement: Requirement = {
  template: 'D2', part: 'CH1', evidence: ['tick', 'photo', 'value', 'signature'], signers: ['crewLead', 'homeowner'], minPhotos: 1, params: {}, freshFor: null,
  measures: [{ name: 'recess', quantity: 'height', target: 0.0024, min: 0.0016, max: 0.0032 }],
};
const hash = 'a'.repeat(64);
const id = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;

type Body = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;

function fact(n: number, body: Body, seen: readonly number[] = [], verdict: StoredFact['verdict'] = 'kept') {
  const base = { id: id(n), deviceId: id(900), seq: n, deviceTime: `2026-03-02T10:00:${String(n).padStart(2, '0')}Z`, factVersion: 1 as const, revisionId: id(901), itemKey: 'D2:CH1', requirementHash: hash };
  return { fact: { ...base, ...body, seen: seen.map(id) }, verdict };
}
const tick: Body = { kind: 'ticked', note: '' };
const photo = (n = 1): Body => ({ kind: 'photo', photoId: id(500 + n), takenAt: '2026-03-02T10:00:30Z' });
const recess = (value: number): Body => ({ kind: 'measured', name: 'recess', value });
const signed: Body = { kind: 'signed', signer: 'homeowner', name: 'A', licence: '', statement: '' };
const whole = [fact(1, tick), fact(2, photo()), fact(3, recess(0.002)), fact(4, signed)];

describe('an item', () => {
  test('is open without a fact and names what is missing', () => {
    expect(foldItem(requirement, [])).toEqual({ state: 'open', missing: ['tick', 'photo:1', 'value:recess', 'signature:homeowner'], freshUntil: null, readyAt: null });
  });
  test('is started, then proven by all its evidence', () => {
    expect(foldItem(requirement, whole.slice(0, 3))).toMatchObject({ state: 'started', missing: ['signature:homeowner'] });
    expect(foldItem(requirement, whole)).toMatchObject({ state: 'proven', missing: [] });
  });
  test.each(['late', 'refused', 'quarantined'] as const)('counts no %s fact', (verdict) => {
    expect(foldItem(requirement, whole.map((f) => ({ ...f, verdict })))).toMatchObject({ state: 'open' });
  });
  test('counts the same photo once', () => {
    expect(foldItem({ ...requirement, minPhotos: 2 }, [...whole, fact(5, photo())]).missing).toEqual(['photo:1']);
    expect(foldItem({ ...requirement, minPhotos: 2 }, [...whole, fact(5, photo(2))]).missing).toEqual([]);
  });
});

describe('a number from a plate', () => {
  const plate: Requirement = { ...requirement, evidence: ['text'], texts: ['pumpModel', 'pumpSerial'] };
  test('is asked for each name', () => {
    const model = fact(1, { kind: 'written', name: 'pumpModel', text: 'SP-50' });
    expect(foldItem(plate, [model])).toMatchObject({ state: 'started', missing: ['text:pumpSerial'] });
    expect(foldItem(plate, [model, fact(2, { kind: 'written', name: 'pumpSerial', text: 'A-17' })])).toMatchObject({ state: 'proven' });
  });
});

describe('a measure', () => {
  test('outside its limits fails a proven item, and a later one inside proves it again', () => {
    const outside = [...whole, fact(5, recess(0.004), [3])];
    expect(foldItem(requirement, outside)).toMatchObject({ state: 'failed', missing: ['outside:recess'] });
    expect(foldItem(requirement, [...outside, fact(6, recess(0.003), [3, 5])])).toMatchObject({ state: 'proven' });
  });
  test('of two phones that disagree is disputed until one of them knows the other', () => {
    const both = [...whole, fact(5, recess(0.004))];
    expect(foldItem(requirement, both)).toMatchObject({ state: 'disputed' });
    expect(foldItem(requirement, [...both, fact(6, recess(0.0031), [3, 5])])).toMatchObject({ state: 'proven' });
  });
  test('at the limit is inside', () => {
    expect(foldItem(requirement, [whole[0], whole[1], whole[3]].flatMap((f) => f ?? []).concat(fact(3, recess(0.0032))))).toMatchObject({ state: 'proven' });
  });
});

describe('a failure', () => {
  const failed = fact(5, { kind: 'failed', reason: 'out of line' }, [1, 2, 3, 4]);
  const corrected = fact(6, { kind: 'corrected', note: 'set again' }, [5]);
  const later: Body = { kind: 'photo', photoId: id(502), takenAt: '2026-03-02T11:00:00Z' };
  test('stays until it is put right, whatever is ticked after it', () => {
    expect(foldItem(requirement, [...whole, failed, fact(7, tick, [5])])).toMatchObject({ state: 'failed', missing: ['correction'] });
  });
  test('is shown again after the correction, with a photo taken after it and a second signature', () => {
    const again = [fact(7, tick, [6]), fact(8, recess(0.002), [6]), fact(9, signed, [6])];
    expect(foldItem(requirement, [...whole, failed, corrected])).toMatchObject({ state: 'started', missing: ['tick', 'photo:1', 'value:recess', 'signature:homeowner', 'signature:second'] });
    expect(foldItem(requirement, [...whole, failed, corrected, ...again, fact(10, { ...later, takenAt: '2026-03-02T09:00:00Z' } as Body, [6])]).missing).toEqual(['photo:1']);
    expect(foldItem(requirement, [...whole, failed, corrected, ...again, fact(10, later, [6])])).toMatchObject({ state: 'proven' });
  });
  test('that did not know of the tick is a dispute, which a person ends', () => {
    const apart = [...whole, fact(5, { kind: 'failed', reason: 'out of line' })];
    expect(foldItem(requirement, apart)).toMatchObject({ state: 'disputed', missing: ['choice'] });
    expect(foldItem(requirement, [...apart, fact(6, { kind: 'failed', reason: 'looked again' }, [1, 2, 3, 4, 5])])).toMatchObject({ state: 'failed' });
  });
});

describe('a waiver', () => {
  const waived = fact(5, { kind: 'waived', reason: 'agreed with the owner' });
  test('stands in for what is missing and hides no proof', () => {
    expect(foldItem(requirement, [waived])).toMatchObject({ state: 'waived', missing: [] });
    expect(foldItem(requirement, [...whole, waived])).toMatchObject({ state: 'proven' });
  });
  test('against a failure that did not know of it is a dispute', () => {
    expect(foldItem(requirement, [waived, fact(6, { kind: 'failed', reason: 'broken' })])).toMatchObject({ state: 'disputed' });
  });
});

describe('facts of a broken phone', () => {
  test('that name each other are folded all the same', () => {
    const loop = [fact(1, { kind: 'failed', reason: 'one' }, [2]), fact(2, { kind: 'corrected', note: 'two' }, [1])];
    expect(foldItem(requirement, loop)).toMatchObject({ state: 'disputed' });
  });
});

describe('the age of photos', () => {
  test('is told by the older of the newest that are needed', () => {
    const taken = (n: number, takenAt: string) => fact(n, { kind: 'photo', photoId: id(500 + n), takenAt });
    const folded = foldItem({ ...requirement, minPhotos: 2, freshFor: 7200 }, [taken(1, '2026-03-02T08:00:00Z'), taken(2, '2026-03-02T10:00:00Z'), taken(3, '2026-03-02T09:00:00Z')]);
    expect(folded.freshUntil).toBe(Date.parse('2026-03-02T11:00:00Z'));
  });
});

describe('by the present rules a figure outside its limits', () => {
  const now: Requirement = { ...requirement, rules: 2, evidence: ['tick', 'photo', 'value'], signers: ['crewLead'] };
  const by = (name: string, ...facts: ReturnType<typeof fact>[]) => facts.map((one) => ({ ...one, by: name, memberId: id(name === 'Rosa Delgado' ? 801 : 802) }));
  const rosa = by('Rosa Delgado', fact(1, tick), fact(2, photo()), fact(3, recess(0.004)));
  const good = by('Rosa Delgado', fact(5, recess(0.002), [1, 2, 3]));
  const corrected = by('Rosa Delgado', fact(6, { kind: 'corrected', note: 'set again' }, [1, 2, 3]));
  const again = by('Rosa Delgado', fact(7, tick, [6]), fact(8, recess(0.002), [6]), fact(9, { kind: 'photo', photoId: id(502), takenAt: '2026-03-02T11:00:00Z' }, [6]));
  const signs = (name: string, signer: 'crewLead' | 'homeowner' = 'crewLead') => by('Rosa Delgado', fact(10, { kind: 'signed', signer, name, licence: '', statement: '' }, [6, 7, 8, 9]));
  const at = (...facts: readonly ReturnType<typeof by>[]) => foldItem(now, facts.flat());

  test('is a failure that a later good figure does not close', () => {
    expect(at(rosa)).toMatchObject({ state: 'failed', missing: ['outside:recess', 'correction'] });
    expect(at(rosa, good)).toMatchObject({ state: 'failed', missing: ['outside:recess', 'correction'] });
  });
  test('closes with what was changed, a photo taken after it and a signature of somebody else', () => {
    expect(at(rosa, good, corrected)).toMatchObject({ state: 'started', missing: ['tick', 'photo:1', 'value:recess', 'signature:second'] });
    expect(at(rosa, corrected, again)).toMatchObject({ state: 'started', missing: ['signature:second'] });
    expect(at(rosa, corrected, again.slice(0, 2), signs('Cal Ito'))).toMatchObject({ state: 'started', missing: ['photo:1'] });
    expect(at(rosa, corrected, again, signs('Cal Ito'))).toMatchObject({ state: 'proven', missing: [] });
  });
  test.each(['Rosa Delgado', ' rosa  DELGADO', 'R. Delgado', 'Rósa'])('is not looked at again by "%s", who put it right herself', (name) => {
    expect(at(rosa, corrected, again, signs(name))).toMatchObject({ state: 'started', missing: ['signature:second'] });
  });
  test('nor by the customer, nor by who signed it first', () => {
    expect(at(rosa, corrected, again, signs('Marisol Pruett', 'homeowner')).missing).toEqual(['signature:second']);
    const first = by('Rosa Delgado', fact(11, { kind: 'signed', signer: 'crewLead', name: 'Cal Ito', licence: '', statement: '' }));
    const after = by('Rosa Delgado', fact(6, { kind: 'corrected', note: 'set again' }, [1, 2, 3, 11]));
    expect(at(rosa, first, after, again, signs('Cal Ito')).missing).toEqual(['signature:second']);
    expect(at(rosa, first, after, again, signs('Uma Frey')).state).toBe('proven');
  });
  test('that comes again after the correction is a failure anew', () => {
    const worse = by('Rosa Delgado', fact(12, recess(0.005), [6, 7, 8, 9, 10]));
    expect(at(rosa, corrected, again, signs('Cal Ito'), worse)).toMatchObject({ state: 'failed', missing: ['outside:recess', 'correction'] });
  });

  const slip = (n: number, deviceTime: string, who = 'Rosa Delgado') => by(who, { ...fact(n, { kind: 'struck', figure: id(3), reason: 'typed four, not two' }, [3]) }).map((one) => ({ ...one, fact: { ...one.fact, deviceTime } }));
  test('is taken back as mistyped by whoever typed it, within minutes; the good one then proves', () => {
    expect(at(rosa, slip(4, '2026-03-02T10:05:00Z'))).toMatchObject({ state: 'started', missing: ['value:recess'] });
    expect(at(rosa, slip(4, '2026-03-02T10:05:00Z'), good)).toMatchObject({ state: 'proven' });
  });
  test.each([['later than that', slip(4, '2026-03-02T10:10:04Z')], ['by somebody else', slip(4, '2026-03-02T10:05:00Z', 'Cal Ito')], ['before it was typed', slip(4, '2026-03-02T09:59:00Z')]])('is not taken back %s', (_when, late) => {
    expect(at(rosa, late, good)).toMatchObject({ state: 'failed', missing: ['outside:recess', 'correction'] });
  });
  test('of two phones that did not know of each other is a dispute, and the correction ends it', () => {
    const other = by('Cal Ito', fact(5, recess(0.002)));
    expect(at(rosa, other)).toMatchObject({ state: 'disputed' });
    expect(at(rosa, other, by('Cal Ito', fact(12, recess(0.002), [1, 2, 3, 5])))).toMatchObject({ state: 'failed' });
  });
  test('leaves a list of earlier rules as it was judged then', () => {
    expect(foldItem({ ...now, rules: undefined }, [...rosa, ...good])).toMatchObject({ state: 'proven' });
  });
});

describe('by the present rules the tick of a photo that grows old', () => {
  const tape: Requirement = { ...requirement, rules: 2, template: 'D4', evidence: ['photo', 'tick'], signers: ['crewLead'], minPhotos: 2, measures: [], freshFor: 7200 };
  const taken = (n: number, takenAt: string, seen: readonly number[] = []) => fact(n, { kind: 'photo', photoId: id(500 + n), takenAt }, seen);
  const ticked = (n: number, deviceTime: string, seen: readonly number[] = []) => { const one = fact(n, tick, seen); return { ...one, fact: { ...one.fact, deviceTime } }; };
  const both = [taken(1, '2026-03-02T10:00:00Z'), taken(2, '2026-03-02T10:01:00Z')];
  test('is given after the photos: it says that no grate was lifted since', () => {
    expect(foldItem(tape, [...both, ticked(3, '2026-03-02T09:00:00Z')])).toMatchObject({ state: 'started', missing: ['tick'] });
    expect(foldItem(tape, [...both, ticked(3, '2026-03-02T10:02:00Z')])).toMatchObject({ state: 'proven', freshUntil: Date.parse('2026-03-02T12:00:00Z') });
  });
  test('stands for no photo that came after it', () => {
    const newer = [taken(4, '2026-03-02T11:30:00Z', [3]), taken(5, '2026-03-02T11:31:00Z', [3])];
    expect(foldItem(tape, [...both, ticked(3, '2026-03-02T10:02:00Z'), ...newer]).freshUntil).toBe(Date.parse('2026-03-02T12:00:00Z'));
    expect(foldItem(tape, [...both, ticked(3, '2026-03-02T10:02:00Z'), ...newer, ticked(6, '2026-03-02T11:32:00Z', [3, 4, 5])]).freshUntil).toBe(Date.parse('2026-03-02T13:30:00Z'));
  });
  test('falls with the photos when the grate is lifted again', () => {
    const lifted = { ...fact(4, { kind: 'lifted' }, [1, 2, 3]) };
    const proven = [...both, ticked(3, '2026-03-02T10:02:00Z'), { ...lifted, fact: { ...lifted.fact, deviceTime: '2026-03-02T10:30:00Z' } }];
    expect(foldItem(tape, proven)).toMatchObject({ state: 'open', missing: ['tick', 'photo:2'] });
    expect(foldItem(tape, [...proven, taken(5, '2026-03-02T10:40:00Z', [4]), taken(6, '2026-03-02T10:29:00Z', [4]), ticked(7, '2026-03-02T10:41:00Z', [4])]).missing).toEqual(['photo:1', 'tick']);
    expect(foldItem(tape, [...proven, taken(5, '2026-03-02T10:40:00Z', [4]), taken(6, '2026-03-02T10:40:00Z', [4]), ticked(7, '2026-03-02T10:41:00Z', [4])])).toMatchObject({ state: 'proven' });
  });
});
