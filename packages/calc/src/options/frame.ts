import { bandFriction } from '../evaluate/bandModel.ts';
import type { EvaluationContext } from '../evaluate/context.ts';
import { once } from '../routing/lineRating.ts';
import type { LineStore } from '../routing/model.ts';
import type { FrictionRange } from '../routing/variation.ts';
import type { Measure } from './measure.ts';
import type { Digits, OptionSpace } from './space.ts';

/** The pumps and lines of one combination of rating choices. */
export interface Rating {
  readonly digits: Digits;
  readonly cost: number;
  readonly friction: FrictionRange;
  /** Flow at the on level [m3/s]; it only puts them in order. */
  readonly flow: number;
}

const ratedKinds = new Set(['pump', 'dischargeLine', 'checkValve', 'weepHole', 'basin', 'outlet']);

/** Combinations that differ in pumps, lines and roof water only: everything else is fixed by the digits of the frame. */
export interface Frame {
  readonly digits: Digits;
  readonly cost: number;
  /** From the weakest to the strongest. */
  readonly ratings: readonly Rating[];
}

/** All digits of the choices with one of the given roles, the others at 0. */
function* productOf(space: OptionSpace, roles: readonly string[]): Generator<number[]> {
  const open = space.choices.map((_, choice) => choice).filter((choice) => roles.includes(space.roles[choice]!));
  const digits = space.choices.map(() => 0);
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

const costOf = (space: OptionSpace, digits: Digits, roles: readonly string[]): number =>
  digits.reduce((sum, digit, choice) => (roles.includes(space.roles[choice]!) ? sum + space.costAt(choice, digit) : sum), 0);

/** The digits of one product put over those of another. */
export const joined = (space: OptionSpace, base: Digits, over: Digits, role: string): number[] =>
  base.map((digit, choice) => (space.roles[choice] === role ? over[choice]! : digit));

/** Makes frames; ratings that read the same parts are made once. */
export class Frames {
  private readonly space: OptionSpace;
  private readonly measure: Measure;
  private readonly known = new Map<string, { readonly friction: FrictionRange; readonly flow: number }>();

  constructor(space: OptionSpace, measure: Measure) {
    this.space = space;
    this.measure = measure;
  }

  *slice(index: number, of: number): Generator<Frame> {
    let number = 0;
    for (const digits of productOf(this.space, ['frame', 'backup'])) {
      if (number % of === index) yield this.frame(digits);
      number += 1;
    }
  }

  private frame(digits: Digits): Frame {
    const { space } = this;
    const ratings: Rating[] = [];
    for (const over of productOf(space, ['rating'])) {
      const rated = this.rate(joined(space, digits, over, 'rating'));
      ratings.push({ digits: over, cost: costOf(space, over, ['rating']), ...rated });
    }
    ratings.sort((a, b) => a.flow - b.flow || b.cost - a.cost);
    return { digits, cost: costOf(space, digits, ['frame', 'backup']), ratings };
  }

  private rate(digits: Digits): { readonly friction: FrictionRange; readonly flow: number } {
    const document = this.space.documentOf(digits);
    const key = JSON.stringify(document.system.parts.filter(({ kind }) => ratedKinds.has(kind)));
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const context: EvaluationContext = this.measure.context(document);
    const flow = context.model.basins.reduce((sum, { pump, onLevel }) => sum + (pump?.flow.flow(onLevel) ?? 0), 0);
    const made = { friction: bandFriction(context), flow };
    this.known.set(key, made);
    return made;
  }
}

/** Lines that give at every head as much as the best of several; they stand on the same grid of heads. */
function bestLines(all: readonly (readonly (readonly LineStore[])[])[]): LineStore[][] {
  return all[0]!.map((lines, basin) => lines.map((line, place): LineStore => {
    const same = all.map((one) => one[basin]![place]!);
    const best = (table: 'flow' | 'filling') => once((mask) => same.map((item) => item[table](mask)).reduce((a, b) => a.greater(b)));
    return { ...line, flow: best('flow'), filling: best('filling') };
  }));
}

/** A rating that none of these is anywhere above, at either end of the friction and so anywhere between. */
export function bestOf(ratings: readonly Rating[]): FrictionRange {
  if (ratings.length === 1) return ratings[0]!.friction;
  return { rough: bestLines(ratings.map(({ friction }) => friction.rough)), smooth: bestLines(ratings.map(({ friction }) => friction.smooth)) };
}
