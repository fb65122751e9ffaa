import { expect, test } from 'vitest';
import type { FieldFact, Requirement } from '../checklists.ts';
import { disputeOf, settledBy } from './dispute.ts';
import { foldItem } from './fold.ts';
import { rulesVersion } from './version.ts';

const requirement: Requirement = {
  template: 'D2', part: 'CH1', evidence: ['tick', 'value'], signers: ['crewLead'], minPhotos: 0, params: {}, freshFor: null, rules: rulesVersion,
  measures: [{ name: 'recessUp', quantity: 'height', target: 0.0025, min: 0.0016, max: 0.0032 }],
};
const uuid = (n: number) => `0195b5a0-0000-7000-8000-${String(n).padStart(12, '0')}`;
const fact = (n: number, phone: number, body: object, seen: readonly number[] = []) =>
  ({ id: uuid(n), deviceId: uuid(900 + phone), seq: n, deviceTime: `2026-11-25T15:${String(n).padStart(2, '0')}:00Z`, factVersion: 1, revisionId: uuid(901), itemKey: 'D2:CH1', requirementHash: 'a'.repeat(64), seen: seen.map(uuid), ...body }) as FieldFact;
const members = [uuid(801), uuid(802), uuid(803)] as const;
const by = (phone: number) => members[phone] ?? uuid(899);
const state = (facts: readonly FieldFact[]) => foldItem(requirement, facts.map((one) => ({ fact: one, verdict: 'kept' as const, memberId: by(Number(one.deviceId.slice(-1))) }))).state;
const good = fact(1, 1, { kind: 'measured', name: 'recessUp', value: 0.0025 });
const bad = fact(2, 2, { kind: 'measured', name: 'recessUp', value: 0.009 });
const tick = fact(3, 1, { kind: 'ticked', note: '' }, [1]);
const failed = fact(4, 2, { kind: 'failed', reason: 'It stands proud' });

/** The named answer as the phone records it, one after the other in the knowledge of all. */
function settle(facts: readonly FieldFact[], named: FieldFact): readonly FieldFact[] {
  return settledBy(named, 'looked at again').reduce<readonly FieldFact[]>((all, body, index) => [...all, fact(20 + index, 1, body, all.map(({ seq }) => seq))], facts);
}

test('the two answers of two phones stand against each other: figures, and done against failed', () => {
  expect(disputeOf(requirement, [good, bad])).toEqual([good, bad]);
  expect(disputeOf(requirement, [good, tick, failed])).toEqual([failed, tick]);
  expect(disputeOf(requirement, [good, tick])).toEqual([]);
});

test('naming one settles it; done counts only when it is shown again and a second person signs', () => {
  expect(state([good, bad, tick])).toBe('disputed');
  const named = settle([good, bad, tick], good);
  expect(disputeOf(requirement, named)).toEqual([]);
  expect(state(named)).toBe('started');
  const all = named.map(({ seq }) => seq);
  const again = [...named, fact(30, 1, { kind: 'ticked', note: '' }, all)];
  expect(state(again)).toBe('started');
  expect(state([...again, fact(31, 2, { kind: 'signed', signer: 'crewLead', name: 'B. Second', licence: '', statement: '' }, [...all, 30])])).toBe('proven');
  expect(state(settle([good, tick, failed], failed))).toBe('failed');
});
