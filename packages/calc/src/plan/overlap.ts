import type { Position } from '../document/document.ts';
import { crossing, sidesOf, type Side } from './geometry.ts';

/** Levels of y at which the sides of both outlines begin, end or cross: between two of them no side changes its order. */
function heights(sides: readonly Side[]): number[] {
  const found = new Set<number>();
  sides.forEach((side, i) => {
    found.add(side[0].y);
    for (let j = i + 1; j < sides.length; j += 1) {
      const place = crossing(side, sides[j]!);
      if (place !== null) found.add(place.y);
    }
  });
  return [...found].sort((a, b) => a - b);
}

/** Pairs of x between which a height lies within an outline, by the rule of odd crossings. */
function within(sides: readonly Side[], y: number): number[] {
  const cuts: number[] = [];
  for (const [a, b] of sides) if (a.y > y !== b.y > y) cuts.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  return cuts.sort((p, q) => p - q);
}

function sharedWidth(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < one.length; i += 2) {
    for (let j = 0; j + 1 < other.length; j += 2) {
      const width = Math.min(one[i + 1]!, other[j + 1]!) - Math.max(one[i]!, other[j]!);
      if (width > 0) sum += width;
    }
  }
  return sum;
}

/**
 * Area that two outlines have in common [m2]; outlines may have any shape.
 * Cut into bands between the heights at which anything changes; within a band every width is a straight function of y, so its middle gives the exact area.
 * Source: geometry (midpoint rule, exact for straight sides)
 */
export function overlapArea(one: readonly Position[], other: readonly Position[]): number {
  const [sidesOfOne, sidesOfOther] = [sidesOf(one, true), sidesOf(other, true)];
  const levels = heights([...sidesOfOne, ...sidesOfOther]);
  let sum = 0;
  for (let i = 1; i < levels.length; i += 1) {
    const [low, high] = [levels[i - 1]!, levels[i]!];
    const y = (low + high) / 2;
    sum += (high - low) * sharedWidth(within(sidesOfOne, y), within(sidesOfOther, y));
  }
  return sum;
}
