import type { Permits } from '@yardfall/contracts';

/** How many answers still hold the release. */
export function openCount({ permits, outlets }: Permits): number {
  return [...permits, ...outlets.flatMap(({ questions }) => questions)].filter(({ gap }) => gap !== null).length;
}
