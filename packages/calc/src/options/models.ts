import { bandRanges } from '../evaluate/bandInputs.ts';
import { halfBlockedDocument } from '../evaluate/protectedStorm.ts';
import type { BasinPumps } from '../routing/basinLines.ts';
import { ModelBuilder } from '../routing/buildModel.ts';
import type { FlowTable, LevelTable } from '../routing/levelTable.ts';
import { once, powerOfTwo } from '../routing/lineRating.ts';
import type { BasinStore, LineStore, RoutingModel } from '../routing/model.ts';
import { frictionRange, type FrictionRange } from '../routing/variation.ts';
import { Memo, ReadDocuments, type Reads } from './reads.ts';
import type { Digits, OptionSpace } from './space.ts';

/** Lines with more pumps than these are rated anew for every combination: their sets are too many. Source: ours. */
const mostShared = 4;

function neverFills(): FlowTable {
  throw new Error('only the twin that runs above its on level is run on shared models: it never fills a line');
}

/** Models of combinations, put together from stores and ways that are made once for the choices that each of them reads. */
export class SharedModels {
  readonly frames: Memo<ReturnType<ModelBuilder['basinFrames']>>;
  private readonly ways: Memo<Pick<RoutingModel, 'ponds' | 'wells' | 'links' | 'conduits' | 'junctions'>>;
  private readonly storages: Memo<LevelTable>[] = [];
  private readonly pumps: Memo<BasinPumps>[] = [];
  private readonly frictions: Memo<FrictionRange>;
  private readonly space: OptionSpace;
  readonly documents: ReadDocuments;
  private readonly reads: Reads;
  private readonly halfBlocked: boolean;

  /** @param halfBlocked whether every grate counts as half open at most */
  constructor(space: OptionSpace, reads: Reads, halfBlocked: boolean) {
    this.space = space;
    this.reads = reads;
    this.documents = new ReadDocuments(space, reads);
    this.halfBlocked = halfBlocked;
    const made = <T>(make: (builder: ModelBuilder) => T): Memo<T> => new Memo(reads, (digits) => make(this.builder(digits)));
    this.frames = made((builder) => builder.basinFrames());
    this.ways = made((builder) => ({
      ponds: builder.pondStores(), wells: builder.wellStores(), links: builder.links(), conduits: builder.conduits(), junctions: builder.junctionStores(),
    }));
    this.frictions = new Memo(reads, (digits) => this.rate(digits));
  }

  storage(digits: Digits, basin: number): LevelTable {
    this.storages[basin] ??= new Memo(this.reads, (of) => this.builder(of).storageOf(basin));
    return this.storages[basin].get(digits);
  }

  pumpsOf(digits: Digits, basin: number): BasinPumps {
    this.pumps[basin] ??= new Memo(this.reads, (of) => {
      const made = this.builder(of).pumpsOf(basin);
      return { ...made, lines: made.lines.map((line) => this.finished(line)) };
    });
    return this.pumps[basin].get(digits);
  }

  of(digits: Digits): RoutingModel {
    const basins = this.frames.get(digits).map((frame, basin): BasinStore => ({ ...frame, storage: this.storage(digits, basin), ...this.pumpsOf(digits, basin) }));
    return { ...this.ways.get(digits), basins };
  }

  /** What the duty pumps of all basins give when they start [m3/s]. */
  flowAtOnLevels(digits: Digits): number {
    return this.frames.get(digits).reduce((sum, { onLevel }, basin) => sum + (this.pumpsOf(digits, basin).pump?.flow.flow(onLevel) ?? 0), 0);
  }

  /** Every line rated at both ends of the band's friction. */
  friction(digits: Digits): FrictionRange {
    return this.frictions.get(digits);
  }

  private rate(digits: Digits): FrictionRange {
    const document = this.documents.of(digits);
    const basins = this.frames.get(digits).map((_, basin) => this.pumpsOf(digits, basin));
    const { rough, smooth } = frictionRange(document, { basins }, bandRanges.frictionLow, bandRanges.frictionHigh);
    const finish = (all: FrictionRange['rough']): LineStore[][] => all.map((lines) => lines.map((line) => this.finished(line)));
    return { rough: finish(rough), smooth: finish(smooth) };
  }

  private builder(digits: Digits): ModelBuilder {
    const document = this.documents.of(digits);
    return new ModelBuilder(this.halfBlocked ? halfBlockedDocument(document) : document);
  }

  /** A line whose ratings are all made now, while what they read is noted; with many pumps it belongs to its own combination alone. */
  private finished(line: LineStore): LineStore {
    if (line.units.length > mostShared) {
      this.space.choices.forEach((_, choice) => { this.reads.note(choice); });
      return { ...line, filling: neverFills };
    }
    for (let mask = 1; mask < powerOfTwo(line.units.length); mask += 1) line.flow(mask);
    return { ...line, filling: neverFills };
  }
}

/** Lines that give at every head as much as the best of several; they stand on the same grid, counted from where each lifts to. */
function bestLines(all: readonly (readonly LineStore[])[]): LineStore[] {
  return all[0]!.map((line, place): LineStore => ({
    ...line, flow: once((mask) => all.map((lines) => lines[place]!.flow(mask)).reduce((a, b) => a.greater(b))), filling: neverFills,
  }));
}

const bestOfBasins = (all: readonly FrictionRange['rough'][]): LineStore[][] => all[0]!.map((_, basin) => bestLines(all.map((one) => one[basin]!)));

/** Ratings that none of these is anywhere above, at either end of the friction and so anywhere between. */
export function bestFriction(all: readonly FrictionRange[]): FrictionRange {
  if (all.length === 1) return all[0]!;
  return { rough: bestOfBasins(all.map(({ rough }) => rough)), smooth: bestOfBasins(all.map(({ smooth }) => smooth)) };
}

/** The first of some models that differ in pumps and lines alone, with the best of all of them. */
export function bestModel(all: readonly RoutingModel[]): RoutingModel {
  const [first] = all;
  if (all.length === 1) return first!;
  return {
    ...first!,
    basins: first!.basins.map((basin, index): BasinStore => {
      const same = all.map(({ basins }) => basins[index]!);
      const flows = same.flatMap(({ pump }) => (pump === null ? [] : [pump.flow]));
      return {
        ...basin, lines: bestLines(same.map(({ lines }) => lines)),
        pump: basin.pump === null ? null : { ...basin.pump, flow: flows.reduce((a, b) => a.greater(b)) },
      };
    }),
  };
}

/** Whether one rating gives at no head more than another, at either end of the friction. */
export function isNowhereStronger(one: FrictionRange, other: FrictionRange): boolean {
  const below = (a: FrictionRange['rough'], b: FrictionRange['rough']): boolean => a.every((lines, basin) => lines.every((line, place) => {
    for (let mask = 1; mask < powerOfTwo(line.units.length); mask += 1) if (!line.flow(mask).isNowhereAbove(b[basin]![place]!.flow(mask))) return false;
    return true;
  }));
  return below(one.rough, other.rough) && below(one.smooth, other.smooth);
}
