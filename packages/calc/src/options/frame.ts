import type { Digits, OptionSpace } from './space.ts';

/** All digits of the choices with one of the given roles, the others as in `base`. */
export function* productOf(space: OptionSpace, roles: readonly string[], base: Digits = space.choices.map(() => 0)): Generator<number[]> {
  const open = space.choices.map((_, choice) => choice).filter((choice) => roles.includes(space.roles[choice]!));
  const digits = [...base];
  for (const choice of open) digits[choice] = 0;
  for (;;) {
    yield [...digits];
    let place = open.length - 1;
    while (place >= 0 && digits[open[place]!]! + 1 === space.choices[open[place]!]!.alternatives.length) {
      digits[open[place]!] = 0;
      place -= 1;
    }
    if (place < 0) return;
    digits[open[place]!] = digits[open[place]!]! + 1;
  }
}

/** The combination with the digits of one role taken from another. */
export const joined = (space: OptionSpace, base: Digits, over: Digits, role: string): number[] =>
  base.map((digit, choice) => (space.roles[choice] === role ? over[choice]! : digit));

/** The least that any combination of a frame can cost: its own choices, and of the others the cheapest. */
export function leastCost(space: OptionSpace, frame: Digits): number {
  return space.cost(frame.map((digit, choice) => {
    if (space.roles[choice] === 'frame' || space.roles[choice] === 'backup') return digit;
    let least = 0;
    for (let other = 1; other < space.choices[choice]!.alternatives.length; other += 1) {
      if (space.costAt(choice, other) < space.costAt(choice, least)) least = other;
    }
    return least;
  }));
}
