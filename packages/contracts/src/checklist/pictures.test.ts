import { describe, expect, test } from 'vitest';
import { buildChecklist } from './build.ts';
import { hazards, hazardsAt } from './cautions.ts';
import { askedTogether, isAlike, seenTogether } from './pictures.ts';
import { site } from './sites.test-d.ts';
import { itemTemplates } from './templates.ts';

const tern = await buildChecklist(site('tern-hollow'));
const step = (key: string) => {
  const item = tern.find((one) => one.key === key);
  if (item === undefined) throw new Error(`the list has no ${key}`);
  return item;
};

describe('one picture', () => {
  test('shows steps of the same place and stage, whichever was asked first', () => {
    for (const [a, b] of [['D4:CH1', 'I1:CH1'], ['F7:B1', 'F8:B1'], ['F5:W1', 'F6:V1'], ['E2', 'E3'], ['A3', 'B3']] as const) expect([seenTogether(step(a), step(b)), seenTogether(step(b), step(a))]).toEqual([true, true]);
  });
  test('shows no step of another stage, nor the same kind of part elsewhere', () => {
    expect(seenTogether(step('D4:CH1'), step('I3:CH1'))).toBe(false);
    expect(seenTogether({ ...step('E2'), key: 'E2:P1', part: 'P1' }, { ...step('E3'), key: 'E3:P1', part: 'P1' })).toBe(true);
    expect(seenTogether({ ...step('E2'), key: 'E2:P1', part: 'P1' }, { ...step('E3'), key: 'E3:P2', part: 'P2' })).toBe(false);
    expect(seenTogether(step('D4:CH1'), { ...step('D4:CH1'), key: 'D4:CH2', part: 'CH2' })).toBe(false);
  });
  test('the same test and cover of two pipes are asked on one screen, but one picture shows only one of them', () => {
    const [one, other] = [{ ...step('E5:P1'), part: 'P1' }, { ...step('E5:P1'), key: 'E5:P2', part: 'P2' }];
    expect([askedTogether(one, other), isAlike(one, other), seenTogether(one, other)]).toEqual([true, true, false]);
    expect(askedTogether({ ...step('E1:P1'), part: 'P1' }, { ...step('E1:P1'), key: 'E1:P2', part: 'P2' })).toBe(false);
  });
  test('never shows what a hold point guards together with what opens it', () => {
    const guarded = tern.flatMap((a) => tern.filter(({ guards }) => a.holdPoint !== null && guards.includes(a.holdPoint)).map((b) => [a, b] as const));
    expect(guarded.length).toBeGreaterThan(20);
    expect(guarded.filter(([a, b]) => seenTogether(a, b)).map(([a, b]) => `${a.key} ${b.key}`)).toEqual([]);
  });
});

describe('cautions', () => {
  test('stand at the steps where they matter, each hazard at one at least', () => {
    const told = new Set(itemTemplates.flatMap(({ id }) => hazardsAt(id)));
    expect([...hazards].filter((hazard) => !told.has(hazard))).toEqual([]);
  });
  test('are few at one step', () => {
    for (const { id } of itemTemplates) expect(hazardsAt(id).length, id).toBeLessThanOrEqual(4);
  });
});
