import { describe, expect, test } from 'vitest';
import { publishedCure, waitAt } from './cure.ts';
import { foldItem } from './fold.ts';
import { heldBy } from './holdPoints.ts';
import { fact, statesWith, stepOf, tern } from './times.test-d.ts';
import { Requirement } from '../checklists.ts';

const inch = 0.0254;
const hours = (seconds: number) => seconds / 3600;
const ms = (at: string) => Date.parse(at);

describe('the cure of a solvent-cemented joint', () => {
  // A pipe maker's plastics technical manual, recommended curing time before pressure testing, up to 180 psi; half as much again above 60 % humidity.
  test.each([
    [1, 70, 1], [1, 50, 2], [1, 30, 8], [1.61, 60, 2], [1.61, 59, 4], [2.067, 39, 16], [3.068, 99, 2], [4.026, 70, 6], [4.026, 45, 12], [4.026, 10, 48],
  ])('of %s in inside at %s °F is %s h in dry air', (inside, temperature, dry) => {
    expect(hours(waitAt(publishedCure(inside * inch), temperature))).toBe(dry * 1.5);
  });
  test('is never shorter for a larger pipe or colder air', () => {
    for (const temperature of [-5, 0, 20, 40, 60, 80]) {
      const waits = [0.8, 1.4, 2, 3, 4, 6, 12].map((inside) => waitAt(publishedCure(inside * inch), temperature));
      expect(waits).toEqual(waits.toSorted((a, b) => a - b));
    }
  });
});

describe('the pressure check', () => {
  const glued = (at: string, temperature: number, ago: number) => [fact(at, { kind: 'measured', name: 'temperature', value: temperature }), fact(at, { kind: 'measured', name: 'cured', value: ago * 60 }), ...['1', '2'].map(() => fact(at, { kind: 'photo' })), fact(at, { kind: 'measured', name: 'cover', value: 0.4 }), fact(at, { kind: 'ticked', note: '' })];
  const held = (states: ReturnType<typeof statesWith>, at: string) => heldBy(states, stepOf('G3').key, { at: ms(at), mayDig: true }).find(({ holdPoint }) => holdPoint === 'HP-cure')?.items ?? [];
  test('is told from when on it may be made: 1 1/2 in at 70 °F, glued twenty minutes ago', () => {
    expect(new Date(foldItem(stepOf('G1').requirement, glued('2026-03-02T14:00:00Z', 70, 20)).readyAt ?? 0).toISOString()).toBe('2026-03-02T16:40:00.000Z');
    expect(new Date(foldItem(stepOf('G1').requirement, glued('2026-03-02T14:00:00Z', 45, 0)).readyAt ?? 0).toISOString()).toBe('2026-03-02T20:00:00.000Z');
  });
  test('waits for the last of riser and line, and for both to be proven', () => {
    const states = statesWith({ F4: glued('2026-03-02T12:00:00Z', 70, 0), G1: glued('2026-03-02T14:00:00Z', 70, 20) });
    expect(held(states, '2026-03-02T15:30:00Z')).toEqual(['G1:N1']);
    expect(held(states, '2026-03-02T14:30:00Z')).toEqual(['F4:M1', 'G1:N1']);
    expect(held(states, '2026-03-02T16:40:00Z')).toEqual([]);
    expect(held(statesWith({ G1: glued('2026-03-02T10:00:00Z', 70, 0) }), '2026-03-02T16:40:00Z')).toEqual(['F4:M1']);
  });
  test('that has begun waits all the same', () => {
    const states = statesWith({ F4: glued('2026-03-02T12:00:00Z', 70, 0), G1: glued('2026-03-02T10:00:00Z', 70, 0) });
    expect(heldBy(states, stepOf('G3').key, { at: null, now: ms('2026-03-02T14:30:00Z'), mayDig: true }).find(({ holdPoint }) => holdPoint === 'HP-cure')?.items).toEqual(['F4:M1']);
  });
});

describe('likely rain', () => {
  const a6 = stepOf('A6');
  const chance = (value: number) => fact('2026-03-02T11:00:00Z', { kind: 'measured', name: 'rainChance', value });
  const rest = [fact('2026-03-02T11:00:00Z', { kind: 'photo' }), fact('2026-03-02T11:00:00Z', { kind: 'ticked', note: '' })];
  const cuts = ['C1', 'C2', 'C4', 'C6'];
  const held = (facts: Parameters<typeof statesWith>[0]) => cuts.filter((template) => heldBy(statesWith(facts), stepOf(template).key, { at: ms('2026-03-02T12:00:00Z'), mayDig: true }).some(({ holdPoint }) => holdPoint === 'HP-rain'));
  test('asks for the bypass pump from 40 % on, and below it does not', () => {
    expect(foldItem(a6.requirement, [chance(0.39), ...rest])).toMatchObject({ state: 'proven' });
    expect(foldItem(a6.requirement, [chance(0.4), ...rest])).toMatchObject({ state: 'started', missing: ['value:bypassPump'] });
    expect(foldItem(a6.requirement, [chance(0.4), fact('2026-03-02T11:01:00Z', { kind: 'measured', name: 'bypassPump', value: 1 }), ...rest])).toMatchObject({ state: 'proven' });
  });
  test('holds what cuts the old drain until the pump is aboard; without a figure it holds as well', () => {
    expect(held({ A6: [] })).toEqual(cuts);
    expect(held({ A6: [chance(0.6), ...rest] })).toEqual(cuts);
    expect(held({ A6: [chance(0.6), fact('2026-03-02T11:01:00Z', { kind: 'measured', name: 'bypassPump', value: 1 }), ...rest] })).toEqual([]);
    expect(held({ A6: [chance(0.1), ...rest] })).toEqual([]);
  });
  test('is a hold point only where an old drain is cut', async () => {
    const { buildChecklist } = await import('./build.ts');
    const { lawn } = await import('./sites.test-d.ts');
    const dry = (await buildChecklist(lawn())).find(({ template }) => template === 'A6');
    expect([dry?.holdPoint, dry?.requirement.measures.map(({ name }) => name)]).toEqual([null, ['rainChance']]);
  });
});

test('a requirement with days, cures and moments is one that can be read back', () => {
  for (const { requirement } of tern) expect(Requirement.parse(requirement)).toEqual(requirement);
  expect(stepOf('A1').requirement.tickFrom).toBe('2026-03-05T00:00:00-05:00');
});
