import { basinFlotations, pumpDuties } from '../evaluate/pumpedParts.ts';
import { sizeMakers, sizeNames, unrouted, type Sizes, type SizesContext } from '../evaluate/sizes.ts';
import type { Results } from '../results/results.ts';
import type { SharedModels } from './models.ts';
import { Memo, type ReadDocuments, type Reads } from './reads.ts';
import type { Digits } from './space.ts';

/** An object with some finished fields; all others are read from what `full` gives when they are asked for. */
function completed<T extends object>(finished: Partial<T>, keys: readonly (keyof T)[], full: () => T): T {
  const made = { ...finished };
  for (const key of keys) Object.defineProperty(made, key, { enumerable: true, get: () => full()[key] });
  return made as T;
}

/** Results on sizes of combinations, of which only what is asked for is made, once for the choices that it reads. */
export class LazyResults {
  private now: Digits = [];
  private readonly results: Results;

  constructor(documents: ReadDocuments, reads: Reads, models: SharedModels, { periods }: Pick<SizesContext, 'periods'>) {
    const duties = new Memo(reads, (digits) => pumpDuties(documents.of(digits)));
    const flotations = new Memo(reads, (digits) => basinFlotations(documents.of(digits)));
    const memoOf = <Key extends keyof Sizes>(key: Key): Memo<Sizes[Key]> => new Memo(reads, (digits) =>
      sizeMakers[key]({ document: documents.of(digits), periods, model: lazyModel(models, digits) }, () => duties.get(digits)));
    // What a pump does and how a basin floats is asked for more often than what both do together, which reads more.
    const pumps = memoOf('pumps');
    const basins = memoOf('basins');
    const results = { ...unrouted } as Results;
    for (const key of sizeNames) {
      const memo = memoOf(key);
      Object.defineProperty(results, key, { enumerable: true, configurable: true, get: () => memo.get(this.now) });
    }
    Object.defineProperty(results, 'pumps', {
      enumerable: true, get: () => duties.get(this.now).map((duty, place) => completed<Sizes['pumps'][number]>(duty, ['runBackShare'], () => pumps.get(this.now)[place]!)),
    });
    Object.defineProperty(results, 'basins', {
      enumerable: true, get: () => flotations.get(this.now).map((flotation, place) => completed<Sizes['basins'][number]>(
        flotation, ['workingVolume', 'worstStartsPerHour', 'aloneRunTime'], () => basins.get(this.now)[place]!)),
    });
    this.results = results;
  }

  /** Of one combination, until another one is asked for. */
  of(digits: Digits): Results {
    this.now = digits;
    return this.results;
  }
}

/** The basins of a model, of which only what is asked for is made. */
function lazyModel(models: SharedModels, digits: Digits): SizesContext['model'] {
  return {
    get basins() {
      return models.frames.get(digits).map(({ onLevel, offLevel }, basin) => ({
        onLevel, offLevel,
        get storage() { return models.storage(digits, basin); },
        get pump() { return models.pumpsOf(digits, basin).pump; },
      }));
    },
  };
}
