import type { Requirement } from '../checklists.ts';
import type { Timed } from './daily.ts';
import { hour, inch } from './measures.ts';

/** How long a joint cures before it is put under pressure [s], from which temperature [°F] on, the warmest first. */
export type Cure = readonly { readonly from: number; readonly wait: number }[];

/**
 * Before a pressure check of up to 180 psi, by pipe size and temperature [°F]: the recommended curing times of a pipe maker's plastics technical
 * manual, read as a stored copy. Other makers publish shorter ones for up to 160 psi (30 min for 2 in above 60 °F); the longer are taken.
 * How a joint is made: ASTM D2855. The label of the cement in hand comes first.
 */
const published: readonly { readonly upTo: number; readonly cure: Cure }[] = [
  // Nominal 1 1/4, 3 and 8 in by the inside [m], with room for the schedules of the wall.
  { upTo: 1.45 * inch, cure: [{ from: 60, wait: hour }, { from: 40, wait: 2 * hour }, { from: 0, wait: 8 * hour }] },
  { upTo: 3.3 * inch, cure: [{ from: 60, wait: 2 * hour }, { from: 40, wait: 4 * hour }, { from: 0, wait: 16 * hour }] },
  { upTo: 8.3 * inch, cure: [{ from: 60, wait: 6 * hour }, { from: 40, wait: 12 * hour }, { from: 0, wait: 48 * hour }] },
];

/** Above 60 % relative humidity the same table allows half as much again; the open air of a yard and a damp trench are taken as that. */
const damp = 1.5;

/** Below it no cement is used: where the table ends [°F]. */
export const coldest = 0;

/** @param inside diameter of the pipe [m]; what is larger than the table is taken as its largest */
export function publishedCure(inside: number): Cure {
  const row = published.find(({ upTo }) => inside <= upTo) ?? published.at(-1);
  return (row?.cure ?? []).map(({ from, wait }) => ({ from, wait: wait * damp }));
}

/** The wait at a temperature [s]: that of the coldest row where it is colder than all. */
export function waitAt(cure: Cure, temperature: number): number {
  return (cure.find(({ from }) => temperature >= from) ?? cure.at(-1))?.wait ?? 0;
}

/** From when on [ms] a joint bears pressure: from when the last one was glued, at the temperature that was written down. Null while either lacks. */
export function curedAt({ cure }: Requirement, evidence: readonly Timed[]): number | null {
  if (cure === undefined) return null;
  const last = (name: string) => evidence.filter(({ fact }) => fact.kind === 'measured' && fact.name === name).sort((a, b) => b.at - a.at || (a.fact.id < b.fact.id ? 1 : -1))[0];
  const [temperature, since] = [last('temperature'), last('cured')];
  if (temperature?.fact.kind !== 'measured' || since?.fact.kind !== 'measured') return null;
  return since.at + 1000 * (waitAt(cure, temperature.fact.value) - since.fact.value);
}
