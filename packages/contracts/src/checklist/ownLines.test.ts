import { describe, expect, test } from 'vitest';
import type { FieldFact, Requirement } from '../checklists.ts';
import { foldItem } from './fold.ts';
import { ownLineTexts } from './ownLines.ts';
import { itemTemplate } from './templates.ts';

const requirement: Requirement = { template: 'A3', part: null, evidence: ['tick', 'signature', 'text'], signers: ['crewLead', 'homeowner'], minPhotos: 0, measures: [], params: {}, freshFor: null, texts: [...ownLineTexts] };
const uuid = (n: number) => `0195b5a0-0000-7000-8000-${String(n).padStart(12, '0')}`;
const fact = (n: number, body: object, seen: readonly number[] = []) =>
  ({ id: uuid(n), deviceId: uuid(900), seq: n, deviceTime: '2026-11-25T15:00:00Z', factVersion: 1, revisionId: uuid(901), itemKey: 'A3', requirementHash: 'a'.repeat(64), seen: seen.map(uuid), ...body }) as FieldFact;
const lines = ownLineTexts.map((name, index) => fact(index + 1, { kind: 'written', name, text: name === 'line:pool' ? 'unknown' : 'no' }));
const all = lines.map((_, index) => index + 1);
const sign = (n: number, seen: readonly number[]) => fact(n, { kind: 'signed', signer: 'homeowner', name: 'A. Signer', licence: '', statement: '' }, seen);
const tick = fact(50, { kind: 'ticked', note: '' });
const fold = (facts: readonly FieldFact[]) => foldItem(requirement, facts.map((one) => ({ fact: one, verdict: 'kept' as const })));

describe("the homeowner's own lines", () => {
  test('are what the step of the private lines asks', () => expect(itemTemplate('A3')?.texts({} as never)).toEqual(ownLineTexts));
  test('are not proven while one is not answered; "not known" is an answer', () => {
    expect(fold([tick, sign(60, [])])).toMatchObject({ state: 'started', missing: ownLineTexts.map((name) => `text:${name}`) });
    expect(fold([...lines.slice(1), tick, sign(60, all)])).toMatchObject({ state: 'started', missing: [`text:${ownLineTexts[0] ?? ''}`] });
    expect(fold([...lines, tick, sign(60, all)])).toMatchObject({ state: 'proven', missing: [] });
  });
  test('are signed as they stand: a signature from before an answer does not cover it', () => {
    expect(fold([...lines, tick, sign(60, all.slice(1))])).toMatchObject({ state: 'started', missing: ['signature:homeowner'] });
    const later = fact(70, { kind: 'written', name: 'line:pool', text: 'yes' }, [...all, 60]);
    expect(fold([...lines, tick, sign(60, all), later])).toMatchObject({ state: 'started', missing: ['signature:homeowner'] });
    expect(fold([...lines, tick, sign(60, all), later, sign(71, [...all, 60, 70])])).toMatchObject({ state: 'proven' });
  });
  test('are disputed when two phones say otherwise of one line', () => {
    const other = fact(70, { kind: 'written', name: 'line:septic', text: 'yes' });
    const both = [...lines, tick, other, sign(71, [...all, 70])];
    expect(fold([...lines, tick, other])).toMatchObject({ state: 'disputed' });
    expect(fold([...both, fact(72, { kind: 'written', name: 'line:septic', text: 'yes' }, [...all, 70]), sign(73, [...all, 70, 72])])).toMatchObject({ state: 'proven' });
  });
});
