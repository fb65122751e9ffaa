import type { Cause } from './types.ts';

const one = (step: string, ...is: readonly string[]) => ({ step, is });
const surface = one('timing', 'soon');
const ground = one('timing', 'later');

/** Every cause by its family, with what makes it a suspect, what proves it and what clears it. Source: common practice, no source, unless it says otherwise. */
export const causes = [
  // Water on dry days
  { id: 'leakSupply', signs: [one('dryDays', 'yes')], proofs: [one('leakMeter', 'moves')], clears: [one('leakMeter', 'still')] },
  { id: 'leakIrrigation', signs: [one('dryDays', 'yes')], proofs: [one('leakIrrigation', 'withIrrigation')], clears: [one('leakIrrigation', 'no')] },
  { id: 'leakPool', signs: [one('dryDays', 'yes')], proofs: [one('leakPool', 'poolDrops')], clears: [one('leakPool', 'same', 'noPool')] },
  { id: 'leakCondensate', signs: [one('dryDays', 'yes')], proofs: [one('leakCondensate', 'drips')], clears: [one('leakCondensate', 'no')] },
  { id: 'leakSewer', signs: [one('dryDays', 'yes')], proofs: [one('leakToilet', 'dyeOutside')], clears: [one('leakToilet', 'none')] },
  // Surface water
  { id: 'lowSlab', signs: [one('surfaceSigns', 'sameOutline', 'slabBelowLawn'), one('levelGrid', 'toward')], proofs: [one('levelGrid', 'toward'), one('hoseOutline', 'runsToHouse')], clears: [one('levelGrid', 'over1')] },
  { id: 'roofWater', signs: [one('surfaceSigns', 'dripLine', 'leaderAtPatio', 'noGutter'), one('gutters', 'ontoSlab', 'noGutter')], proofs: [one('hoseGutter', 'reachesSpot')], clears: [one('hoseGutter', 'staysAway')] },
  { id: 'runOn', signs: [one('surfaceSigns', 'siltFans', 'flowsRoofDry')], proofs: [one('lotLine', 'flowsIn', 'fallsIn')], clears: [one('lotLine', 'fallsAway')] },
  { id: 'smallInlet', signs: [one('surfaceSigns', 'clearDrainPonds'), one('inletSize', 'tooSmall')], proofs: [one('inletSize', 'tooSmall')], clears: [one('inletSize', 'enough'), one('drainFlow', 'backedUp')] },
  { id: 'flatSlab', signs: [one('surfaceSigns', 'birdbaths'), one('hoseOutline', 'standsInSpots')], proofs: [one('levelGrid', 'under1'), one('hoseOutline', 'standsInSpots')], clears: [one('levelGrid', 'over1')] },
  { id: 'blockedPath', signs: [one('surfaceSigns', 'newLandscaping')], proofs: [one('pathProbe', 'blocked')], clears: [one('pathProbe', 'open')] },
  { id: 'surfaceUnnamed', signs: [surface], proofs: [], clears: [] },
  // Ground water
  { id: 'highWaterTable', signs: [one('mottles', 'gray'), one('waterHole', 'water')], proofs: [one('waterHole', 'water'), one('mottles', 'gray')], clears: [] },
  { id: 'perchedOnClay', signs: [one('auger', 'sandOverClay', 'clay'), one('percolation', 'slow')], proofs: [one('percolation', 'slow')], clears: [one('percolation', 'soaks')] },
  { id: 'hillsideSeep', signs: [one('slopeSeep', 'wetLine', 'wetLineNearWall')], proofs: [one('slopeSeep', 'wetLine', 'wetLineNearWall')], clears: [] },
  { id: 'crawlWater', signs: [one('crawlSpace', 'stains')], proofs: [one('crawlSpace', 'stains')], clears: [] },
  { id: 'groundUnnamed', signs: [ground], proofs: [], clears: [] },
  // From outside
  { id: 'outsideFlood', signs: [one('timing', 'fromOutside')], proofs: [one('outsideFlood', 'overSill', 'belowSill')], clears: [] },
  // Existing drain
  { id: 'blockedDrain', signs: [one('timing', 'fromPipe')], proofs: [one('drainFlow', 'backedUp'), one('camera', 'roots', 'broken', 'belly')], clears: [one('drainFlow', 'ranAway')] },
  { id: 'drainWithoutOutlet', signs: [one('dye', 'notSeen')], proofs: [one('dye', 'notSeen')], clears: [one('dye', 'atOutlet')] },
  { id: 'drainBackFall', signs: [one('oldFall', 'backFall')], proofs: [one('oldFall', 'backFall')], clears: [one('oldFall', 'proven')] },
] as const satisfies readonly Cause[];

export type CauseId = (typeof causes)[number]['id'];

/** They stand only while no other cause of their kind is named. */
export const unnamed: Readonly<Partial<Record<CauseId, readonly CauseId[]>>> = {
  surfaceUnnamed: ['lowSlab', 'roofWater', 'runOn', 'smallInlet', 'flatSlab', 'blockedPath'],
  groundUnnamed: ['highWaterTable', 'perchedOnClay', 'hillsideSeep', 'crawlWater'],
};
