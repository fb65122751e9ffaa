import type { DesignDocument } from '../document/document.ts';
import { gravityFall } from '../levels/gravityFall.ts';
import type { Results } from '../results/results.ts';
import type { BasinStore, PumpRating } from '../routing/model.ts';
import { dryWellResults, grateResults, roofLineResults, swaleResults, underdrainResults } from './collectParts.ts';
import { channelResults, gutterResults, peakFlows, pipeResults } from './gravityParts.ts';
import { basinResults, dutyPumpsOf, existingDrainResults, lowSpotResults, outletResults, pumpDuties, pumpResults, type PumpDuty } from './pumpedParts.ts';
import { quantities } from './quantities.ts';

/** What sizes are told from: the document, and of the routing model what the basins hold and what runs back into them. */
export interface SizesContext {
  readonly document: DesignDocument;
  readonly periods: readonly number[];
  readonly model: {
    readonly basins: readonly (Pick<BasinStore, 'onLevel' | 'offLevel' | 'storage'> & { readonly pump: Pick<PumpRating, 'runBack'> | null })[];
  };
}

/** Results that a storm must be routed for. */
export type Routed = Pick<Results, 'freeboards' | 'storm' | 'recorded' | 'family' | 'outage' | 'wells' | 'whatIfs' | 'band' | 'protection' | 'handDifferences'>;
export type Sizes = Omit<Results, keyof Routed>;

export const unrouted: Routed = { freeboards: [], storm: null, recorded: null, family: [], outage: null, wells: [], whatIfs: [], band: null, protection: null, handDifferences: [] };

/** @param duties every pump on its line */
type Makers = { readonly [Key in keyof Sizes]: (context: SizesContext, duties: () => readonly PumpDuty[]) => Sizes[Key] };

/** What follows from the document without a storm being routed, each by itself. */
export const sizeMakers: Makers = {
  gravity: ({ document }) => document.site.candidateOutlets.map((outlet) => gravityFall(outlet)),
  peaks: ({ document, periods }) => peakFlows(document, periods),
  gutters: ({ document }) => gutterResults(document),
  channels: ({ document, periods }) => channelResults(document, periods),
  pipes: ({ document }) => pipeResults(document),
  basins: (context, duties) => basinResults(context, (basin) => dutyPumpsOf(context.document, basin)
    .reduce((sum, { id }) => sum + duties().find(({ part }) => part === id)!.dutyAtOff.flow, 0)),
  pumps: (context, duties) => pumpResults(context, duties()),
  outlets: ({ document }, duties) => outletResults(document, duties()),
  lowSpots: ({ document }) => lowSpotResults(document),
  existingDrains: ({ document }) => existingDrainResults(document),
  grates: ({ document }) => grateResults(document),
  roofLines: ({ document }) => roofLineResults(document),
  swales: ({ document }) => swaleResults(document),
  underdrains: ({ document }) => underdrainResults(document),
  dryWells: ({ document }) => dryWellResults(document),
  quantities: ({ document }) => quantities(document),
  referrals: () => [],
};

export const sizeNames = Object.keys(sizeMakers) as (keyof Sizes)[];

/** All sizes of a document. */
export function sizesOf(context: SizesContext): Sizes {
  const duties = pumpDuties(context.document);
  return Object.fromEntries(sizeNames.map((key) => [key, sizeMakers[key](context, () => duties)])) as unknown as Sizes;
}
