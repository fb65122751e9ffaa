import { basinFlotations, pumpDuties, type BasinFlotation, type PumpDuty } from '../evaluate/pumpedParts.ts';
import { sizeMakers, sizeNames, unrouted, type Sizes, type SizesContext } from '../evaluate/sizes.ts';
import type { Results } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import type { SharedModels } from './models.ts';
import { Memo, type Reads } from './reads.ts';
import type { Digits } from './space.ts';

/** The fields of a result that are not known from the start, every one of them. */
type Rest<T, Known extends keyof T> = Readonly<Record<Exclude<keyof T, Known>, true>>;
type Pump = Sizes['pumps'][number];
type Basin = Sizes['basins'][number];
type Channel = Sizes['channels'][number];

const ofPumps: Rest<Pump, keyof PumpDuty> = { runBackShare: true };
const ofBasins: Rest<Basin, keyof BasinFlotation> = { workingVolume: true, worstStartsPerHour: true, aloneRunTime: true };
const ofChannels: Rest<Channel, 'part' | 'returnPeriod'> = { flow: true, depthFreeFrictionless: true, depthFree: true, depth: true, endCondition: true, share: true, profile: true };

/** An object with some finished fields; the others are read from what `full` gives when they are asked for. */
function completed<T extends object>(finished: Partial<T>, rest: Partial<Record<keyof T, true>>, full: () => T): T {
  const made = { ...finished };
  for (const key of Object.keys(rest) as (keyof T)[]) Object.defineProperty(made, key, { enumerable: true, get: () => full()[key] });
  return made as T;
}

/** Results on sizes of combinations, of which only what is asked for is made, once for the choices that it reads. */
export class LazyResults {
  private now: Digits = [];
  private readonly results: Results;

  constructor(reads: Reads, models: SharedModels, { periods }: Pick<SizesContext, 'periods'>) {
    const { documents } = models;
    const duties = new Memo(reads, (digits) => pumpDuties(documents.of(digits)));
    const flotations = new Memo(reads, (digits) => basinFlotations(documents.of(digits)));
    const memoOf = <Key extends keyof Sizes>(key: Key, storms = periods): Memo<Sizes[Key]> => new Memo(reads, (digits) =>
      sizeMakers[key]({ document: documents.of(digits), periods: storms, model: lazyModel(models, digits) }, () => duties.get(digits)));
    // What a pump does and how a basin floats is asked for more often than what both do together, which reads more.
    const pumps = memoOf('pumps');
    const basins = memoOf('basins');
    const results = { ...unrouted } as Results;
    for (const key of sizeNames) {
      const memo = memoOf(key);
      Object.defineProperty(results, key, { enumerable: true, configurable: true, get: () => memo.get(this.now) });
    }
    Object.defineProperty(results, 'pumps', {
      enumerable: true, get: () => duties.get(this.now).map((duty, place) => completed<Pump>(duty, ofPumps, () => pumps.get(this.now)[place]!)),
    });
    Object.defineProperty(results, 'basins', {
      enumerable: true, get: () => flotations.get(this.now).map((flotation, place) => completed<Basin>(flotation, ofBasins, () => basins.get(this.now)[place]!)),
    });
    // A channel's water surface takes long, and no check asks for that of every storm.
    const channels = new Map(periods.map((returnPeriod) => [returnPeriod, memoOf('channels', [returnPeriod])]));
    Object.defineProperty(results, 'channels', {
      enumerable: true, get: () => partsOf(documents.of(this.now), 'channel').flatMap(({ id }, place) => periods.map((returnPeriod) => completed<Channel>(
        { part: id, returnPeriod }, ofChannels, () => channels.get(returnPeriod)!.get(this.now)[place]!))),
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
