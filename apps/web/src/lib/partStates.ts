import type { Part } from '@yardfall/calc';
import type { SectionOptions } from '@yardfall/drawing';

/** Parts without a step of their own, a gutter or a leader, stand as built only when all the others do. */
export function withRest(parts: readonly Pick<Part, 'id'>[], states: SectionOptions['states']): SectionOptions['states'] {
  const own = Object.values(states);
  const rest = own.length > 0 && own.every((state) => state === 'built') ? 'built' : 'notYet';
  return Object.fromEntries(parts.map(({ id }) => [id, states[id] ?? rest]));
}
