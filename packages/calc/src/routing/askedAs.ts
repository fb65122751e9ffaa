import type { Flux } from './fluxes.ts';

/** Ways that are asked by name in the loop of the balance, so that each call there meets one kind only. */
export const askedAs = { weir: 0, link: 1, pump: 2, other: 3 } as const;

export function codeOf({ kind }: Flux): number {
  if (kind === 'spill' || kind === 'lid' || kind === 'overflow') return askedAs.weir;
  return kind === 'inlet' ? askedAs.link : kind === 'pump' ? askedAs.pump : askedAs.other;
}
