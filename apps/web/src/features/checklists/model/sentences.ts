import { missingText, reasonText, type Requirement, type StoredFact } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import type { Text } from '../../../lib/reader.tsx';

/** What has to be said of what is missing: the fall of a pipe follows from its ends. */
export function toldOf(missing: readonly string[]): readonly string[] {
  return missing.filter((mark) => mark !== 'value:slope' || !missing.some((other) => other.startsWith('value:invert')));
}

export function missingSentence(say: Text['say'], mark: string, requirement: Pick<Requirement, 'measures' | 'params'>): string {
  const { code, params } = missingText(mark, requirement);
  return say(code, typeof params['at'] === 'string' ? { ...params, at: inWords(params['at'], say) } : params);
}

/** Why a fact on record does not count; null for one that counts. */
export function reasonSentence(say: Text['say'], { reason }: Pick<StoredFact, 'reason'>): string | null {
  if (reason === null) return null;
  const { code, params } = reasonText(reason);
  return say(code, params);
}

/** What a part or line is called whose id stands behind the name of a measure: as the list names it, or the id. */
export function nameAt({ params }: Pick<Requirement, 'params'>, id: string, say: Text['say']): string {
  const name = params[`at:${id}`];
  return typeof name === 'string' ? inWords(name, say) : id;
}

function inWords(name: string, say: Text['say']): string {
  return isMessageCode(name) ? say(name) : name;
}
