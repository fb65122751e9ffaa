import type { Measure } from './types.ts';

/** The limits of a measure made narrower or wider: to both sides of what was designed; where there is one limit alone, that limit. What is noted has none. */
export function scaled(measure: Measure, share: number): Measure {
  const { target, min, max, quantity } = measure;
  if (quantity === 'check') return measure;
  if (min !== null && max !== null) return { ...measure, min: target - (target - min) * share, max: target + (max - target) * share };
  if (max !== null) return { ...measure, max: max < target || target === 0 ? max * share : target + (max - target) * share };
  if (min === null) return measure;
  const least = min < target ? target - (target - min) * share : min / share;
  return { ...measure, min: least, target: Math.max(target, least) };
}
