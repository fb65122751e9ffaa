import type { DraftOperation } from '../designs.ts';
import { describe, expect, test } from 'vitest';
import { conflictsOf, isRemovalOfPart } from './conflicts.ts';
import { applyOperations, OperationError, partOf, partsMeet, valueAt } from './operations.ts';

const draft = () => ({
  title: 'Patio drain', site: { soil: { texture: 'loam' } },
  system: { parts: [{ id: 'CH1', name: 'Channel', drainsTo: 'P1', length: 5.5 }, { id: 'P1', name: 'Pipe', drainsTo: 'B1', invertDown: 30.2 }] },
});
const replace = (path: string, value: unknown): DraftOperation => ({ kind: 'replace', path: path.split('.'), value: value as never });
const remove = (path: string): DraftOperation => ({ kind: 'remove', path: path.split('.') });
const add = (path: string, value: unknown): DraftOperation => ({ kind: 'add', path: path.split('.'), value: value as never });
const connect = (part: string, drainsTo: string | null): DraftOperation => ({ kind: 'connect', part, drainsTo });

describe('operations of a draft', () => {
  test('change a field of a part found by its id, and leave the given document alone', () => {
    const before = draft();
    const after = applyOperations(before, [replace('system.parts.@P1.invertDown', 30.1), replace('title', 'Patio and roof')]);
    expect(valueAt(after, ['system', 'parts', '@P1', 'invertDown'])).toBe(30.1);
    expect(after.title).toBe('Patio and roof');
    expect(before).toEqual(draft());
  });
  test('add, connect and take out parts in the order given', () => {
    const after = applyOperations(draft(), [add('system.parts.-', { id: 'B1', name: 'Basin', drainsTo: null }), connect('CH1', 'B1'), remove('system.parts.@P1')]);
    expect(after.system.parts.map(({ id, drainsTo }) => [id, drainsTo])).toEqual([['CH1', 'B1'], ['B1', null]]);
  });
  test('an added element may stand before another', () => {
    const after = applyOperations(draft(), [add('system.parts.@P1', { id: 'CB1', name: 'Inlet', drainsTo: 'P1' })]);
    expect(after.system.parts.map((part) => part.id)).toEqual(['CH1', 'CB1', 'P1']);
  });
  test.each([
    ['a field that is not there', replace('system.parts.@P1.colour', 'red'), 'missing'],
    ['a part that is not there', replace('system.parts.@P9.name', 'x'), 'missing'],
    ['what is inherited and not a field', replace('constructor', 'x'), 'missing'],
    ['a prototype', replace('__proto__.polluted', 'x'), 'missing'],
    ['an id that is taken', add('system.parts.-', { id: 'P1' }), 'exists'],
    ['a list where none is', add('title.-', 'x'), 'missing'],
    ['a field, which cannot be taken out', remove('title'), 'notAList'],
  ])('refuse %s', (_, operation, reason) => {
    expect(() => applyOperations(draft(), [operation])).toThrow(OperationError);
    try {
      applyOperations(draft(), [operation]);
    } catch (error) {
      expect((error as OperationError).reason).toBe(reason);
    }
    expect(Object.prototype).not.toHaveProperty('polluted');
  });
});

describe('the part of an edit', () => {
  test.each([
    [replace('system.parts.@P1.invertDown', 1), 'system.parts.@P1'], [connect('P1', null), 'system.parts.@P1'], [replace('site.soil.texture', 'clay'), 'site.soil'],
    [replace('title', 'x'), 'title'], [add('system.parts.-', { id: 'B1' }), 'system.parts.@B1'], [remove('site.catchments.@roof'), 'site.catchments.@roof'],
  ])('%o is %s', (operation, part) => {
    expect(partOf(operation)).toBe(part);
  });
  test('a whole list meets each of its elements, names that only begin alike do not', () => {
    expect(partsMeet('system.parts', 'system.parts.@P1')).toBe(true);
    expect(partsMeet('system.parts.@P1', 'system.parts.@P10')).toBe(false);
  });
});

describe('edits of two people', () => {
  const other = 'b2c9c8c2-0000-7000-8000-000000000002';
  const later = (operation: DraftOperation) => ({ part: partOf(operation), removed: isRemovalOfPart(operation), memberId: other });
  test('of different parts both stand', () => {
    expect(conflictsOf(draft(), [replace('system.parts.@P1.invertDown', 30.1)], [later(replace('system.parts.@CH1.length', 6))])).toEqual([]);
  });
  test('of the same part come back with what the other left', () => {
    const [conflict] = conflictsOf(draft(), [replace('system.parts.@P1.invertDown', 30.1)], [later(replace('system.parts.@P1.name', 'Pipe'))]);
    expect(conflict).toMatchObject({ part: 'system.parts.@P1', path: 'system.parts.@P1.invertDown', memberId: other, theirs: 30.2, removed: false });
  });
  test('of a part that was taken out come back as removed', () => {
    const gone = applyOperations(draft(), [remove('system.parts.@P1')]);
    const [conflict] = conflictsOf(gone, [replace('system.parts.@P1.invertDown', 30.1)], [later(remove('system.parts.@P1'))]);
    expect(conflict).toMatchObject({ removed: true, theirs: null });
  });
  test('a connection to a part that was taken out comes back', () => {
    const gone = applyOperations(draft(), [remove('system.parts.@P1')]);
    expect(conflictsOf(gone, [connect('CH1', 'P1')], [later(remove('system.parts.@P1'))])).toHaveLength(1);
    expect(conflictsOf(draft(), [connect('CH1', 'P1')], [later(replace('system.parts.@P1.invertDown', 30))])).toEqual([]);
  });
  test('the same value twice is no conflict', () => {
    expect(conflictsOf(draft(), [replace('system.parts.@P1.invertDown', 30.2)], [later(replace('system.parts.@P1.invertDown', 30.2))])).toEqual([]);
  });
});
