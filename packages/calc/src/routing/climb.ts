import type { Balance } from './balance.ts';

/** Far more solutions than a way up ever takes; a step that needs more is divided. */
const mostSolutions = 60;
/** A way up that starts with less than this share of a step leads nowhere. */
const leastShare = 1e-5;

/**
 * Levels of a step that Newton's method does not find from its start: those of a shorter step are nearer, and are found first; from there
 * the step grows to its whole length. So a step of a twin stays whole, and keeps order with the same step of any other run.
 * Source: continuation, here in the length of the step, Ortega and Rheinboldt 1970 (from memory)
 *
 * @param balance its levels are those at the start of the step
 * @param volume  held at the start of the step [m3]
 * @param inflow  mean flow into each store [m3/s]
 * @param dt      length of the step [s]
 * @returns false when that does not lead to its levels either
 */
export function climb(balance: Balance, volume: Float64Array, inflow: Float64Array, dt: number): boolean {
  const low = Float64Array.from(balance.level);
  let length = 0;
  let rise = dt / 2;
  for (let i = 0; i < mostSolutions && rise > leastShare * dt; i += 1) {
    const next = length + rise < dt ? length + rise : dt;
    for (let store = 0; store < low.length; store += 1) balance.base[store] = volume[store]! + next * inflow[store]!;
    balance.look();
    if (balance.solve(next)) {
      if (next === dt) return true;
      length = next;
      rise *= 2;
      low.set(balance.level);
    } else {
      balance.level.set(low);
      rise /= 2;
    }
  }
  return false;
}
