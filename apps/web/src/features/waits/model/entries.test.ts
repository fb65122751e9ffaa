import { foldSurvey, type JudgedSurveyFact, type SurveyFact } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { chosen, linesOf } from './entries.ts';

const id = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const base = { deviceId: id(90), seq: 1, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1 as const, jobId: id(91), surveyId: id(92), entry: 'benchMark' };
const said = (n: number, level: number): JudgedSurveyFact => ({ fact: { ...base, id: id(n), seen: [], kind: 'benchMark', value: { name: 'Floor', level } }, verdict: 'kept' });

describe('a dispute of two phones', () => {
  const facts = [said(1, 30.48), said(2, 30.5)];
  const [entry] = foldSurvey(facts, null).entries;
  if (entry === undefined) throw new Error('no entry');

  test('shows each side in words and levels', () => {
    expect(entry.choices.map(linesOf)).toEqual([[{ kind: 'text', value: 'Floor' }, { kind: 'level', value: 30.48 }], [{ kind: 'text', value: 'Floor' }, { kind: 'level', value: 30.5 }]]);
  });
  test.each([0, 1])('ends with side %i when a person takes it', (side) => {
    const choice = entry.choices[side];
    if (choice === undefined) throw new Error('no choice');
    const fact = { ...base, id: id(3), ...chosen(entry, choice) } as SurveyFact;
    const { disputed, entries } = foldSurvey([...facts, { fact, verdict: 'kept' }], null);
    expect(disputed).toEqual([]);
    expect(entries[0]?.value).toEqual(choice.value);
  });
  test('ends with striking it when that side is taken', () => {
    const strike = chosen(entry, { facts: [], value: null });
    expect(strike).toEqual({ kind: 'struck', entry: 'benchMark', seen: [id(1), id(2)], reason: '' });
    expect(linesOf({ facts: [], value: null })).toEqual([{ kind: 'code', value: 'ui.waits.struck' }]);
  });
});
