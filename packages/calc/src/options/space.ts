import { CalcProblem } from '../common/problem.ts';
import type { DesignDocument, Outlet, Part } from '../document/document.ts';
import { routesOf } from '../routing/inflow.ts';
import { pathFrom } from '../routing/pathParts.ts';
import type { Alternative, Choice, CostIndex } from './choices.ts';

/** Which alternative of every choice, in the order of the choices. */
export type Digits = readonly number[];

/** Fields of pumps, lines and the outlets of lines alone that change the rating of pumps and nothing else. */
const ratingFields: Readonly<Record<string, readonly string[]>> = {
  pump: ['curve', 'curveName', 'solids', 'minSubmergence'],
  dischargeLine: ['innerDiameter', 'nominal', 'length', 'hazenWilliamsC', 'fittings', 'wallRoughness', 'coverMin'],
  checkValve: ['equivalentLength'],
  outlet: ['waterLevel', 'level', 'openingHead'],
};

/** Choices by what of the document they change. */
export interface Touches {
  /** Part, then field. */
  readonly sets: ReadonlyMap<string, ReadonlyMap<string, readonly number[]>>;
  /** Where a catchment drains to. */
  readonly drains: ReadonlyMap<string, readonly number[]>;
  /** Those that add or remove a part. */
  readonly lists: readonly number[];
}

const mostCombinations = 5_000_000;

/** All combinations of the choices on one document. */
export class OptionSpace {
  readonly document: DesignDocument;
  readonly choices: readonly Choice[];
  readonly count: number;
  /**
   * What a choice does to the water, which is what the search may use:
   * rating: what pumps give against a level in their basin; diversion: roof water on the low spot, then off the site; backup: counted by its
   * own order; frame: anything else. Whether ratings and diversions do so in a frame is told by `ratingsKeepOrder` and `divertsIn`.
   */
  readonly roles: readonly ('rating' | 'diversion' | 'backup' | 'frame')[];
  private readonly costs: readonly (readonly number[])[];
  readonly base: number;
  readonly touches: Touches;

  constructor(document: DesignDocument, choices: readonly Choice[], cost: CostIndex) {
    this.document = document;
    this.choices = choices;
    this.base = cost.base;
    this.costs = choices.map((choice) => choice.alternatives.map((alternative) => costOf(cost, choice, alternative)));
    this.count = choices.reduce((count, { alternatives }) => count * alternatives.length, 1);
    if (this.count === 0 || this.count > mostCombinations) throw new CalcProblem('options.count', 'choices', { count: this.count, most: mostCombinations });
    this.touches = touchesOf(choices);
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

  /**
   * Cheapest combinations below a cost: the dearest of them, and of those the first.
   * @returns its digits, null when none costs less
   */
  dearestBelow(cost: number): Digits | null {
    const { choices, costs } = this;
    const digits = choices.map(() => 0);
    const sums = [this.base, ...choices.map(() => 0)];
    let best = -Infinity;
    let found: Digits | null = null;
    for (let from = 0; from >= 0;) {
      for (let choice = from; choice < choices.length; choice += 1) sums[choice + 1] = sums[choice]! + costs[choice]![digits[choice]!]!;
      const sum = sums[choices.length]!;
      if (sum < cost && sum > best) {
        best = sum;
        found = [...digits];
      }
      from = choices.length - 1;
      while (from >= 0 && digits[from]! + 1 === choices[from]!.alternatives.length) {
        digits[from] = 0;
        from -= 1;
      }
      if (from >= 0) digits[from] = digits[from]! + 1;
    }
    return found;
  }

  /** Sets nothing but what pumps give. */
  private ratesOnly(choice: Choice): boolean {
    const { parts } = this.document.system;
    return choice.alternatives.every(({ set = [], add = [], remove = [], drains = [] }) => add.length + remove.length + drains.length === 0
      && set.length > 0 && set.every(({ part, fields }) => {
      const target = parts.find(({ id }) => id === part);
      const allowed = target === undefined ? undefined : ratingFields[target.kind];
      return allowed !== undefined && Object.keys(fields).every((field) => allowed.includes(field));
    }));
  }

  /** Two alternatives that say where catchments drain to, which no other choice says. */
  private divertsOnly({ alternatives }: Choice, choice: number): boolean {
    const { drains } = this.touches;
    return alternatives.length === 2
      && alternatives.every(({ set = [], add = [], remove = [], drains: own = [] }) => set.length + add.length + remove.length === 0 && own.length > 0)
      && [...drains.values()].every((choices) => !choices.includes(choice) || choices.length === 1);
  }

  /**
   * Whether pumps that give no less at any level leave no level higher: their lines keep their water, it leaves for good, and an outlet
   * whose level is chosen takes nothing else. Without a check valve water runs back, and what returns to a low spot or fills a dry well comes again.
   */
  ratingsKeepOrder(document: DesignDocument): boolean {
    const { parts } = document.system;
    const outlets = parts.filter((part): part is Outlet => part.kind === 'outlet');
    const chosen = outlets.filter(({ id }) => this.roles.some((role, choice) => role === 'rating'
      && this.choices[choice]!.alternatives.some(({ set = [] }) => set.some(({ part }) => part === id))));
    const kinds = new Set<Part['kind']>(['pump', 'checkValve', 'dischargeLine']);
    const pumped = parts.filter(({ kind }) => kind === 'pump').map(({ id }) => pathFrom(document, id));
    return pumped.every((path) => path.some((part) => part.kind === 'checkValve' && part.present)
      && path.every((part) => part.kind !== 'outlet' || (part.dryWell === null && (part.returns === null || part.returns.share === 0))))
      && chosen.every(({ id }) => parts.every((part) => part.drainsTo !== id || kinds.has(part.kind)));
  }

  /** Whether each catchment of a diversion falls on a low spot, or goes by a gutter off the site that spills onto no other. */
  divertsIn(choice: number, without: DesignDocument, diverted: DesignDocument): boolean {
    const others = routesOf(diverted, 'system');
    return this.roles[choice] === 'diversion' && routesOf(without, 'system').every((route, index) => {
      const other = others[index]!;
      if (route.to?.kind === other.to?.kind && route.to?.index === other.to?.index && route.gutter === other.gutter) return true;
      return route.to?.kind === 'pond' && route.capacity === Infinity && other.to === null && (other.excessPond < 0 || other.excessPond === route.to.index);
    });
  }
}

function touchesOf(choices: readonly Choice[]): Touches {
  const sets = new Map<string, Map<string, number[]>>();
  const drains = new Map<string, number[]>();
  const lists: number[] = [];
  const join = (map: Map<string, number[]>, key: string, choice: number): void => {
    const before = map.get(key);
    if (before === undefined) map.set(key, [choice]);
    else if (!before.includes(choice)) before.push(choice);
  };
  choices.forEach(({ alternatives }, choice) => {
    for (const { set = [], drains: to = [] } of alternatives) {
      for (const { part, fields } of set) {
        const own = sets.get(part) ?? new Map<string, number[]>();
        sets.set(part, own);
        for (const field of Object.keys(fields)) join(own, field, choice);
      }
      for (const { catchment } of to) join(drains, catchment, choice);
    }
    if (alternatives.some(({ add = [], remove = [] }) => add.length + remove.length > 0)) lists.push(choice);
  });
  return { sets, drains, lists };
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
