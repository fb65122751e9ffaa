import { FOOT } from '../common/constants.ts';
import type { DesignDocument, Surface } from '../document/document.ts';
import { seededRandom } from '../math/random.ts';
import type { RankedInput } from '../results/decisions.ts';

/**
 * What is varied, evenly between these ends. Source: ours, stated with every band:
 * rain between the 90 % limits of its table block by block, +-20 % where the table gives none; hard surfaces -10/+5 %, soft ones +-30 %,
 * never above all of the rain; each level shot +-0.01 ft; stage-storage +-10 %; pump flow +-8 %; Hazen-Williams C 130 to 150; existing loss +-50 %.
 */
export const bandRanges = {
  samples: 200, rain: 0.2, hardLow: 0.9, hardHigh: 1.05, soft: 0.3, shot: 0.01 * FOOT, storage: 0.1, pump: 0.08, frictionLow: 130, frictionHigh: 150,
  loss: 0.5, lowShare: 0.1, highShare: 0.9,
} as const;

/** One thing that is not known exactly: the rain, the coefficient of one kind of surface, the shot of one level. */
export interface BandInput {
  readonly input: RankedInput;
  readonly at: string | null;
  /** Share of its range, 0 to 1, at which it has the value of the document. */
  readonly middle: number;
}

/** Where every input stands within its range, 0 to 1, in the order of the inputs. */
export type Draw = readonly number[];

const hard: readonly Surface[] = ['roof', 'paving', 'pool'];

/** Ends of the factor on the runoff of a kind of surface. */
export function coefficientRange(surface: Surface): readonly [number, number] {
  return hard.includes(surface) ? [bandRanges.hardLow, bandRanges.hardHigh] : [1 - bandRanges.soft, 1 + bandRanges.soft];
}

function surfaceInputs(document: DesignDocument): BandInput[] {
  const kinds = [...new Set(document.site.catchments.filter(({ area }) => area > 0).map(({ surface }) => surface))];
  return kinds.map((surface) => {
    const [low, high] = coefficientRange(surface);
    return { input: 'coefficient', at: surface, middle: (1 - low) / (high - low) };
  });
}

const shots = (input: RankedInput, items: readonly { readonly id: string }[]): BandInput[] => items.map(({ id }) => ({ input, at: id, middle: 0.5 }));

/** Friction at the document's own coefficient where that lies in the range, else at its nearer end. */
function frictionInput(document: DesignDocument): BandInput {
  const { frictionLow, frictionHigh } = bandRanges;
  const line = document.system.parts.find((part) => part.kind === 'dischargeLine');
  const c = line?.kind === 'dischargeLine' ? line.hazenWilliamsC : frictionHigh;
  return { input: 'friction', at: null, middle: Math.max(0, Math.min(1, (c - frictionLow) / (frictionHigh - frictionLow))) };
}

/** Everything that is varied in a document, in a fixed order. */
export function bandInputs(document: DesignDocument): BandInput[] {
  const { site, system } = document;
  const parts = (kind: string) => system.parts.filter((part) => part.kind === kind);
  const pumped = parts('pump').length > 0;
  const inlets = parts('channel').length + parts('catchBasin').length > 0;
  return [
    { input: 'rain', at: null, middle: 0.5 }, ...surfaceInputs(document),
    ...shots('sillShot', site.sills), ...shots('pondShot', site.lowSpots), ...shots('rimShot', site.lowSpots), ...shots('basinShot', parts('basin')),
    ...(inlets ? [{ input: 'invertShot', at: null, middle: 0.5 } as const] : []),
    { input: 'storage', at: null, middle: 0.5 },
    ...(pumped ? [{ input: 'pump', at: null, middle: 0.5 } as const, frictionInput(document)] : []),
    ...(site.lowSpots.some(({ existingLoss }) => existingLoss > 0) ? [{ input: 'loss', at: null, middle: 0.5 } as const] : []),
  ];
}

/** Latin hypercube: each input takes every one of `count` even slices once, in a shuffled order. Source: McKay and others 1979. */
export function latinHypercube(count: number, inputs: number, seed: number): Draw[] {
  const random = seededRandom(seed);
  const columns = Array.from({ length: inputs }, () => {
    const order = Array.from({ length: count }, (_, i) => i);
    for (let i = count - 1; i > 0; i -= 1) {
      const j = Math.floor(random() * (i + 1));
      const kept = order[i]!;
      order[i] = order[j]!;
      order[j] = kept;
    }
    return order.map((slice) => (slice + random()) / count);
  });
  return Array.from({ length: count }, (_, i) => columns.map((column) => column[i]!));
}
