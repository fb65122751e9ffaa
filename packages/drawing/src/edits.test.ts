import { describe, expect, test } from 'vitest';
import type { DesignDocument, Part, PartKind } from '@yardfall/calc';
import { setFall, setLevel } from './edits.ts';
import { ternHollow } from './testing/tern-hollow.ts';
import { ft } from './testing/units.ts';

function part<K extends PartKind>(document: DesignDocument, id: string, kind: K): Extract<Part, { kind: K }> {
  const found = document.system.parts.find((entry): entry is Extract<Part, { kind: K }> => entry.id === id && entry.kind === kind);
  if (found === undefined) throw new Error(`no ${kind} ${id}`);
  return found;
}

describe('setting a level', () => {
  test('changes that level and leaves the given document as it was', () => {
    const before = structuredClone(ternHollow);
    const after = setLevel(ternHollow, 'B1', 'offLevel', ft(96.4));
    expect(part(after, 'B1', 'basin').offLevel).toBe(ft(96.4));
    expect(ternHollow).toEqual(before);
    expect({ ...after, system: ternHollow.system }).toEqual(ternHollow);
  });

  test('carries the basin inlet with the lower end of the pipe, and the pipe with the inlet', () => {
    const down = setLevel(ternHollow, 'P1', 'invertDown', ft(98.9));
    expect(part(down, 'B1', 'basin').inletInvert).toBeCloseTo(ft(98.9), 12);
    expect(part(down, 'P1', 'pipe').invertUp).toBe(ft(99.15));
    const inlet = setLevel(ternHollow, 'B1', 'inletInvert', ft(98.8));
    expect(part(inlet, 'P1', 'pipe').invertDown).toBeCloseTo(ft(98.8), 12);
  });

  test('keeps the step at a joint, and a level channel level', () => {
    const stepped = setLevel(ternHollow, 'C1', 'invertDown', ft(99.15));
    const parts = stepped.system.parts.map((entry) => (entry.kind === 'pipe' ? { ...entry, invertUp: ft(99.1) } : entry));
    const moved = setLevel({ ...stepped, system: { parts } }, 'C1', 'invertDown', ft(99.05));
    const channel = part(moved, 'C1', 'channel');
    expect(channel.invertUp).toBeCloseTo(ft(99.05), 12);
    expect(channel.invertDown).toBe(ft(99.05));
    expect(part(moved, 'P1', 'pipe').invertUp).toBeCloseTo(ft(99), 12);
  });

  test('carries a level channel with the upper end of its pipe', () => {
    const channel = part(setLevel(ternHollow, 'P1', 'invertUp', ft(99.1)), 'C1', 'channel');
    expect(channel.invertUp).toBeCloseTo(ft(99.1), 12);
    expect(channel.invertDown).toBeCloseTo(ft(99.1), 12);
  });

  test('raises the water over a lid with the lid', () => {
    expect(part(setLevel(ternHollow, 'O1', 'level', ft(99.7)), 'O1', 'outlet').waterLevel).toBeCloseTo(ft(99.8), 12);
  });

  test('moves a sill', () => {
    expect(setLevel(ternHollow, 'S1', 'level', ft(99.9)).site.sills[0]?.level).toBe(ft(99.9));
  });

  test('sets a fall by the lower end', () => {
    const after = setFall(ternHollow, 'P1', 0.02);
    const pipe = part(after, 'P1', 'pipe');
    expect((pipe.invertUp - pipe.invertDown) / pipe.length).toBeCloseTo(0.02, 12);
    expect(part(after, 'B1', 'basin').inletInvert).toBeCloseTo(pipe.invertDown, 12);
  });

  test('refuses what is not there', () => {
    expect(() => setLevel(ternHollow, 'none', 'level', 1)).toThrow(RangeError);
    expect(() => setLevel(ternHollow, 'P1', 'length', 1)).toThrow(RangeError);
    expect(() => setLevel(ternHollow, 'P1', 'invertUp', Number.NaN)).toThrow(RangeError);
    expect(() => setLevel(ternHollow, 'S1', 'invertUp', 1)).toThrow(RangeError);
    expect(() => setFall(ternHollow, 'B1', 0.01)).toThrow(RangeError);
  });
});
