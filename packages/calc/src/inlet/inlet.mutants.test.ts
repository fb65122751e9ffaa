import { expect, test } from 'vitest';
import { grateTransitionHead, sagGrateFlow, TRANSITION } from './sagGrate.ts';

test('both ends of the transition belong to it', () => {
  for (const [end, outside] of [[TRANSITION.from, 0.999], [TRANSITION.to, 1.001]] as const) {
    // Grates for which the quotient comes out exactly at the end.
    const grates = Array.from({ length: 200 }, (_, i) => ({ perimeter: 0.5 + i / 100, openArea: 0.02, clogging: 0.5 }))
      .map((grate) => ({ grate, head: end * grateTransitionHead(grate.perimeter, grate.openArea) }))
      .filter(({ grate, head }) => head / grateTransitionHead(grate.perimeter, grate.openArea) === end);
    expect(grates.length).toBeGreaterThan(10);
    for (const { grate, head } of grates) {
      expect(sagGrateFlow(grate, head).inTransition).toBe(true);
      expect(sagGrateFlow(grate, head * outside).inTransition).toBe(false);
    }
  }
});
