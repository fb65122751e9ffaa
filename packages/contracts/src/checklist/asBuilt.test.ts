import type { DesignDocument } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import type { FieldFact, Requirement } from '../checklists.ts';
import { builtFrom, readingOf } from './asBuilt.ts';
import { foldItem } from './fold.ts';
import { lineOf } from './laidLine.ts';
import { missingText } from './marks.ts';
import { profileValue } from './readings.ts';

const id = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
type Body = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;
const fact = (n: number, body: Body, seen: readonly number[] = []) =>
  ({ id: id(n), deviceId: id(900), seq: n, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1, revisionId: id(901), itemKey: 'E1:P1', requirementHash: 'a'.repeat(64), ...body, seen: seen.map(id) }) as FieldFact;
const profile = (...levels: readonly number[]): Body => ({ kind: 'profile', shots: levels.map((level, i) => ({ at: 2 * i, level })) });
const kept = (facts: readonly FieldFact[]) => facts.map((one) => ({ fact: one, verdict: 'kept' as const }));

const requirement: Requirement = {
  template: 'E1', part: 'P1', evidence: ['value'], signers: ['crewLead'], minPhotos: 0, params: {}, freshFor: null,
  measures: [
    { name: 'invertUp', quantity: 'level', target: 10, min: 9.99, max: 10.01 }, { name: 'invertDown', quantity: 'level', target: 9.94, min: 9.93, max: 9.95 },
    { name: 'slope', quantity: 'slope', target: 0.01, min: 0.005, max: null },
  ],
};
const document = { system: { parts: [{ id: 'P1', kind: 'pipe', name: 'Run', length: 4, invertUp: 10, invertDown: 9.94 }, { id: 'B1', kind: 'basin', name: 'Pit' }] } } as unknown as DesignDocument;

describe('the inverts of a laid pipe', () => {
  test('stand for its ends and for its least fall, and prove the step', () => {
    const shots = fact(1, profile(10, 9.98, 9.96, 9.94));
    expect(['invertUp', 'invertDown', 'slope', 'depth'].map((name) => (shots.kind === 'profile' ? profileValue(shots, name) : 0))).toEqual([10, 9.94, expect.closeTo(0.01, 9), null]);
    expect(foldItem(requirement, kept([shots]))).toMatchObject({ state: 'proven', missing: [] });
  });

  test('with ends that are right and a belly between them the step fails', () => {
    expect(foldItem(requirement, kept([fact(1, profile(10, 9.95, 9.97, 9.94))]))).toMatchObject({ state: 'failed', missing: ['outside:slope'] });
  });

  test('shot again they stand in the place of what was measured before; a figure measured after them stands in theirs', () => {
    const first = fact(1, { kind: 'measured', name: 'slope', value: 0.001 });
    const again = fact(2, profile(10, 9.98, 9.96, 9.94), [1]);
    expect(foldItem(requirement, kept([first, again]))).toMatchObject({ state: 'proven' });
    const later = fact(3, { kind: 'measured', name: 'invertDown', value: 9.2 }, [1, 2]);
    expect(foldItem(requirement, kept([first, again, later]))).toMatchObject({ state: 'failed', missing: ['outside:invertDown'] });
  });

  test('of two phones that did not know of each other, one good and one not, leave the step to be chosen', () => {
    expect(foldItem(requirement, kept([fact(1, profile(10, 9.98, 9.96, 9.94)), fact(2, profile(10, 9.95, 9.97, 9.94))]))).toMatchObject({ state: 'disputed' });
  });
});

describe('a pipe with joints', () => {
  const foot = 0.3048;
  const level = (name: string, target: number) => ({ name, quantity: 'level' as const, target, min: target - 0.00635, max: target + 0.00635 });
  /** 40 ft that fall 0.1 m: one joint, looked for at 20 ft. */
  const long: Requirement = {
    ...requirement, params: { length: 40 * foot },
    measures: [level('invertUp', 10), level('joint:1', 9.95), level('invertDown', 9.9), { name: 'slope', quantity: 'slope', target: 0.1 / (40 * foot), min: 1 / 192, max: null }],
  };
  const line = lineOf(long);
  const shot = (feet: number, off = 0) => ({ at: feet * foot, level: 10 - (0.1 * feet) / 40 + off });
  const folded = (...shots: readonly { at: number; level: number }[]) => foldItem(long, kept([fact(1, { kind: 'profile', shots: [...shots] })]));

  test('is proven by shots at its ends and near the joint, from whichever end its sticks were laid', () => {
    expect(folded(shot(0), shot(20), shot(40))).toMatchObject({ state: 'proven', missing: [] });
    expect(folded(shot(1), shot(12), shot(26), shot(39))).toMatchObject({ state: 'proven', missing: [] });
  });

  test('says which shot is missing, and a part of it is not complete and not failed', () => {
    expect(folded(shot(0), shot(40))).toMatchObject({ state: 'started', missing: ['value:joint:1'] });
    expect(folded(shot(0), shot(20))).toMatchObject({ state: 'started', missing: ['value:invertDown', 'value:slope'] });
    expect(folded(shot(9), shot(32))).toMatchObject({ state: 'started', missing: ['value:invertUp', 'value:joint:1', 'value:invertDown', 'value:slope'] });
    expect(missingText('value:joint:1', long)).toEqual({ code: 'checklists.missing.valueJoint', params: { at: 20 * foot } });
    expect(missingText('outside:invertDown', long)).toEqual({ code: 'checklists.missing.outsideDown', params: { at: 40 * foot } });
    expect(missingText('value:joint:1')).toEqual({ code: 'checklists.missing.value', params: { measure: 'checklists.measure.joint' } });
  });

  test('fails by the worst shot near the joint, measured against the design where it was shot', () => {
    expect(folded(shot(0), shot(15, 0.01), shot(20), shot(40))).toMatchObject({ state: 'failed', missing: ['outside:joint:1'] });
    expect(profileValue({ shots: [shot(0), shot(15, 0.01), shot(20), shot(40)] }, 'joint:1', line)).toBeCloseTo(9.96, 12);
    // 6 ft from the joint the pipe lies 15 mm higher, as it should.
    expect(profileValue({ shots: [shot(0), shot(14), shot(40)] }, 'joint:1', line)).toBeCloseTo(9.95, 12);
  });

  test('goes on as designed where it was not shot yet', () => {
    const pipe = { id: 'P1', kind: 'pipe', name: 'Run', length: 40 * foot, invertUp: 10, invertDown: 9.9 };
    const built = builtFrom({ system: { parts: [pipe] } } as unknown as DesignDocument, [{ part: 'P1', facts: [fact(1, { kind: 'profile', shots: [shot(0), shot(20)] })] }]);
    expect(built.pipes[0]?.shots).toEqual([shot(0), shot(20), { at: 40 * foot, level: 9.9 }]);
    expect(readingOf([fact(1, { kind: 'profile', shots: [shot(0), shot(20)] })], 'invertDown', line)).toBeNull();
  });
});

describe('what has been shot of a design', () => {
  test('is the pipes with all their inverts and single levels by their field', () => {
    const on = fact(5, { kind: 'measured', name: 'onLevel', value: 9.1 });
    expect(builtFrom(document, [{ part: 'P1', facts: [fact(1, profile(10, 9.97, 9.94))] }, { part: 'B1', facts: [on] }, { part: null, facts: [fact(7, { kind: 'ticked', note: '' })] }])).toEqual({
      pipes: [{ part: 'P1', shots: [{ at: 0, level: 10 }, { at: 2, level: 9.97 }, { at: 4, level: 9.94 }] }], levels: [{ part: 'B1', field: 'onLevel', level: 9.1 }],
    });
  });

  test('is empty where nothing was, and the last where a level was shot twice', () => {
    expect(builtFrom(document, [])).toEqual({ levels: [], pipes: [] });
    const [first, second] = [fact(1, { kind: 'measured', name: 'onLevel', value: 9 }), fact(2, { kind: 'measured', name: 'onLevel', value: 9.2 }, [1])];
    expect(readingOf([second, first], 'onLevel')).toBe(9.2);
    expect(readingOf([], 'onLevel')).toBeNull();
  });

  test('leaves out a figure that was taken back as mistyped', () => {
    const [wrong, slip] = [fact(1, { kind: 'measured', name: 'onLevel', value: 90 }), fact(2, { kind: 'struck', figure: id(1), reason: 'ninety for nine' }, [1])];
    expect(builtFrom(document, [{ part: 'B1', facts: [wrong, slip] }]).levels).toEqual([]);
    expect(builtFrom(document, [{ part: 'B1', facts: [wrong, slip, fact(3, { kind: 'measured', name: 'onLevel', value: 9 }, [1, 2])] }]).levels).toEqual([{ part: 'B1', field: 'onLevel', level: 9 }]);
  });
});
