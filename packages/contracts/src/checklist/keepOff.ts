import type { Requirement } from '../checklists.ts';

const day = 86_400_000;

/**
 * Until when new concrete is kept free: of feet and of wheels, from the moment at which it was finished [ms]. Null for a step that places none.
 * 24 hours and 7 days: common practice, no source.
 */
export function keepOff({ template, params: { foot, wheelDays } }: Pick<Requirement, 'template' | 'params'>, finished: number): { readonly foot: string; readonly wheels: string } | null {
  if (template !== 'I3' || typeof foot !== 'number' || typeof wheelDays !== 'number') return null;
  return { foot: new Date(finished + foot * 1000).toISOString(), wheels: new Date(finished + wheelDays * day).toISOString() };
}
