import type { PortalDrawing } from '@yardfall/contracts';
import type { MessageCode, Params } from '@yardfall/text';

export type Member = PortalDrawing['family'][number];
export type Case = Member['case'];

/** In the order in which they are asked about. */
export const cases = ['noSystem', 'system', 'powerOut', 'gutterOverflowing'] as const satisfies readonly Case[];

/** Half of the last digit of a height told in inches with one decimal [m]. */
const hardlyAnything = 0.00127;

export function casesOf(family: readonly Member[]): readonly Case[] {
  return cases.filter((one) => family.some((member) => member.case === one));
}

export function periodsOf(family: readonly Member[]): readonly number[] {
  return [...new Set(family.map((member) => member.returnPeriod))].sort((a, b) => a - b);
}

export function memberOf(family: readonly Member[], what: Case, returnPeriod: number): Member | null {
  return family.find((member) => member.case === what && member.returnPeriod === returnPeriod) ?? null;
}

/** Where the water ends, in words. Over the sill it is told as time, never as a height. */
export function levelWords(member: Member | null, sillLevel: number): { readonly code: MessageCode; readonly params: Params } {
  if (member === null) return { code: 'portal.level.none', params: {} };
  if (member.minutesOverSill > 0) return { code: 'portal.level.over', params: { time: member.minutesOverSill * 60 } };
  const height = sillLevel - member.maxLevel;
  return height > hardlyAnything ? { code: 'portal.level.below', params: { height } } : { code: 'portal.level.atSill', params: {} };
}
