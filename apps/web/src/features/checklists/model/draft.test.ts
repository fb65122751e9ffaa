import type { ChecklistItem, FieldFact, Requirement } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { bodiesOf, draftFrom, isUntyped, nothingTyped, readiness, type StepDraft } from './draft.ts';
import type { FactBody } from './evidence.ts';
import { viewOf } from './view.ts';

const uuid = (n: number) => `0195b5a0-0000-7000-8000-${String(n).padStart(12, '0')}`;
const hash = 'a'.repeat(64);
const now = Date.parse('2026-11-25T15:00:00Z');
const height = (name: string) => ({ name, quantity: 'height' as const, target: 0, min: -0.003175, max: 0.003175 });
const bench: Partial<Requirement> = { template: 'B2', evidence: ['tick', 'photo', 'value'], minPhotos: 1, measures: [height('check1'), height('check2')] };

function stepOf(asked: Partial<Requirement>, bodies: readonly FactBody[] = []) {
  const requirement: Requirement = { template: 'B7', part: null, evidence: ['tick'], signers: ['crewLead'], minPhotos: 0, measures: [], params: {}, freshFor: null, ...asked };
  const item: ChecklistItem = {
    key: requirement.template, template: requirement.template, group: requirement.template.slice(0, 1), part: null, partName: null, position: 0, holdPoint: null, requirement, requirementHash: hash,
    state: 'open', heldBy: [], missing: [], reopenedReason: null, facts: [],
  };
  const facts = bodies.map((body, n) => ({ id: uuid(n + 10), deviceId: uuid(3), seq: n + 1, deviceTime: '2026-11-25T14:00:00Z', factVersion: 1, revisionId: uuid(2), itemKey: item.key, requirementHash: hash, seen: bodies.slice(0, n).map((_, i) => uuid(i + 10)), ...body }) as FieldFact);
  const list = viewOf({ jobId: uuid(1), revisionId: uuid(2), items: [item], digging: [], holdPoints: [] }, facts, now);
  const view = list.items[0];
  if (view === undefined) throw new Error('no step');
  return { view, ready: (draft: Partial<StepDraft> = {}, roles: readonly ('crew' | 'owner')[] = ['crew']) => readiness({ ...nothingTyped, ...draft }, view, list, roles) };
}

const photo: FactBody = { kind: 'photo', photoId: uuid(500), takenAt: '2026-11-25T14:00:00Z' };
const kinds = (bodies: readonly FactBody[]) => bodies.map(({ kind }) => kind);

describe('one press records what stands there', () => {
  test('tick and figures at once when nothing else is missing', () => {
    const { bodies, needs, finishes } = stepOf(bench, [photo]).ready({ values: { check1: 0.001, check2: -0.002 } });
    expect([kinds(bodies), needs, finishes]).toEqual([['measured', 'measured', 'ticked'], [], true]);
  });
  test('a step of a tick alone needs nothing before it', () => {
    expect(stepOf({}).ready()).toMatchObject({ bodies: [{ kind: 'ticked' }], needs: [], finishes: true });
  });
  test('without the photo the figures alone, and the photo is named as needed', () => {
    expect(stepOf(bench).ready({ values: { check1: 0, check2: 0 } })).toMatchObject({ needs: ['photo:1'], finishes: false, isOff: false });
    expect(kinds(stepOf(bench).ready({ values: { check1: 0, check2: 0 } }).bodies)).toEqual(['measured', 'measured']);
  });
  test('nothing typed, nothing to record: all that is missing is named but the tick, which is the press', () => {
    expect(stepOf(bench).ready()).toMatchObject({ bodies: [], needs: ['photo:1', 'value:check1', 'value:check2'], finishes: false });
  });
  test('a figure outside its limits is never ticked off with it', () => {
    const { bodies, finishes, isOff } = stepOf(bench, [photo]).ready({ values: { check1: 0.00635, check2: 0 } });
    expect([kinds(bodies), finishes, isOff]).toEqual([['measured', 'measured'], false, true]);
  });
  test('what is on record is not recorded again', () => {
    const { bodies, finishes } = stepOf(bench, [photo, { kind: 'measured', name: 'check1', value: 0.001 }]).ready({ values: { check1: 0.001, check2: 0 } });
    expect([bodies.map((body) => (body.kind === 'measured' ? body.name : body.kind)), finishes]).toEqual([['check2', 'ticked'], true]);
  });
  test('a tick that is the office’s is left to the office', () => {
    const office = stepOf({ signers: ['owner'] });
    expect(office.ready()).toMatchObject({ bodies: [], finishes: false, waitsForOffice: true });
    expect(office.ready({}, ['crew', 'owner'])).toMatchObject({ finishes: true, waitsForOffice: false });
  });
  test('a photo that grows old and is taken again asks for the tick again, once', () => {
    const tape: Partial<Requirement> = { template: 'D4', rules: 2, evidence: ['photo', 'tick'], minPhotos: 1, freshFor: 7200 };
    const again: FactBody = { kind: 'photo', photoId: uuid(501), takenAt: '2026-11-25T14:30:00Z' };
    const tick: FactBody = { kind: 'ticked', note: '' };
    expect(kinds(stepOf(tape, [photo, tick]).ready().bodies)).toEqual([]);
    expect(stepOf(tape, [photo, tick, again]).ready()).toMatchObject({ bodies: [tick], finishes: true });
    expect(kinds(stepOf(tape, [photo, tick, again, tick]).ready().bodies)).toEqual([]);
  });
  test('the second signature after a correction is named', () => {
    const again = stepOf({}, [{ kind: 'ticked', note: '' }, { kind: 'failed', reason: 'crooked' }, { kind: 'corrected', note: 'straight' }]);
    expect(again.ready()).toMatchObject({ needs: ['photo:1', 'signature:second'], finishes: false });
  });
});

describe('what is typed', () => {
  test('becomes facts only where the step asks for it', () => {
    const { view } = stepOf({ evidence: ['tick', 'text', 'document'], texts: ['pumpModel', 'pumpSerial'] });
    const draft: StepDraft = { ...nothingTyped, values: { depth: 1 }, texts: { pumpModel: ' SP50 ', pumpSerial: ' ' }, reference: 'NC-1', validOn: '' };
    expect(bodiesOf(draft, view)).toEqual([{ kind: 'written', name: 'pumpModel', text: 'SP50' }, { kind: 'document', reference: 'NC-1', validOn: null }]);
  });
  test('of a pipe is its whole shots, not its measures', () => {
    const level = (name: string) => ({ name, quantity: 'level' as const, target: 1, min: 0.9, max: 1.1 });
    const { view } = stepOf({ template: 'E1', evidence: ['tick', 'value'], measures: [level('invertUp'), level('invertDown')] });
    expect(bodiesOf({ ...nothingTyped, rows: [{ at: 0, level: 1 }, { at: 4, level: null }] }, view)).toEqual([]);
    expect(bodiesOf({ ...nothingTyped, rows: [{ at: 0, level: 1 }, { at: 4, level: 0.95 }] }, view)).toEqual([{ kind: 'profile', shots: [{ at: 0, level: 1 }, { at: 4, level: 0.95 }] }]);
  });
  test('is read back from the phone as it was, and anything else is nothing', () => {
    const draft: StepDraft = { ...nothingTyped, rows: [{ at: 0, level: 1 }] };
    expect(draftFrom(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(draftFrom(null)).toEqual(nothingTyped);
    expect([isUntyped(nothingTyped), isUntyped({ ...nothingTyped, texts: { a: '' } }), isUntyped(draft), isUntyped({ ...nothingTyped, values: { a: 0 } })]).toEqual([true, true, false, false]);
  });
});
