import type { PlacedReading, SurveyFact } from '../surveyFacts.ts';
import type { JudgedSurveyFact, SurveyValues } from './fold.ts';
import type { SurveyEntryKind } from './keys.ts';

export const id = (n: number): string => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;

const base = (n: number, entry: string, seen: readonly number[]) => ({
  id: id(n), deviceId: id(900_001), seq: n, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1 as const, jobId: id(900_002), surveyId: id(900_003), entry, seen: seen.map(id),
});

export function recorded<K extends SurveyEntryKind>(n: number, kind: K, entry: string, value: SurveyValues[K], seen: readonly number[] = []): JudgedSurveyFact {
  return { fact: { ...base(n, entry, seen), kind, value } as SurveyFact, verdict: 'kept' };
}

export function struck(n: number, entry: string, seen: readonly number[] = []): JudgedSurveyFact {
  return { fact: { ...base(n, entry, seen), kind: 'struck', reason: 'misread' }, verdict: 'kept' };
}

export function book(n: number, place: number, intermediate: number): PlacedReading {
  return { id: id(n), point: `P${String(n)}`, backsight: null, intermediate, foresight: null, direct: null, note: '', place, pin: null, photoIds: [] };
}

export function reading(n: number, place: number, intermediate: number, seen: readonly number[] = []): JudgedSurveyFact {
  return recorded(n, 'reading', `reading:${id(n)}`, book(n, place, intermediate), seen);
}

export function benchMark(n: number, level: number, seen: readonly number[] = []): JudgedSurveyFact {
  return recorded(n, 'benchMark', 'benchMark', { name: 'Floor', level }, seen);
}
