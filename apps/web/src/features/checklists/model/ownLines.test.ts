import type { FieldFact, PrivateState } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { linesNow } from './ownLines.ts';

const fact = (state: PrivateState, deviceTime: string) => ({ kind: 'written', name: 'line:septic', text: state, deviceTime }) as FieldFact;
const office = (state: PrivateState, at: string | null) => [{ question: 'septic' as const, state, note: '', on: null, photoId: null, at, by: 'Ana' }];
const septic = (...[known, told]: Parameters<typeof linesNow>) => linesNow(known, told).find(({ question }) => question === 'septic')?.state;

test('what was heard later of a line counts, at the step or in the office', () => {
  expect(septic(undefined, [])).toBe('unknown');
  expect(septic(office('no', '2026-03-02T12:00:00Z'), [fact('yes', '2026-03-02T13:00:00Z')])).toBe('yes');
  expect(septic(office('yes', '2026-03-02T14:00:00Z'), [fact('no', '2026-03-02T13:00:00Z')])).toBe('yes');
  expect(septic(office('unknown', null), [fact('yes', '2026-03-02T13:00:00Z'), fact('no', '2026-03-02T13:05:00Z')])).toBe('no');
});
