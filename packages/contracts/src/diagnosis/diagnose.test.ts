import { describe, expect, test } from 'vitest';
import { causes, type CauseId } from './causes.ts';
import { diagnose, stepOf, type DiagnosisAnswers } from './diagnose.ts';
import { referrals, type ReferralId } from './referrals.ts';
import { diagnosisSteps } from './steps.ts';
import type { StepAnswer } from './types.ts';

type Given = Readonly<Record<string, string | readonly string[] | Readonly<Record<string, number>>>>;
const answered = (given: Given): DiagnosisAnswers => Object.fromEntries(Object.entries(given).map(([step, value]): [string, StepAnswer] => {
  if (typeof value === 'string') return [step, { picks: [value], figures: {} }];
  return [step, Array.isArray(value) ? { picks: value as readonly string[], figures: {} } : { picks: [], figures: value as Readonly<Record<string, number>> }];
}));
const dry: Given = { dryDays: 'no', sewage: 'no', structure: ['none'] };
const soon: Given = { ...dry, timing: ['soon'] };
const later: Given = { ...dry, timing: ['later'] };
const fromPipe: Given = { ...dry, timing: ['fromPipe'], risesFrom: 'yardDrain' };
const stateOf = (given: Given, id: CauseId) => diagnose(answered(given)).causes.find((cause) => cause.id === id)?.state ?? null;
const callsOf = (given: Given) => diagnose(answered(given)).referrals.map(({ id, weight }) => [id, weight]);
const perHour = 0.0254 / 3600;

describe('the first split', () => {
  test('asks in the order of the trade: dry days, timing, sewage, structure, then the family', () => {
    const order = (given: Given) => diagnose(answered(given)).next;
    expect(order({})).toBe('dryDays');
    expect(order({ dryDays: 'no' })).toBe('timing');
    expect(order({ dryDays: 'no', timing: ['soon'] })).toBe('sewage');
    expect(order({ dryDays: 'no', timing: ['soon'], sewage: 'no' })).toBe('structure');
    expect(order(soon)).toBe('surfaceSigns');
    expect(order(later)).toBe('auger');
    expect(order(fromPipe)).toBe('drainLid');
    expect(order({ ...fromPipe, risesFrom: 'fixture' })).toBeNull();
  });
  test('nobody who does not know about dry days goes on before the meter was read', () => {
    expect(diagnose(answered({ dryDays: 'unknown' })).next).toBe('leakMeter');
    expect(diagnose(answered({ dryDays: 'unknown', leakMeter: 'still' })).next).toBe('timing');
    expect(callsOf({ dryDays: 'unknown', leakMeter: 'moves' })).toEqual([['leak', 'stop']]);
  });
  test('several timings ask several families', () => {
    const { open } = diagnose(answered({ ...dry, timing: ['soon', 'later', 'fromPipe'] }));
    expect(['surfaceSigns', 'auger', 'drainLid', 'risesFrom'].map((step) => open.includes(step))).toEqual([true, true, true, true]);
  });
});

describe('water on dry days is not a drainage job', () => {
  test('stops, and still asks the leak tests and nothing else', () => {
    const asked: (string | null)[] = [];
    let given: Given = { dryDays: 'yes' };
    for (let next = diagnose(answered(given)).next; next !== null; next = diagnose(answered(given)).next) {
      asked.push(next);
      given = { ...given, [next]: 'notDone' };
    }
    expect(asked).toEqual(['leakMeter', 'leakIrrigation', 'leakPool', 'leakCondensate', 'leakChlorine', 'leakToilet']);
    expect(diagnose(answered({ dryDays: 'yes' })).stopped).toBe(true);
  });
  test.each([
    ['leakSupply', { leakMeter: 'moves' }, { leakMeter: 'still' }],
    ['leakIrrigation', { leakIrrigation: 'withIrrigation' }, { leakIrrigation: 'no' }],
    ['leakPool', { leakPool: 'poolDrops' }, { leakPool: 'noPool' }],
    ['leakCondensate', { leakCondensate: 'drips' }, { leakCondensate: 'no' }],
    ['leakSewer', { leakToilet: 'dyeOutside' }, { leakToilet: 'none' }],
  ] as const)('%s is a suspect, then proven or cleared by its test', (id, proof, clear) => {
    const base = { dryDays: 'yes' };
    expect([stateOf(base, id), stateOf({ ...base, ...proof }, id), stateOf({ ...base, ...clear }, id)]).toEqual(['suspected', 'proven', null]);
  });
  test('calls the one who can mend it', () => {
    const called = (given: Given) => diagnose(answered({ dryDays: 'yes', ...given })).referrals.flatMap(({ call }) => call);
    expect(called({})).toEqual(['plumber', 'irrigation']);
    expect(called({ leakPool: 'poolDrops' })).toContain('poolFirm');
    expect(called({ leakCondensate: 'drips' })).toContain('airConditioning');
    expect(called({ leakToilet: 'dyeOutside' })).toContain('health');
  });
  test('dye that came out of the sewer ends the questions', () => {
    expect(diagnose(answered({ dryDays: 'yes', leakMeter: 'still', leakToilet: 'dyeOutside' })).next).toBeNull();
  });
});

describe('surface water', () => {
  const sign = (...signs: readonly string[]): Given => ({ ...soon, surfaceSigns: signs });
  test.each<[CauseId, Given, Given, Given | null]>([
    ['lowSlab', sign('sameOutline'), { levelGrid: 'toward' }, { levelGrid: 'over1' }],
    ['lowSlab', sign('slabBelowLawn'), { hoseOutline: 'runsToHouse' }, { levelGrid: 'over1' }],
    ['roofWater', sign('dripLine'), { hoseGutter: 'reachesSpot' }, { hoseGutter: 'staysAway' }],
    ['roofWater', sign('leaderAtPatio'), { hoseGutter: 'reachesSpot' }, { hoseGutter: 'staysAway' }],
    ['roofWater', sign('noGutter'), { hoseGutter: 'reachesSpot' }, { hoseGutter: 'staysAway' }],
    ['roofWater', { ...sign('none'), gutters: { leadersOnSlab: 1, withoutGutter: 0 } }, { hoseGutter: 'reachesSpot' }, { hoseGutter: 'staysAway' }],
    ['roofWater', { ...sign('none'), gutters: { leadersOnSlab: 0, withoutGutter: 6 } }, { hoseGutter: 'reachesSpot' }, { hoseGutter: 'staysAway' }],
    ['runOn', sign('siltFans'), { lotLine: 'flowsIn' }, { lotLine: 'fallsAway' }],
    ['runOn', sign('flowsRoofDry'), { lotLine: 'fallsIn' }, { lotLine: 'fallsAway' }],
    ['smallInlet', sign('clearDrainPonds'), { drainFlow: 'ranAway', inletSize: 'tooSmall' }, { drainFlow: 'ranAway', inletSize: 'enough' }],
    ['smallInlet', sign('clearDrainPonds'), { drainFlow: 'ranAway', inletSize: 'tooSmall' }, { drainFlow: 'backedUp' }],
    ['flatSlab', sign('birdbaths'), { levelGrid: 'under1' }, { levelGrid: 'over1' }],
    ['flatSlab', sign('birdbaths'), { hoseOutline: 'standsInSpots' }, { levelGrid: 'over1' }],
    ['blockedPath', sign('newLandscaping'), { pathProbe: 'blocked' }, { pathProbe: 'open' }],
  ])('%s: suspected by its signs, proven by its test, cleared by it', (id, signs, proof, clear) => {
    expect(stateOf(signs, id)).toBe('suspected');
    expect(stateOf({ ...signs, ...proof }, id)).toBe('proven');
    expect(stateOf({ ...signs, ...clear }, id)).toBeNull();
  });
  test('a count without leaders on the slab makes no suspect', () => {
    expect(stateOf({ ...sign('none'), gutters: { leadersOnSlab: 0, withoutGutter: 0 } }, 'roofWater')).toBeNull();
  });
  test('says which test proved it, and which are still to be done', () => {
    const { causes: named } = diagnose(answered({ ...sign('sameOutline', 'dripLine'), levelGrid: 'toward', hoseGutter: 'notDone' }));
    expect(named).toEqual([
      { id: 'lowSlab', state: 'proven', provenBy: ['levelGrid'], testsLeft: [] },
      { id: 'roofWater', state: 'suspected', provenBy: [], testsLeft: ['hoseGutter'] },
    ]);
  });
  test('without a sign it is surface water with no name yet', () => {
    expect(diagnose(answered(sign('none'))).causes.map(({ id }) => id)).toEqual(['surfaceUnnamed']);
    expect(diagnose(answered(sign('birdbaths'))).causes.map(({ id }) => id)).toEqual(['flatSlab']);
  });
  test('a question of a sign is asked only with it', () => {
    const open = diagnose(answered(sign('none'))).open;
    expect(['lotLine', 'pathProbe', 'hoseGutter', 'drainLid'].filter((step) => open.includes(step))).toEqual([]);
    expect(diagnose(answered(sign('siltFans'))).open).toContain('lotLine');
    expect(diagnose(answered(sign('clearDrainPonds'))).open).toContain('drainLid');
  });
  test('an answer to a question that is no longer asked does not count', () => {
    expect(stateOf({ ...sign('siltFans'), lotLine: 'flowsIn' }, 'runOn')).toBe('proven');
    expect(stateOf({ ...sign('none'), lotLine: 'flowsIn' }, 'runOn')).toBeNull();
  });
});

describe('ground water', () => {
  test.each<[CauseId, Given, Given]>([
    ['highWaterTable', later, { waterHole: 'water' }], ['highWaterTable', later, { mottles: 'gray' }], ['hillsideSeep', later, { slopeSeep: 'wetLine' }], ['crawlWater', later, { crawlSpace: 'stains' }],
    ['perchedOnClay', { ...later, auger: 'sandOverClay' }, { percolation: { measured: 0.19 * perHour } }], ['perchedOnClay', { ...later, auger: 'clay' }, { percolation: { measured: 0.1 * perHour } }],
  ])('%s is proven by its test', (id, base, proof) => {
    expect(stateOf({ ...base, ...proof }, id)).toBe('proven');
  });
  test('a hole that takes 0.2 inches an hour is no perched water', () => {
    const clay = { ...later, auger: 'clay' };
    expect([0.199, 0.2].map((rate) => stateOf({ ...clay, percolation: { measured: rate * perHour } }, 'perchedOnClay'))).toEqual(['proven', null]);
    expect(stateOf(clay, 'perchedOnClay')).toBe('suspected');
  });
  test('has no name before a test', () => expect(diagnose(answered(later)).causes.map(({ id }) => id)).toEqual(['groundUnnamed']));
  test('a seep at a wall is the engineer’s', () => expect(callsOf({ ...later, slopeSeep: 'wetLineNearWall' })).toEqual([['seepNearWall', 'stop']]));
});

describe('an existing drain', () => {
  test.each<[CauseId, Given]>([
    ['blockedDrain', { drainFlow: 'backedUp' }], ['blockedDrain', { camera: 'roots' }], ['blockedDrain', { camera: 'broken' }], ['blockedDrain', { camera: 'belly' }],
    ['drainWithoutOutlet', { dye: 'notSeen' }], ['drainBackFall', { dye: 'atOutlet', oldFall: 'backFall' }],
  ])('%s is proven by its test', (id, proof) => {
    expect(stateOf({ ...fromPipe, ...proof }, id)).toBe('proven');
  });
  test('is a suspect until the hose runs away', () => {
    expect([stateOf(fromPipe, 'blockedDrain'), stateOf({ ...fromPipe, drainFlow: 'ranAway' }, 'blockedDrain')]).toEqual(['suspected', null]);
  });
  test('dye in the sewer stops, dye at the neighbor is declined, a fixture is the plumber’s', () => {
    expect(callsOf({ ...fromPipe, dye: 'inSewer' })).toEqual([['dyeInSewer', 'stop']]);
    expect(callsOf({ ...fromPipe, dye: 'atNeighbour' })).toEqual([['dyeAtNeighbour', 'decline']]);
    expect(callsOf({ ...fromPipe, risesFrom: 'fixture' })).toEqual([['fixture', 'stop']]);
  });
});

describe('water from outside', () => {
  test('over the sill it is declined, below it the flood office is asked', () => {
    const base: Given = { ...dry, timing: ['fromOutside'] };
    expect(callsOf({ ...base, outsideFlood: 'overSill' })).toEqual([['outsideOverSill', 'decline']]);
    expect(callsOf({ ...base, outsideFlood: 'belowSill' })).toEqual([['outsideBelowSill', 'along']]);
    expect(stateOf(base, 'outsideFlood')).toBe('suspected');
    expect(stateOf({ ...base, outsideFlood: 'belowSill' }, 'outsideFlood')).toBe('proven');
  });
});

describe('when not to take the job', () => {
  test.each(['sinkhole', 'offsetCrack', 'stairCracks', 'leaningWall', 'highWall', 'movingFooting', 'voidUnderSlab'] as const)('%s: an engineer, and no more questions', (pick) => {
    const result = diagnose(answered({ ...soon, structure: [pick] }));
    expect(result.referrals).toMatchObject([{ id: pick, weight: 'stop', call: ['engineer'] }]);
    expect([result.stopped, result.next]).toEqual([true, null]);
  });
  test.each<[string, ReferralId, string, readonly string[]]>([
    ['postTension', 'postTension', 'stop', ['engineer', 'scanner']], ['underFooting', 'underFooting', 'stop', ['engineer']], ['publicPipe', 'publicPipe', 'stop', ['authority', 'utility']],
    ['streetWater', 'streetWater', 'along', ['authority']], ['newCircuit', 'newCircuit', 'along', ['electrician']], ['poolNear', 'poolNear', 'along', ['electrician']],
    ['overAcre', 'overAcre', 'stop', ['civil', 'authority']], ['wetland', 'wetland', 'stop', ['civil', 'authority']], ['lotLineDispute', 'lotLineDispute', 'stop', ['civil', 'authority']],
    ['neighbourFill', 'neighbourFill', 'along', ['civil']], ['floodway', 'floodway', 'decline', ['floodplain', 'engineer']], ['septicNear', 'septicNear', 'along', ['health']], ['wellNear', 'septicNear', 'along', ['health']],
    ['toNeighbour', 'toNeighbour', 'decline', ['nobody']], ['toSewer', 'toSewer', 'decline', ['nobody']], ['refusesAdvice', 'refusesAdvice', 'decline', ['nobody']],
  ])('%s', (pick, id, weight, call) => {
    const result = diagnose(answered({ ...soon, siteLimits: [pick] }));
    expect(result.referrals).toMatchObject([{ id, weight, call }]);
    expect(result.stopped).toBe(weight !== 'along');
  });
  test('cables found by a test hole, and sewage', () => {
    expect(callsOf({ ...soon, slabHoles: 'cables' })).toEqual([['postTension', 'stop']]);
    expect(callsOf({ ...soon, sewage: 'yes' })).toEqual([['sewage', 'stop']]);
  });
  test('a sound site calls nobody', () => expect(callsOf({ ...soon, surfaceSigns: ['birdbaths'], siteLimits: ['none'], slabHoles: 'plain' })).toEqual([]));
});

describe('the tree itself', () => {
  const everywhere = [...causes.flatMap(({ signs, proofs, clears }) => [...signs, ...proofs, ...clears]), ...referrals.flatMap(({ when }) => [...when]), ...diagnosisSteps.flatMap(({ when }) => [...when])];
  test('names only steps and outcomes that exist', () => {
    const unknown = everywhere.filter(({ step, is }) => {
      const { picks, outcomes } = stepOf(step);
      return !is.every((outcome) => picks.includes(outcome) || (outcomes ?? []).some((made) => made.outcome === outcome));
    });
    expect(unknown).toEqual([]);
  });
  test('every step is reached, every pick of it is taken, and no answer leads into a circle', () => {
    const seen = new Set<string>();
    for (const step of diagnosisSteps) {
      for (const pick of [...step.picks, '']) {
        let given: Given = {};
        for (let n = 0; n <= diagnosisSteps.length; n += 1) {
          const { next } = diagnose(answered(given));
          if (next === null) break;
          expect(given[next]).toBeUndefined();
          seen.add(next);
          given = { ...given, [next]: next === step.id && pick !== '' ? [pick] : quiet(next) };
        }
        expect(diagnose(answered(given)).next).toBeNull();
      }
    }
    expect([...seen].sort()).toEqual(diagnosisSteps.map(({ id }) => id).sort());
  });
  test('a step that somebody could be hurt at says so', () => {
    const cautions = (id: string) => stepOf(id).cautions;
    expect(cautions('hoseGutter')).toContain('electricity');
    expect(cautions('drainLid')).toEqual(['pit', 'sewage']);
    expect(cautions('waterHole')).toEqual(['firstOneCall', 'privateLines', 'caveIn']);
    expect(cautions('slabHoles')).toContain('slab');
  });
});

/** The answer that opens the most. */
function quiet(step: string): readonly string[] {
  const fixed: Readonly<Record<string, readonly string[]>> = { dryDays: ['no'], leakMeter: ['still'], timing: ['soon', 'later', 'fromPipe', 'fromOutside'], outsideFlood: ['belowSill'], risesFrom: ['yardDrain'], sewage: ['no'], structure: ['none'],
    surfaceSigns: ['dripLine', 'siltFans', 'newLandscaping', 'clearDrainPonds'], dye: ['atOutlet'], drainFlow: ['ranAway'], siteLimits: ['none'], slopeSeep: ['no'], slabHoles: ['plain'] };
  return fixed[step] ?? [stepOf(step).picks[0] ?? 'none'];
}
