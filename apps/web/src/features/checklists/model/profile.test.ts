import type { Pipe } from '@yardfall/calc';
import { describe, expect, it } from 'vitest';
import { designedAt, firstRows, isWholePipe, judgeProfile, placeOf, readRows, withRow } from './profile.ts';

const pipe = { kind: 'pipe', id: 'P1', name: 'Run', diameter: 0.1016, length: 8, invertUp: 30, invertDown: 29.92, roughness: 0.01 } as Pipe;
const asked = { measures: [{ name: 'slope', quantity: 'slope' as const, target: 0.01, min: 0.008, max: null }] };

describe('the rows of a pipe that is shot', () => {
  it('begin with both ends and every joint, and a new one stands before the lower end', () => {
    expect(withRow(firstRows(pipe, asked))).toEqual([{ at: 0, level: null }, { at: null, level: null }, { at: 8, level: null }]);
    const joint = { name: 'joint:1', quantity: 'level' as const, target: 29.96, min: null, max: null };
    expect(firstRows(pipe, { measures: [...asked.measures, joint] }).map(({ at }) => at)).toEqual([0, 4, 8]);
    expect([0, 1, 2].map((n) => placeOf(firstRows(pipe, { measures: [joint] }), n))).toEqual(['shotUp', 'shotJoint', 'shotDown']);
  });

  it('are a whole pipe once both ends are shot', () => {
    const level = (name: string, target: number) => ({ name, quantity: 'level' as const, target, min: null, max: null });
    const requirement = { measures: [level('invertUp', 30), level('invertDown', 29.92), ...asked.measures], params: { length: 8 } };
    expect(isWholePipe(requirement, [{ at: 0, level: 30 }, { at: 8.2, level: 29.9 }])).toBe(true);
    expect(isWholePipe(requirement, [{ at: 0, level: 30 }, { at: 4, level: 29.9 }])).toBe(false);
    expect(isWholePipe(requirement, [{ at: 3, level: 30 }, { at: 8, level: 29.9 }])).toBe(false);
  });

  it('say nothing with one shot, ask for order, and leave out what is half typed', () => {
    expect(readRows([{ at: 0, level: 30 }, { at: 8, level: null }]).state).toBe('few');
    expect(readRows([{ at: 4, level: 30 }, { at: 4, level: 29.9 }]).state).toBe('order');
    expect(readRows([{ at: 0, level: 30 }, { at: null, level: 29 }, { at: 8, level: 29.9 }])).toEqual({ state: 'whole', shots: [{ at: 0, level: 30 }, { at: 8, level: 29.9 }] });
  });

  it('are judged by the fall that the step asks for, beside what the design carries', () => {
    const even = judgeProfile(pipe, [{ at: 0, level: 30 }, { at: 8, level: 29.92 }], asked);
    expect(even.built.segments.map(({ kind }) => kind)).toEqual(['falls']);
    expect(even.built.fullFlow).toBeCloseTo(even.designed, 12);
    const slack = judgeProfile(pipe, [{ at: 0, level: 30 }, { at: 4, level: 29.98 }, { at: 8, level: 29.92 }], asked);
    expect(slack.built.segments.map(({ kind }) => kind)).toEqual(['slack', 'falls']);
    expect(slack.built.fullFlow).toBeLessThan(slack.designed);
  });

  it('stand beside the designed invert at their place', () => {
    expect([designedAt(pipe, 0), designedAt(pipe, 2)]).toEqual([30, 29.98]);
  });
});
