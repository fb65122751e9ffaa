import type { Answer, Outlet, OutletQuestions } from '../document/document.ts';
import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, isMet, ruled, stated, type CheckInput } from './finding.ts';
import { setFields } from './patch.ts';
import { raisedOutlet, shallowerPit, widerPit } from './remedies/outlets.ts';

type OutletCheck = 'O1' | 'O2' | 'O3' | 'O4' | 'O5' | 'O6' | 'O7' | 'O8' | 'O9' | 'O10';

const questions: readonly (readonly [check: OutletCheck, key: keyof OutletQuestions])[] = [
  ['O1', 'outletTypeNamed'], ['O2', 'ownerKnown'], ['O3', 'permissionHeld'], ['O4', 'notSanitarySewer'], ['O5', 'notOntoNeighbour'],
  ['O6', 'associationAgrees'], ['O7', 'rightOfWayPermit'], ['O8', 'noWetland'], ['O9', 'clearOfSepticAndWell'], ['O10', 'noEasementConflict'],
];
const answerSource = 'Outlet questions of the trade: an outlet is a legal fact; local law decides';

function answered(outlet: Outlet, check: OutletCheck, answer: Answer): Finding {
  const where = { at: outlet.id, params: { outlet: outlet.name } };
  if (answer === 'no') return stated(check, 'no', 'stop', answerSource, where);
  if (answer === 'unknown') return stated(check, 'unknown', 'caution', answerSource, where);
  return stated(check, 'ok', 'note', answerSource, where);
}

/** O1 to O10: "no" stops, "unknown" keeps the design provisional: priced, not released to dig. */
export function outletQuestions({ document }: CheckInput): Finding[] {
  return partsOf(document, 'outlet').flatMap((outlet) => questions.map(([check, key]) => answered(outlet, check, outlet.questions[key])));
}

/** Share of the measured rate that is counted. Source: design manuals, half the test. */
const ratedShare = 0.5;

function pitAt(input: CheckInput, outlet: Outlet, pit: NonNullable<Outlet['pit']>): Finding[] {
  const { document, results, limits } = input;
  const { infiltrationRate: rate, seasonalHighWaterTable: table } = document.site.soil;
  const result = results.outlets.find((item) => item.part === outlet.id)!;
  const volume = pit.area * pit.depth * pit.voids;
  const above = table === null ? 0 : pit.bottomLevel - table;
  const params = { outlet: outlet.name, pit: volume, line: result.lineVolume, above };
  const share = result.lineVolume > 0 ? volume / result.lineVolume : 99;
  const size = graded(input, 'N3', 'N3', share, { pass: 'ok', warn: 'small', fail: 'small' }, { at: outlet.id, params, remedy: () => widerPit(document, outlet, result.lineVolume * limits.N3.pass) });
  const lift = () => (table === null ? null : shallowerPit(document, outlet, pit.depth - (table + limits.N5.pass - pit.bottomLevel)));
  const stands = table === null
    ? [ruled(input, 'N5', 'N5', 'waterTableUnknown', 'caution', { at: outlet.id, params })]
    : graded(input, 'N5', 'N5', above, { pass: 'ok', warn: 'inWaterTable', fail: 'inWaterTable' }, { at: outlet.id, params, remedy: lift });
  if (rate === null || rate === 0) return [...size, ...stands, ruled(input, 'N6', 'N6', 'untested', 'note', { at: outlet.id, params: { outlet: outlet.name } })];
  const time = (pit.depth * pit.voids) / (ratedShare * rate);
  const flatter = () => shallowerPit(document, outlet, (limits.N6.pass * ratedShare * rate) / pit.voids);
  return [...size, ...stands, ...graded(input, 'N6', 'N6', time, { pass: 'ok', warn: 'slow', fail: 'tooSlow' }, { at: outlet.id, params: { outlet: outlet.name, time }, remedy: flatter })];
}

/** N3, N5, N6: a percolation pit holds the line's content, stands above the water table and soaks away in time. */
export function pits(input: CheckInput): Finding[] {
  return partsOf(input.document, 'outlet').flatMap((outlet) => (outlet.pit === null || outlet.pit.voids <= 0 ? [] : pitAt(input, outlet, outlet.pit)));
}

/** N4: distances of what lets water out into the ground or onto it. A dry well has its own distance to the foundation. */
export function distances(input: CheckInput): Finding[] {
  return partsOf(input.document, 'outlet').flatMap((outlet) => {
    if (outlet.outletKind === 'stormConnection' || outlet.outletKind === 'curb') return [];
    const foundation = { at: outlet.id, params: { outlet: outlet.name, distance: outlet.distanceToFoundation } };
    const lotLine = { at: outlet.id, params: { outlet: outlet.name, distance: outlet.distanceToLotLine } };
    const near = outlet.dryWell === null ? graded(input, 'N4', 'N4Foundation', outlet.distanceToFoundation, { pass: 'ok', warn: 'nearFoundation', fail: 'atFoundation' }, foundation) : [];
    return [...near, ...graded(input, 'N4', 'N4LotLine', outlet.distanceToLotLine, { warn: 'nearLotLine', fail: 'atLotLine' }, lotLine)];
  });
}

/** N10: a curb outlet above its gutter line, a ditch outlet above the water that usually stands there. */
export function receivingWater(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'outlet').flatMap((outlet) => {
    if (outlet.outletKind === 'curb') {
      const params = { outlet: outlet.name, above: outlet.level - outlet.groundLevel, below: outlet.groundLevel - outlet.level };
      const low = params.above < -1e-6;
      return [stated('N10', low ? 'belowGutter' : 'ok', low ? 'stop' : 'note', 'Common practice: the invert stands above the gutter line', { at: outlet.id, params, remedy: () => raisedOutlet(document, outlet, outlet.groundLevel, limits) })];
    }
    if (outlet.ordinaryWater === null) return [];
    const above = outlet.level - outlet.ordinaryWater;
    const level = outlet.ordinaryWater + limits.N10.pass;
    const where = { at: outlet.id, params: { outlet: outlet.name, above, below: -above }, remedy: () => raisedOutlet(document, outlet, level, limits) };
    return graded(input, 'N10', 'N10', above, { pass: 'ok', warn: 'lowOverWater', fail: 'underWater' }, where);
  });
}

const groundLimit = { grass: 'N7Grass', denseGrass: 'N7Dense', stone: 'N7Stone' } as const;

/** N7: water leaves slowly enough for what it runs over. Where the ground was not told, it is taken as grass. */
export function erosion(input: CheckInput): Finding[] {
  const { document, results } = input;
  return partsOf(document, 'outlet').flatMap((outlet) => {
    if (outlet.outletKind === 'curb' || outlet.outletKind === 'stormConnection' || outlet.dryWell !== null) return [];
    const result = results.outlets.find((item) => item.part === outlet.id)!;
    if (result.exitVelocity === null) return [];
    const where = {
      at: outlet.id, params: { outlet: outlet.name, velocity: result.exitVelocity },
      remedy: () => setFields(document, outlet, { exitGround: 'stone' }, 'remedy.stoneApron', { outlet: outlet.name }),
    };
    if (outlet.exitGround === null && !isMet(input, 'N7Grass', result.exitVelocity)) return [ruled(input, 'N7', 'N7Grass', 'groundUntold', 'caution', where)];
    return graded(input, 'N7', groundLimit[outlet.exitGround ?? 'grass'], result.exitVelocity, { pass: 'ok', warn: 'fast', fail: 'scours' }, where);
  });
}
