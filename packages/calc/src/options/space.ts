import { CalcProblem } from '../common/problem.ts';
import type { DesignDocument, Part } from '../document/document.ts';
import { routesOf } from '../routing/inflow.ts';
import { pathFrom } from '../routing/pathParts.ts';
import type { Alternative, Choice, CostIndex } from './choices.ts';

/** Which alternative of every choice, in the order of the choices. */
export type Digits = readonly number[];

/** Fields of pumps and lines that change their rating and nothing else. */
const ratingFields: Readonly<Record<string, readonly string[]>> = {
  pump: ['curve', 'curveName', 'solids', 'minSubmergence'],
  dischargeLine: ['innerDiameter', 'nominal', 'length', 'hazenWilliamsC', 'fittings', 'wallRoughness', 'coverMin'],
  checkValve: ['equivalentLength'],
};

const mostCombinations = 5_000_000;

/** All combinations of the choices on one document. */
export class OptionSpace {
  readonly document: DesignDocument;
  readonly choices: readonly Choice[];
  readonly count: number;
  /**
   * What a choice does to the water, which is what the search may use:
   * rating: pumps and lines only; diversion: roof water on the low spot, then off the site; backup: counted by its own order; frame: anything else.
   */
  readonly roles: readonly ('rating' | 'diversion' | 'backup' | 'frame')[];
  private readonly costs: readonly (readonly number[])[];
  readonly base: number;

  constructor(document: DesignDocument, choices: readonly Choice[], cost: CostIndex) {
    this.document = document;
    this.choices = choices;
    this.base = cost.base;
    this.costs = choices.map((choice) => choice.alternatives.map((alternative) => costOf(cost, choice, alternative)));
    this.count = choices.reduce((count, { alternatives }) => count * alternatives.length, 1);
    if (this.count === 0 || this.count > mostCombinations) throw new CalcProblem('options.count', 'choices', { count: this.count, most: mostCombinations });
    this.roles = choices.map((choice, index) => {
      if (choice.kind === 'backup') return 'backup';
      if (this.ratesOnly(choice)) return 'rating';
      return this.divertsOnly(choice, index) ? 'diversion' : 'frame';
    });
  }

  cost(digits: Digits): number {
    return digits.reduce((sum, digit, choice) => sum + this.costs[choice]![digit]!, this.base);
  }

  costAt(choice: number, digit: number): number {
    return this.costs[choice]![digit]!;
  }

  /** Place of a combination in the order of all. */
  indexOf(digits: Digits): number {
    return digits.reduce((index, digit, choice) => index * this.choices[choice]!.alternatives.length + digit, 0);
  }

  digitsOf(index: number): number[] {
    let rest = index;
    const digits: number[] = [];
    for (let choice = this.choices.length - 1; choice >= 0; choice -= 1) {
      const { length } = this.choices[choice]!.alternatives;
      digits.unshift(rest % length);
      rest = Math.floor(rest / length);
    }
    return digits;
  }

  documentOf(digits: Digits): DesignDocument {
    return digits.reduce((made, digit, choice) => applied(made, this.choices[choice]!.alternatives[digit]!), this.document);
  }

  /** Ids of the parts that any alternative touches. */
  touched(): ReadonlySet<string> {
    const ids = this.choices.flatMap(({ alternatives }) => alternatives.flatMap(({ set = [], add = [], remove = [] }) =>
      [...set.map(({ part }) => part), ...add.map(({ id }) => id), ...remove]));
    return new Set(ids);
  }

  /** Sets nothing but the rating of pumps whose lines keep their water: what runs back is no matter of the rating alone. */
  private ratesOnly(choice: Choice): boolean {
    const { parts } = this.document.system;
    return choice.alternatives.every(({ set = [], add = [], remove = [], drains = [] }) => add.length + remove.length + drains.length === 0
      && set.length > 0 && set.every(({ part, fields }) => {
      const target = parts.find(({ id }) => id === part);
      const allowed = target === undefined ? undefined : ratingFields[target.kind];
      return allowed !== undefined && Object.keys(fields).every((field) => allowed.includes(field));
    })) && parts.filter(({ kind }) => kind === 'pump').every(({ id }) => pathFrom(this.document, id).some((part) => part.kind === 'checkValve' && part.present));
  }

  /** Two alternatives: each catchment falls on a low spot, or goes by a gutter off the site that spills onto no other. */
  private divertsOnly({ alternatives }: Choice, choice: number): boolean {
    if (alternatives.length !== 2) return false;
    if (alternatives.some(({ set = [], add = [], remove = [], drains = [] }) => set.length + add.length + remove.length > 0 || drains.length === 0)) return false;
    const zero = this.choices.map(() => 0);
    const [without, diverted] = [0, 1].map((digit) => routesOf(this.documentOf(zero.map((_, i) => (i === choice ? digit : 0))), 'system'));
    return without!.every((route, index) => {
      const other = diverted![index]!;
      if (route.to?.kind === other.to?.kind && route.to?.index === other.to?.index && route.gutter === other.gutter) return true;
      return route.to?.kind === 'pond' && route.capacity === Infinity && other.to === null && (other.excessPond < 0 || other.excessPond === route.to.index);
    });
  }
}

function costOf(cost: CostIndex, choice: Choice, alternative: Alternative): number {
  const value = cost.alternatives[choice.id]?.[alternative.id];
  if (value === undefined || !(value - value === 0)) throw new CalcProblem('options.noCost', `${choice.id}/${alternative.id}`, {});
  return value;
}

function applied(document: DesignDocument, { set = [], add = [], remove = [], drains = [] }: Alternative): DesignDocument {
  let { parts } = document.system;
  if (set.length > 0) {
    parts = parts.map((part) => set.reduce<Part>((made, change) => (change.part === part.id ? { ...made, ...change.fields } as Part : made), part));
  }
  if (remove.length > 0) parts = parts.filter(({ id }) => !remove.includes(id));
  if (add.length > 0) parts = [...parts, ...add];
  const catchments = drains.length === 0 ? document.site.catchments
    : document.site.catchments.map((item) => ({ ...item, drainsTo: drains.find(({ catchment }) => catchment === item.id)?.to ?? item.drainsTo }));
  return { ...document, site: { ...document.site, catchments }, system: { ...document.system, parts } };
}
