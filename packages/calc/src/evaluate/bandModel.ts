import type { DesignDocument } from '../document/document.ts';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import type { RoutingModel } from '../routing/model.ts';
import type { StormRunoff } from '../routing/storm.ts';
import { frictionRange, variedModel, type FrictionRange } from '../routing/variation.ts';
import { bandRanges, coefficientRange, type BandInput, type Draw } from './bandInputs.ts';
import type { EvaluationContext } from './context.ts';

const within = (share: number, low: number, high: number): number => low + share * (high - low);
const about = (share: number, range: number): number => within(share, 1 - range, 1 + range);
const shot = (share: number): number => within(share, -bandRanges.shot, bandRanges.shot);

/** Reads the inputs of a draw by what they are. */
export class DrawReader {
  private readonly places: ReadonlyMap<string, number>;
  private readonly middles: Draw;

  constructor(inputs: readonly BandInput[]) {
    this.places = new Map(inputs.map(({ input, at }, index) => [`${input} ${at ?? ''}`, index]));
    this.middles = inputs.map(({ middle }) => middle);
  }

  /** Share of an input; the middle for one that the document does not have. */
  share(draw: Draw, input: BandInput['input'], at: string | null = null): number {
    const place = this.places.get(`${input} ${at ?? ''}`);
    return place === undefined ? 0.5 : draw[place]!;
  }

  middle(): Draw {
    return this.middles;
  }
}

/** Factors on the runoff of each catchment. Surfaces of one kind share a draw; none runs off more than its rain. */
export function runoffFactors(document: DesignDocument, reader: DrawReader, draw: Draw): number[] {
  return document.site.catchments.map(({ surface, coefficient }) => {
    const [low, high] = coefficientRange(surface);
    const most = coefficient > 0 ? Math.max(1, 1 / coefficient) : 1;
    return Math.min(most, within(reader.share(draw, 'coefficient', surface), low, high));
  });
}

/** Ends of the rain of each step as shares of the table's own: its 90 % limits, block by block, or +-20 %. */
export function rainLimits(document: DesignDocument, storm: StormRunoff): { readonly lower: Float64Array; readonly upper: Float64Array } {
  const { table, storm: { duration, block }, allowance } = document.rain;
  const lower = new Float64Array(storm.steps).fill(1 - bandRanges.rain);
  const upper = new Float64Array(storm.steps).fill(1 + bandRanges.rain);
  if (table.lower === null || table.upper === null) return { lower, upper };
  const blocks = [table.depths, table.lower, table.upper].map((depths) => alternatingBlock(table, storm.returnPeriod, duration, block, allowance, depths));
  const perBlock = storm.steps / blocks[0]!.length;
  for (let i = 0; i < storm.steps; i += 1) {
    const place = Math.floor(i / perBlock);
    const mean = blocks[0]![place]!;
    lower[i] = mean > 0 ? Math.min(1, blocks[1]![place]! / mean) : 1;
    upper[i] = mean > 0 ? Math.max(1, blocks[2]![place]! / mean) : 1;
  }
  return { lower, upper };
}

/** Factor on the rain of every step of a window: from the lower limit over the table's own value to the upper limit. */
export function rainFactors(
  limits: { readonly lower: Float64Array; readonly upper: Float64Array }, share: number, window: readonly [number, number], into: Float64Array,
): void {
  const end = share < 0.5 ? limits.lower : limits.upper;
  const reach = share < 0.5 ? 1 - 2 * share : 2 * share - 1;
  for (let i = window[0]; i < window[1]; i += 1) into[i] = 1 + reach * (end[i]! - 1);
}

/** Every line of a design rated at both ends of the friction. */
export const bandFriction = ({ document, model }: EvaluationContext): FrictionRange =>
  frictionRange(document, model, bandRanges.frictionLow, bandRanges.frictionHigh);

/**
 * The routing model of a draw. The frame of each low spot stands still: when its shot is off, the sill, the rim and the pipes move
 * against it. The basin's shot moves the level at which the pump starts. Pumps are rated at both ends of the friction and mixed between.
 */
export function modelVariation(context: EvaluationContext, reader: DrawReader, friction?: FrictionRange): (draw: Draw) => RoutingModel {
  const { model, document } = context;
  const range = friction ?? bandFriction(context);
  return (draw) => {
    const varied = variedModel(document, model, {
      storage: about(reader.share(draw, 'storage'), bandRanges.storage), loss: about(reader.share(draw, 'loss'), bandRanges.loss),
      pump: about(reader.share(draw, 'pump'), bandRanges.pump), friction: reader.share(draw, 'friction'),
    }, range);
    const ponds = model.ponds.map((pond) => ({ ...pond, shot: shot(reader.share(draw, 'pondShot', pond.id)) }));
    const invert = shot(reader.share(draw, 'invertShot'));
    return {
      ...varied,
      ponds: varied.ponds.map((pond, index) => ({
        ...pond, rimLevel: Math.max(pond.storage.bottom, pond.rimLevel + shot(reader.share(draw, 'rimShot', pond.id)) - ponds[index]!.shot),
      })),
      links: varied.links.map((link) => {
        const moved = invert - ponds[link.pond]!.shot;
        return { ...link, freeLevel: link.freeLevel + moved, mouthLevel: link.mouthLevel + moved };
      }),
      basins: varied.basins.map((store) => {
        const moved = shot(reader.share(draw, 'basinShot', store.id));
        return {
          ...store, onLevel: store.onLevel + moved,
          units: store.units.map((unit) => ({ ...unit, startLevel: unit.startLevel + moved })),
        };
      }),
    };
  };
}

/** What the shots of a draw add to the freeboard of a sill [m]: its own less that of its low spot. */
export function shotsAtSill(reader: DrawReader, draw: Draw, sill: { readonly id: string; readonly lowSpot: string }): number {
  return shot(reader.share(draw, 'sillShot', sill.id)) - shot(reader.share(draw, 'pondShot', sill.lowSpot));
}
