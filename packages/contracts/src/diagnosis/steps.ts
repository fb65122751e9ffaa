import type { DiagnosisStep, When } from './types.ts';

const INCH_PER_HOUR = 0.0254 / 3600;
const FOOT = 0.3048;

const surface: readonly When[] = [{ step: 'timing', is: ['soon'] }];
const ground: readonly When[] = [{ step: 'timing', is: ['later'] }];
const pipe: readonly When[] = [{ step: 'timing', is: ['fromPipe'] }, { step: 'surfaceSigns', is: ['clearDrainPonds'] }];
const dry: readonly When[] = [{ step: 'dryDays', is: ['yes'] }];
const sign = (...is: readonly string[]): readonly When[] => [{ step: 'surfaceSigns', is }];

/** A test that may be left for another day. */
const later = 'notDone';

/** The first split: what decides whether this is a drainage job at all. Asked in this order. */
const first: readonly DiagnosisStep[] = [
  { id: 'dryDays', family: 'first', kind: 'one', picks: ['yes', 'no', 'unknown'], when: [], cautions: [] },
  { id: 'leakMeter', family: 'leak', kind: 'one', picks: ['moves', 'still', later], when: [{ step: 'dryDays', is: ['yes', 'unknown'] }], cautions: [] },
  { id: 'leakIrrigation', family: 'leak', kind: 'one', picks: ['withIrrigation', 'no', later], when: dry, cautions: [] },
  { id: 'leakPool', family: 'leak', kind: 'one', picks: ['poolDrops', 'same', 'noPool', later], when: dry, cautions: [] },
  { id: 'leakCondensate', family: 'leak', kind: 'one', picks: ['drips', 'no', later], when: dry, cautions: ['electricity'] },
  { id: 'leakChlorine', family: 'leak', kind: 'one', picks: ['chlorine', 'none', later], when: dry, cautions: ['sewage'] },
  { id: 'leakToilet', family: 'leak', kind: 'one', picks: ['dyeOutside', 'none', later], when: dry, cautions: ['sewage'] },
  { id: 'timing', family: 'first', kind: 'signs', picks: ['soon', 'later', 'fromOutside', 'fromPipe'], when: [{ step: 'dryDays', is: ['no'] }, { step: 'leakMeter', is: ['still', later] }], cautions: [] },
  { id: 'outsideFlood', family: 'first', kind: 'one', picks: ['overSill', 'belowSill'], when: [{ step: 'timing', is: ['fromOutside'] }], cautions: ['electricity', 'sewage'] },
  { id: 'risesFrom', family: 'first', kind: 'one', picks: ['yardDrain', 'fixture'], when: [{ step: 'timing', is: ['fromPipe'] }], cautions: ['sewage'] },
  { id: 'sewage', family: 'first', kind: 'one', picks: ['yes', 'no'], when: [], cautions: ['sewage'] },
  {
    id: 'structure', family: 'first', kind: 'signs', none: 'none', when: [], cautions: ['caveIn'],
    picks: ['sinkhole', 'offsetCrack', 'stairCracks', 'leaningWall', 'highWall', 'movingFooting', 'voidUnderSlab', 'none'],
  },
];

const surfaceSteps: readonly DiagnosisStep[] = [
  {
    id: 'surfaceSigns', family: 'surface', kind: 'signs', none: 'none', when: surface, cautions: [],
    picks: ['sameOutline', 'slabBelowLawn', 'dripLine', 'leaderAtPatio', 'noGutter', 'siltFans', 'flowsRoofDry', 'clearDrainPonds', 'birdbaths', 'newLandscaping', 'none'],
  },
  { id: 'levelGrid', family: 'surface', kind: 'one', picks: ['toward', 'under1', 'over1', later], when: surface, cautions: [] },
  { id: 'hoseOutline', family: 'surface', kind: 'one', tool: 'outline', picks: ['runsToHouse', 'standsInSpots', 'runsAway', later], when: surface, cautions: ['electricity'] },
  { id: 'gutters', family: 'surface', kind: 'tool', tool: 'gutters', picks: [], outcomes: [{ outcome: 'ontoSlab', figure: 'leadersOnSlab', from: 1 }, { outcome: 'noGutter', figure: 'withoutGutter', from: FOOT }], when: surface, cautions: [] },
  { id: 'hoseGutter', family: 'surface', kind: 'one', picks: ['reachesSpot', 'staysAway', later], when: [...sign('dripLine', 'leaderAtPatio', 'noGutter'), { step: 'gutters', is: ['ontoSlab', 'noGutter'] }], cautions: ['electricity'] },
  { id: 'lotLine', family: 'surface', kind: 'one', picks: ['flowsIn', 'fallsIn', 'fallsAway', later], when: sign('siltFans', 'flowsRoofDry'), cautions: [] },
  { id: 'pathProbe', family: 'surface', kind: 'one', picks: ['blocked', 'open', later], when: sign('newLandscaping'), cautions: [] },
];

const groundSteps: readonly DiagnosisStep[] = [
  { id: 'auger', family: 'ground', kind: 'one', picks: ['sand', 'sandOverClay', 'clay', 'loam', later], when: ground, cautions: ['firstOneCall', 'privateLines'] },
  { id: 'mottles', family: 'ground', kind: 'one', picks: ['gray', 'none', later], when: ground, cautions: [] },
  { id: 'waterHole', family: 'ground', kind: 'tool', tool: 'waterHole', picks: ['dry', 'water', later], when: ground, cautions: ['firstOneCall', 'privateLines', 'caveIn'] },
  { id: 'percolation', family: 'ground', kind: 'tool', tool: 'percolation', picks: [later], outcomes: [{ outcome: 'slow', figure: 'measured', below: 0.2 * INCH_PER_HOUR }, { outcome: 'soaks', figure: 'measured', from: 0.2 * INCH_PER_HOUR }], when: ground, cautions: ['firstOneCall', 'caveIn'] },
  { id: 'slopeSeep', family: 'ground', kind: 'one', picks: ['wetLine', 'wetLineNearWall', 'no', later], when: ground, cautions: ['caveIn'] },
  { id: 'crawlSpace', family: 'ground', kind: 'one', picks: ['stains', 'dry', 'noCrawl', later], when: ground, cautions: ['electricity', 'pit'] },
];

const pipeSteps: readonly DiagnosisStep[] = [
  { id: 'drainLid', family: 'pipe', kind: 'one', picks: ['cleaned', 'noDrain', later], when: pipe, cautions: ['pit', 'sewage'] },
  { id: 'hoseFlow', family: 'pipe', kind: 'tool', tool: 'hose', picks: [later], when: pipe, cautions: ['electricity'] },
  { id: 'drainFlow', family: 'pipe', kind: 'tool', tool: 'drain', picks: ['backedUp', 'ranAway', later], when: pipe, cautions: ['electricity', 'pit'] },
  { id: 'dye', family: 'pipe', kind: 'one', picks: ['atOutlet', 'atNeighbour', 'inSewer', 'notSeen', later], when: pipe, cautions: ['sewage'] },
  { id: 'camera', family: 'pipe', kind: 'tool', tool: 'camera', picks: ['clear', 'roots', 'broken', 'belly', later], when: pipe, cautions: ['sewage', 'oldPipe'] },
  { id: 'oldFall', family: 'pipe', kind: 'one', picks: ['proven', 'backFall', later], when: [{ step: 'dye', is: ['atOutlet'] }], cautions: [] },
  { id: 'inletSize', family: 'pipe', kind: 'one', picks: ['tooSmall', 'enough', later], when: [{ step: 'drainFlow', is: ['ranAway'] }], cautions: [] },
];

/** Holes that are made before anything is designed, and the limits of what is ours. */
const endSteps: readonly DiagnosisStep[] = [
  { id: 'slabHoles', family: 'before', kind: 'tool', tool: 'slabHoles', picks: ['noCut', 'plain', 'steel', 'cables', later], when: [...surface, ...pipe], cautions: ['drillDust', 'slab', 'electricity'] },
  { id: 'outletRight', family: 'before', kind: 'one', picks: ['allowed', 'notAllowed', 'unknown'], when: [...surface, ...ground, ...pipe], cautions: [] },
  { id: 'power', family: 'before', kind: 'one', picks: ['there', 'none'], when: [...surface, ...ground, ...pipe], cautions: ['electricity'] },
  {
    id: 'siteLimits', family: 'limits', kind: 'signs', none: 'none', when: [], cautions: [],
    picks: ['postTension', 'underFooting', 'publicPipe', 'streetWater', 'newCircuit', 'poolNear', 'overAcre', 'wetland', 'lotLineDispute', 'neighbourFill', 'floodway', 'septicNear', 'wellNear', 'toNeighbour', 'toSewer', 'refusesAdvice', 'none'],
  },
];

export const diagnosisSteps = [...first, ...surfaceSteps, ...groundSteps, ...pipeSteps, ...endSteps] satisfies readonly DiagnosisStep[];
export const diagnosisStepIds = diagnosisSteps.map(({ id }) => id);
/** The answer that leaves a test for another day. */
export const notDone = later;
