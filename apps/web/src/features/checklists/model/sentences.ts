import { missingText, reasonText, type Requirement, type StoredFact } from '@yardfall/contracts';
import type { Text } from '../../../lib/reader.tsx';

export function missingSentence(say: Text['say'], mark: string, requirement: Pick<Requirement, 'measures' | 'params'>): string {
  const { code, params } = missingText(mark, requirement);
  return say(code, params);
}

/** Why a fact on record does not count; null for one that counts. */
export function reasonSentence(say: Text['say'], { reason }: Pick<StoredFact, 'reason'>): string | null {
  if (reason === null) return null;
  const { code, params } = reasonText(reason);
  return say(code, params);
}
