import type { Referral } from './types.ts';

const one = (step: string, ...is: readonly string[]) => ({ step, is });
const structure = <const I extends string>(pick: I, observation: string) => ({ id: pick, weight: 'stop', when: [one('structure', pick)], call: ['engineer'], observation }) as const;

/** When not to take the job, or not alone. Source: common practice, no source; where a law asks for it the local rule comes first. */
export const referrals = [
  { id: 'leak', weight: 'stop', when: [one('dryDays', 'yes'), one('leakMeter', 'moves')], call: ['plumber', 'irrigation'], observation: 'waterOnDryDays' },
  { id: 'leakPool', weight: 'stop', when: [one('leakPool', 'poolDrops')], call: ['poolFirm'], observation: 'waterOnDryDays' },
  { id: 'leakCondensate', weight: 'stop', when: [one('leakCondensate', 'drips')], call: ['airConditioning'], observation: 'waterOnDryDays' },
  { id: 'leakSewer', weight: 'stop', when: [one('leakToilet', 'dyeOutside')], call: ['plumber', 'health'], observation: 'sewage' },
  { id: 'sewage', weight: 'stop', when: [one('sewage', 'yes')], call: ['plumber', 'health'], observation: 'sewage' },
  { id: 'fixture', weight: 'stop', when: [one('risesFrom', 'fixture')], call: ['plumber'], observation: 'sewage' },
  { id: 'dyeInSewer', weight: 'stop', when: [one('dye', 'inSewer')], call: ['plumber', 'health'], observation: 'sewage' },
  structure('sinkhole', 'voidUnderSlab'),
  structure('offsetCrack', 'slabOffset'),
  structure('stairCracks', 'movingFooting'),
  structure('leaningWall', 'leaningWall'),
  structure('highWall', 'retainingWallOver4ft'),
  structure('movingFooting', 'movingFooting'),
  structure('voidUnderSlab', 'voidUnderSlab'),
  { id: 'seepNearWall', weight: 'stop', when: [one('slopeSeep', 'wetLineNearWall')], call: ['engineer'], observation: 'leaningWall' },
  { id: 'postTension', weight: 'stop', when: [one('siteLimits', 'postTension'), one('slabHoles', 'cables')], call: ['engineer', 'scanner'], observation: 'postTensionSlab' },
  { id: 'underFooting', weight: 'stop', when: [one('siteLimits', 'underFooting')], call: ['engineer'], observation: 'movingFooting' },
  { id: 'outsideOverSill', weight: 'decline', when: [one('outsideFlood', 'overSill')], call: ['floodplain', 'engineer'], observation: 'externalFlood' },
  { id: 'outsideBelowSill', weight: 'along', when: [one('outsideFlood', 'belowSill')], call: ['floodplain'], observation: null },
  { id: 'floodway', weight: 'decline', when: [one('siteLimits', 'floodway')], call: ['floodplain', 'engineer'], observation: 'externalFlood' },
  { id: 'publicPipe', weight: 'stop', when: [one('siteLimits', 'publicPipe')], call: ['authority', 'utility'], observation: 'publicPipe' },
  { id: 'streetWater', weight: 'along', when: [one('siteLimits', 'streetWater')], call: ['authority'], observation: null },
  { id: 'dyeAtNeighbour', weight: 'decline', when: [one('dye', 'atNeighbour')], call: ['nobody'], observation: 'lotLineDispute' },
  { id: 'newCircuit', weight: 'along', when: [one('siteLimits', 'newCircuit')], call: ['electrician'], observation: null },
  { id: 'poolNear', weight: 'along', when: [one('siteLimits', 'poolNear')], call: ['electrician'], observation: null },
  { id: 'overAcre', weight: 'stop', when: [one('siteLimits', 'overAcre')], call: ['civil', 'authority'], observation: null },
  { id: 'wetland', weight: 'stop', when: [one('siteLimits', 'wetland')], call: ['civil', 'authority'], observation: 'wetland' },
  { id: 'lotLineDispute', weight: 'stop', when: [one('siteLimits', 'lotLineDispute')], call: ['civil', 'authority'], observation: 'lotLineDispute' },
  { id: 'neighbourFill', weight: 'along', when: [one('siteLimits', 'neighbourFill')], call: ['civil'], observation: 'neighbourFill' },
  { id: 'septicNear', weight: 'along', when: [one('siteLimits', 'septicNear', 'wellNear')], call: ['health'], observation: 'septicNear' },
  { id: 'toNeighbour', weight: 'decline', when: [one('siteLimits', 'toNeighbour')], call: ['nobody'], observation: null },
  { id: 'toSewer', weight: 'decline', when: [one('siteLimits', 'toSewer')], call: ['nobody'], observation: null },
  { id: 'refusesAdvice', weight: 'decline', when: [one('siteLimits', 'refusesAdvice')], call: ['nobody'], observation: null },
] as const satisfies readonly Referral[];

export type ReferralId = (typeof referrals)[number]['id'];
