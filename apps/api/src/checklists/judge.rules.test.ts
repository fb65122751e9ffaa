import type { FieldFact, Requirement } from '@yardfall/contracts';
import { describe, expect, it } from 'vitest';
import { type Circumstances, judge } from './judge.rules.ts';

const id = '00000000-0000-7000-8000-000000000001';
const hash = 'a'.repeat(64);
const requirement: Requirement = {
  template: 'D2', part: 'CH1', evidence: ['tick', 'value'], signers: ['crewLead', 'homeowner'], minPhotos: 0, params: {}, freshFor: null,
  measures: [{ name: 'recess', quantity: 'height', target: 0.002, min: 0.001, max: 0.003 }],
};
const base = { id, deviceId: id, seq: 1, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1 as const, revisionId: id, itemKey: 'D2:CH1', requirementHash: hash, seen: [] };
const tick: FieldFact = { ...base, kind: 'ticked', note: '' };
const photo: FieldFact = { ...base, kind: 'photo', photoId: id, takenAt: '2026-03-02T09:30:00Z' };
const calm: Circumstances = {
  deviceCutOff: false, item: { requirement, requirementHash: hash, holdPoint: 'HP-5' }, roles: ['crew'],
  photo: { id, itemKey: 'D2:CH1', takenAt: new Date('2026-03-02T09:30:00Z'), seenTogether: false }, proofOnRecord: false, stopped: false, at: Date.parse('2026-03-02T10:00:00Z'),
};
const outcome = (fact: FieldFact, changes: Partial<Circumstances> = {}) => {
  const { verdict, reason } = judge(fact, { ...calm, ...changes });
  return reason === null ? verdict : `${verdict} ${reason}`;
};
const asking = (changes: Partial<Requirement>) => ({ item: { requirement: { ...requirement, ...changes }, requirementHash: hash, holdPoint: null } });

describe('a stored fact', () => {
  it('counts when nothing speaks against it', () => {
    expect([outcome(tick), outcome(photo)]).toEqual(['kept', 'kept']);
  });
  it('of a phone that was cut off is quarantined before anything else is looked at', () => {
    expect(outcome(tick, { deviceCutOff: true, item: null })).toBe('quarantined deviceCutOff');
  });
  it('of work that begins where it was stopped does not count; everything else of the step does', () => {
    expect([outcome({ ...base, kind: 'begun' }), outcome({ ...base, kind: 'begun' }, { stopped: true })]).toEqual(['kept', 'refused stopped']);
    expect([outcome(tick, { stopped: true }), outcome(photo, { stopped: true })]).toEqual(['kept', 'kept']);
  });
  it('for what is not asked any more is late', () => {
    expect(outcome(tick, { item: null })).toBe('late noSuchItem');
    expect(outcome({ ...tick, requirementHash: 'b'.repeat(64) })).toBe('late requirementChanged');
  });
  it('that owner or estimator ticks is theirs', () => {
    const office = asking({ signers: ['owner'] });
    expect([outcome(tick, office), outcome(tick, { ...office, roles: ['estimator'] }), outcome(tick, { ...office, roles: ['owner'] })]).toEqual(['refused officeOnly', 'kept', 'kept']);
  });
  it('of a photo needs the photo, of this item, and not made younger than it is', () => {
    const taken = (at: string) => ({ photo: { id, itemKey: null, takenAt: new Date(at), seenTogether: false } });
    expect(outcome(photo, { photo: null })).toBe('refused photoUnknown');
    const other = { id, itemKey: 'D4:CH1', takenAt: new Date('2026-03-02T09:30:00Z'), seenTogether: false };
    expect([outcome(photo, { photo: other }), outcome(photo, { photo: { ...other, seenTogether: true } })]).toEqual(['refused photoOfOtherItem', 'kept']);
    expect([outcome(photo, taken('2026-03-02T09:29:10Z')), outcome(photo, taken('2026-03-02T09:28:00Z'))]).toEqual(['kept', 'refused photoOlder']);
  });
  it('of a measure or a signature must be one that the item asks for', () => {
    expect([outcome({ ...base, kind: 'measured', name: 'recess', value: 9 }), outcome({ ...base, kind: 'measured', name: 'depth', value: 9 })]).toEqual(['kept', 'refused noSuchMeasure']);
    const signed = (signer: 'homeowner' | 'inspector'): FieldFact => ({ ...base, kind: 'signed', signer, name: 'A', licence: '', statement: '' });
    expect([outcome(signed('homeowner')), outcome(signed('inspector'))]).toEqual(['kept', 'refused wrongSigner']);
  });
  it('that signs a second look may be of crew lead or owner, whoever else signs the step', () => {
    const signed = (signer: 'owner' | 'inspector'): FieldFact => ({ ...base, kind: 'signed', signer, name: 'A', licence: '', statement: '' });
    expect([outcome(signed('owner'), asking({ signers: ['electrician'] })), outcome(signed('inspector'), asking({ signers: ['electrician'] }))]).toEqual(['kept', 'refused wrongSigner']);
  });
  it('that takes a figure back says why; a grate is lifted only where one is taped', () => {
    const struck = (reason: string): FieldFact => ({ ...base, kind: 'struck', figure: id, reason });
    expect([outcome(struck('typo')), outcome(struck('typed four, not two'))]).toEqual(['refused saysNothing', 'kept']);
    const lifted: FieldFact = { ...base, kind: 'lifted' };
    expect([outcome(lifted), outcome(lifted, asking({ freshFor: 7200 }))]).toEqual(['refused noSuchMeasure', 'kept']);
  });
  it('cannot pass a hold point by "not applicable", nor waive it for anybody but the owner', () => {
    const none: FieldFact = { ...base, kind: 'notApplicable', reason: 'There is none here' };
    expect([outcome(none), outcome(none, asking({ template: 'B7' }))]).toEqual(['refused evidenceOnly', 'kept']);
    const waived: FieldFact = { ...base, kind: 'waived', reason: 'the owner says so' };
    expect([outcome(waived), outcome(waived, { roles: ['estimator'] }), outcome(waived, { roles: ['owner'] })]).toEqual(['refused ownerOnly', 'refused ownerOnly', 'kept']);
  });
  it('that a step does not apply is the word of the office where somebody can come to harm, and says why', () => {
    const none: FieldFact = { ...base, kind: 'notApplicable', reason: 'There is none here' };
    for (const template of ['A3', 'B8', 'C5', 'J8', 'E6', 'I3']) {
      expect([outcome(none, asking({ template })), outcome(none, { ...asking({ template }), roles: ['estimator'] }), outcome(none, { ...asking({ template }), roles: ['owner'] })], template).toEqual(['refused officeSaysNot', 'kept', 'kept']);
    }
    expect([outcome(none, asking({ template: 'A4', signers: ['owner'] })), outcome(none, asking({ template: 'B7' }))]).toEqual(['refused officeSaysNot', 'kept']);
    expect(['n/a', 'none', 'no no'].map((reason) => outcome({ ...none, reason }, asking({ template: 'B7' })))).toEqual(['refused saysNothing', 'refused saysNothing', 'refused saysNothing']);
  });
  it('that shows the pump-down must name a test on record', () => {
    const paper: FieldFact = { ...base, kind: 'document', reference: 'x', validOn: null };
    expect([outcome(paper), outcome(paper, asking({ template: 'J1' })), outcome(paper, { ...asking({ template: 'J1' }), proofOnRecord: true })]).toEqual(['kept', 'refused noSuchProof', 'kept']);
  });
});
